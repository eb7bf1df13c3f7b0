package fettle.space.worth;

import fettle.space.Circuit;
import java.util.function.IntUnaryOperator;

/** One choice out of a node of the circuit, put together from those of the nodes below; shares what it is made of with others. */
sealed interface Pick {

    /** Nothing placed. */
    Pick NOTHING = new Nothing();

    /** Nothing placed. */
    record Nothing() implements Pick {}

    /** A part with what is on it. */
    record Headed(int part, Pick on) implements Pick {}

    /** What is in a slot. */
    record InSlot(int slot, Pick held) implements Pick {}

    /** Two side by side. */
    record Both(Pick one, Pick other) implements Pick {}

    /** The choice out of a node for which, of each node of alternatives, {@code chosen} gives the one to take. */
    static Pick of(Circuit circuit, int node, IntUnaryOperator chosen) {
        int first = circuit.first(node);
        int second = circuit.second(node);
        return switch (circuit.kind(node)) {
            case ONE -> NOTHING;
            case PART -> new Headed(first, of(circuit, second, chosen));
            case SLOT -> new InSlot(first, of(circuit, second, chosen));
            case BOTH -> both(of(circuit, first, chosen), of(circuit, second, chosen));
            case SEVERAL -> {
                Pick one = of(circuit, first, chosen);
                Pick all = one;
                for (int i = 1; i < second; i++) {
                    all = both(all, one);
                }
                yield all;
            }
            case EITHER -> of(circuit, chosen.applyAsInt(node), chosen);
        };
    }

    static Pick both(Pick one, Pick other) {
        return one == NOTHING ? other : other == NOTHING ? one : new Both(one, other);
    }
}

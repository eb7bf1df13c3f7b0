package fettle.space.worth;

import fettle.space.Circuit;

/** Picks the choice out of a node of the circuit that brings most in one column that adds up. */
final class Extreme {

    private final Arena arena;
    private final Circuit circuit;
    private final int column;

    Extreme(Arena arena, int column) {
        this.arena = arena;
        this.circuit = arena.circuit();
        this.column = column;
    }

    Pick of(int node) {
        int first = circuit.first(node);
        int second = circuit.second(node);
        return switch (circuit.kind(node)) {
            case ONE -> Pick.NOTHING;
            case PART -> new Pick.Headed(first, of(second));
            case SLOT -> new Pick.InSlot(first, of(second));
            case BOTH -> {
                Pick one = of(first);
                yield Pick.both(one, of(second));
            }
            case SEVERAL -> {
                Pick one = of(first);
                Pick all = one;
                for (int i = 1; i < second; i++) {
                    all = Pick.both(all, one);
                }
                yield all;
            }
            case EITHER -> {
                int best = -1;
                for (int i = 0; i < circuit.width(node); i++) {
                    int alternative = circuit.alternative(node, i);
                    if (arena.ideal(alternative) != null
                            && (best < 0 || arena.ideal(alternative).small()[column] > arena.ideal(best).small()[column])) {
                        best = alternative;
                    }
                }
                yield of(best);
            }
        };
    }
}

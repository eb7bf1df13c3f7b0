package fettle.space.worth;

import fettle.space.Circuit;
import fettle.space.Held;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A share of what is on a part, of which the choices don't depend on those of other shares: what is in one slot, or in several that are bound together.
 *
 * @param held what the slot may hold; empty where several slots are bound together
 * @param fixed what has been decided brings
 * @param open nodes that are still to be decided
 */
record Factor(Optional<Held> held, Yield fixed, List<Integer> open) {

    Factor {
        open = List.copyOf(open);
    }

    boolean decided() {
        return open.isEmpty();
    }

    /** Takes a node of a host's slots apart into factors. */
    static List<Factor> of(Circuit circuit, int node, Yield nothing) {
        List<Factor> factors = new ArrayList<>();
        List<Integer> open = new ArrayList<>(List.of(node));
        while (!open.isEmpty()) {
            int next = open.remove(open.size() - 1);
            switch (circuit.kind(next)) {
                case ONE -> { }
                case BOTH -> {
                    open.add(circuit.first(next));
                    open.add(circuit.second(next));
                }
                case SLOT -> factors.add(new Factor(Optional.of(new Held(circuit.first(next), List.of(next), false)), nothing, List.of(next)));
                case EITHER -> factors.add(new Factor(ofOneSlot(circuit, next), nothing, List.of(next)));
                case PART, SEVERAL -> throw new IllegalStateException("a part stands on a part without a slot between");
            }
        }
        return factors;
    }

    private static Optional<Held> ofOneSlot(Circuit circuit, int either) {
        int slot = -1;
        boolean orNothing = false;
        List<Integer> uses = new ArrayList<>();
        for (int i = 0; i < circuit.width(either); i++) {
            int alternative = circuit.alternative(either, i);
            switch (circuit.kind(alternative)) {
                case ONE -> orNothing = true;
                case SLOT -> {
                    if (slot >= 0 && slot != circuit.first(alternative)) {
                        return Optional.empty();
                    }
                    slot = circuit.first(alternative);
                    uses.add(alternative);
                }
                case PART, BOTH, SEVERAL, EITHER -> {
                    return Optional.empty();
                }
            }
        }
        return Optional.of(new Held(slot, uses, orNothing));
    }
}

package fettle.space.worth;

import fettle.space.Circuit;
import java.util.HashMap;
import java.util.Map;
import java.util.Set;

/** Which of the slots that must not be empty are in use in the choices out of nodes, if nothing but some uses is chosen. */
final class Occupied {

    private final Circuit circuit;
    private final Set<Integer> uses;
    private final Map<Integer, Integer> needed;
    private final Map<Integer, Long> known = new HashMap<>();

    /**
     * For a part of what slots may hold.
     *
     * @param uses the uses that may be chosen
     * @param needed by slot, its bit where it must not be empty, else 0
     */
    Occupied(Circuit circuit, Set<Integer> uses, Map<Integer, Integer> needed) {
        this.circuit = circuit;
        this.uses = uses;
        this.needed = needed;
    }

    /** How many nodes were looked at. */
    int looked() {
        return known.size();
    }

    /** The sets of slots, each a bit with the number that its slots' bits make. */
    long of(int node) {
        return switch (circuit.kind(node)) {
            case ONE -> 1;
            case SLOT -> uses.contains(node) ? 1L << needed.get(circuit.first(node)) : 0;
            case BOTH, EITHER -> {
                Long found = known.get(node);
                if (found == null) {
                    found = circuit.kind(node) == Circuit.Kind.BOTH ? both(of(circuit.first(node)), of(circuit.second(node))) : either(node);
                    known.put(node, found);
                }
                yield found;
            }
            case PART, SEVERAL -> throw new IllegalStateException("a part stands on a part without a slot between");
        };
    }

    private long either(int node) {
        long sets = 0;
        for (int i = 0; i < circuit.width(node); i++) {
            sets |= of(circuit.alternative(node, i));
        }
        return sets;
    }

    private static long both(long one, long other) {
        long sets = 0;
        for (long a = one; a != 0; a &= a - 1) {
            for (long b = other; b != 0; b &= b - 1) {
                sets |= 1L << (Long.numberOfTrailingZeros(a) | Long.numberOfTrailingZeros(b));
            }
        }
        return sets;
    }
}

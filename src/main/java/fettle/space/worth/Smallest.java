package fettle.space.worth;

import fettle.space.Circuit;
import java.util.HashMap;
import java.util.Map;

/** Picks the choice with the fewest parts out of nodes of the circuit, among those that take part in a comparison. */
final class Smallest {

    private final Circuit circuit;
    private final Arena arena;
    private final Map<Integer, Integer> sizes = new HashMap<>();

    Smallest(Circuit circuit, Arena arena) {
        this.circuit = circuit;
        this.arena = arena;
    }

    /** How many parts are in the smallest choice out of a node that has one. */
    int size(int node) {
        int first = circuit.first(node);
        int second = circuit.second(node);
        return switch (circuit.kind(node)) {
            case ONE -> 0;
            case PART -> {
                Integer known = sizes.get(node);
                if (known == null) {
                    known = 1 + size(second);
                    sizes.put(node, known);
                }
                yield known;
            }
            case SLOT -> size(second);
            case BOTH -> size(first) + size(second);
            case SEVERAL -> second * size(first);
            case EITHER -> {
                Integer known = sizes.get(node);
                if (known == null) {
                    known = size(best(node));
                    sizes.put(node, known);
                }
                yield known;
            }
        };
    }

    private int best(int either) {
        int best = -1;
        for (int i = 0; i < circuit.width(either); i++) {
            int alternative = circuit.alternative(either, i);
            if (arena.ideal(alternative) != null && (best < 0 || size(alternative) < size(best))) {
                best = alternative;
            }
        }
        return best;
    }

    /** The smallest choice out of a node that has one. */
    Pick of(int node) {
        return Pick.of(circuit, node, this::best);
    }
}

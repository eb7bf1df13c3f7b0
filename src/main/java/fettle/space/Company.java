package fettle.space;

import java.util.HashMap;
import java.util.Map;
import java.util.TreeMap;

/** Finds out what can stand beside each part directly in a slot. */
final class Company {

    private final Circuit circuit;
    private final Terrain terrain;
    private final Map<Integer, Beside> held = new HashMap<>();

    Company(Circuit circuit, Terrain terrain) {
        this.circuit = circuit;
        this.terrain = terrain;
    }

    /** By the node of a part in these contents of a slot, what can stand beside it. */
    Map<Integer, Beside> of(Iterable<Integer> contents) {
        Map<Integer, Beside> found = new HashMap<>();
        TreeMap<Integer, Beside> open = new TreeMap<>();
        contents.forEach(node -> open.put(node, Beside.NOTHING));
        // From the greatest number down: what a node stands in comes before it.
        while (!open.isEmpty()) {
            int node = open.lastKey();
            Beside others = open.remove(node);
            int first = circuit.first(node);
            int second = circuit.second(node);
            switch (circuit.kind(node)) {
                case PART -> found.put(node, others);
                case SEVERAL -> open.merge(first, others.and(held(first).times(second - 1)), Beside::or);
                case BOTH -> {
                    open.merge(first, others.and(held(second)), Beside::or);
                    open.merge(second, others.and(held(first)), Beside::or);
                }
                case EITHER -> {
                    for (int i = 0; i < circuit.width(node); i++) {
                        open.merge(circuit.alternative(node, i), others, Beside::or);
                    }
                }
                case ONE, SLOT -> { }
            }
        }
        return found;
    }

    private Beside held(int node) {
        Beside found = held.get(node);
        if (found == null) {
            int first = circuit.first(node);
            found = switch (circuit.kind(node)) {
                case ONE, SLOT -> Beside.NOTHING;
                case PART -> Beside.of(terrain.span()[first], first);
                case BOTH -> held(first).and(held(circuit.second(node)));
                case SEVERAL -> held(first).times(circuit.second(node));
                case EITHER -> {
                    Beside all = held(circuit.alternative(node, 0));
                    for (int i = 1; i < circuit.width(node); i++) {
                        all = all.or(held(circuit.alternative(node, i)));
                    }
                    yield all;
                }
            };
            held.put(node, found);
        }
        return found;
    }
}

package fettle.space;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Assemblies sorted by what they can do to the rest of a build: signatures in order, each with the circuit's node of those that have it. */
record Classes(List<Signature> signatures, int[] nodes) {

    static final Classes NONE = new Classes(List.of(), new int[0]);

    static Classes of(Signature signature, int node) {
        return new Classes(List.of(signature), new int[] {node});
    }

    int size() {
        return nodes.length;
    }

    /** Collects alternatives by signature. */
    static final class Gathered {

        private static final class Bag {
            private int[] nodes = new int[2];
            private int count;

            void add(int node) {
                if (count == nodes.length) {
                    nodes = Arrays.copyOf(nodes, 2 * count);
                }
                nodes[count++] = node;
            }
        }

        private final Map<Signature, Bag> bags = new LinkedHashMap<>();

        void add(Signature signature, int node) {
            bags.computeIfAbsent(signature, unused -> new Bag()).add(node);
        }

        int size() {
            return bags.size();
        }

        boolean isEmpty() {
            return bags.isEmpty();
        }

        Classes classes(Sums circuit) {
            if (bags.isEmpty()) {
                return NONE;
            }
            List<Signature> signatures = bags.keySet().stream().sorted().toList();
            int[] nodes = new int[signatures.size()];
            for (int i = 0; i < nodes.length; i++) {
                Bag bag = bags.get(signatures.get(i));
                nodes[i] = circuit.either(bag.nodes, bag.count);
            }
            return new Classes(signatures, nodes);
        }
    }

    /** Makes one node of several alternatives. */
    interface Sums {
        int either(int[] alternatives, int count);
    }
}

package fettle.space;

import java.util.Arrays;
import java.util.BitSet;

/** Which nodes of a circuit each node is directly part of. */
final class Uplinks {

    private interface Link {
        void to(int node, int parent);
    }

    private final Circuit circuit;
    private final int[] from;
    private final int[] parents;

    /**
     * Looks at some nodes.
     *
     * @param nodes with each, all that it is made of
     */
    Uplinks(Circuit circuit, BitSet nodes) {
        this.circuit = circuit;
        from = new int[nodes.length() + 1];
        links(nodes, (node, parent) -> from[node + 1]++);
        for (int node = 1; node < from.length; node++) {
            from[node] += from[node - 1];
        }
        parents = new int[from[from.length - 1]];
        int[] next = Arrays.copyOf(from, from.length);
        links(nodes, (node, parent) -> parents[next[node]++] = parent);
    }

    private void links(BitSet nodes, Link link) {
        for (int node = nodes.nextSetBit(1); node >= 0; node = nodes.nextSetBit(node + 1)) {
            switch (circuit.kind(node)) {
                case ONE -> { }
                case PART, SLOT -> link.to(circuit.second(node), node);
                case SEVERAL -> link.to(circuit.first(node), node);
                case BOTH -> {
                    link.to(circuit.first(node), node);
                    link.to(circuit.second(node), node);
                }
                case EITHER -> {
                    for (int i = 0; i < circuit.width(node); i++) {
                        link.to(circuit.alternative(node, i), node);
                    }
                }
            }
        }
    }

    int count(int node) {
        return from[node + 1] - from[node];
    }

    int parent(int node, int i) {
        return parents[from[node] + i];
    }
}

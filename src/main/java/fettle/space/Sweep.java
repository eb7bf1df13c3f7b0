package fettle.space;

import java.util.Arrays;
import java.util.BitSet;
import java.util.function.IntConsumer;

/**
 * The way from below through all that some nodes are made of, with a place for each node's answer that is free again once no later node asks for it. Most
 * nodes are asked for soon after they were made, so that a sweep has far fewer places than nodes, and whatever is worked out along it stays small.
 */
public final class Sweep {

    private static final int FOR_GOOD = Integer.MAX_VALUE;

    private final BitSet nodes;
    private final int[] places;
    private int count;
    private int[] free = new int[64];
    private int freed;

    private Sweep(BitSet nodes) {
        this.nodes = nodes;
        this.places = new int[nodes.length()];
    }

    /** The way up to these nodes, whose own places are not given away; roots that are {@link Circuit#NONE} are left out. */
    public static Sweep of(Circuit circuit, int... roots) {
        Sweep sweep = new Sweep(Evaluation.below(circuit, roots));
        sweep.lay(circuit, roots);
        return sweep;
    }

    private void lay(Circuit circuit, int[] roots) {
        int[] last = new int[places.length];
        for (int node = nodes.nextSetBit(0); node >= 0; node = nodes.nextSetBit(node + 1)) {
            int user = node;
            eachBelow(circuit, node, used -> last[used] = user);
        }
        Arrays.stream(roots).filter(root -> root != Circuit.NONE).forEach(root -> last[root] = FOR_GOOD);
        for (int node = nodes.nextSetBit(0); node >= 0; node = nodes.nextSetBit(node + 1)) {
            // A node's place is none of those that it is worked out from.
            places[node] = freed > 0 ? free[--freed] : count++;
            int user = node;
            eachBelow(circuit, node, used -> {
                if (last[used] == user) {
                    last[used] = FOR_GOOD;
                    give(places[used]);
                }
            });
        }
    }

    private void give(int place) {
        free = freed == free.length ? Arrays.copyOf(free, 2 * freed) : free;
        free[freed++] = place;
    }

    private static void eachBelow(Circuit circuit, int node, IntConsumer use) {
        switch (circuit.kind(node)) {
            case ONE -> { }
            case PART, SLOT -> use.accept(circuit.second(node));
            case SEVERAL -> use.accept(circuit.first(node));
            case BOTH -> {
                use.accept(circuit.first(node));
                use.accept(circuit.second(node));
            }
            case EITHER -> {
                for (int i = 0; i < circuit.width(node); i++) {
                    use.accept(circuit.alternative(node, i));
                }
            }
        }
    }

    /** All nodes on the way, each after those it is made of. */
    BitSet nodes() {
        return nodes;
    }

    /** Where a node's answer stands, counted from 0, until the last node that asks for it has been worked out. */
    int place(int node) {
        return places[node];
    }

    /** How many places there are. */
    int places() {
        return count;
    }
}

package fettle.space;

import java.util.Arrays;
import java.util.BitSet;

/** Which parts and slots stand in the assemblies of which nodes, of up to 64 nodes at a time: a bit a node is handed down to all that it is made of. */
final class Presence {

    /** How many nodes can be asked about at a time. */
    static final int MOST = Long.SIZE;

    private final long[] byPart;
    private final long[] bySlot;

    private Presence(Terrain terrain) {
        byPart = new long[terrain.hosts().size()];
        bySlot = new long[terrain.slots().size()];
    }

    /** What stands in the assemblies of these nodes, of which there are at most {@link #MOST}. */
    static Presence of(Terrain terrain, Circuit circuit, int... roots) {
        if (roots.length > MOST) {
            throw new IllegalArgumentException("at most " + MOST + " nodes at a time");
        }
        Presence presence = new Presence(terrain);
        long[] above = new long[1 + Arrays.stream(roots).max().orElse(0)];
        for (int i = 0; i < roots.length; i++) {
            above[roots[i]] |= 1L << i;
        }
        // Whatever a node is made of has a smaller number.
        for (int node = above.length - 1; node > 0; node--) {
            if (above[node] != 0) {
                presence.down(circuit, node, above);
            }
        }
        return presence;
    }

    private void down(Circuit circuit, int node, long[] above) {
        long mine = above[node];
        int first = circuit.first(node);
        switch (circuit.kind(node)) {
            case ONE -> { }
            case PART -> {
                byPart[first] |= mine;
                above[circuit.second(node)] |= mine;
            }
            case SLOT -> {
                bySlot[first] |= mine;
                above[circuit.second(node)] |= mine;
            }
            case SEVERAL -> above[first] |= mine;
            case BOTH -> {
                above[first] |= mine;
                above[circuit.second(node)] |= mine;
            }
            case EITHER -> {
                for (int i = 0; i < circuit.width(node); i++) {
                    above[circuit.alternative(node, i)] |= mine;
                }
            }
        }
    }

    /** The parts in some assembly of one of the nodes asked about. */
    BitSet parts(int root) {
        return those(byPart, root);
    }

    /** The slots that hold something in some assembly of one of the nodes asked about. */
    BitSet slots(int root) {
        return those(bySlot, root);
    }

    private static BitSet those(long[] bits, int root) {
        BitSet those = new BitSet();
        for (int i = 0; i < bits.length; i++) {
            those.set(i, (bits[i] >>> root & 1) != 0);
        }
        return those;
    }
}

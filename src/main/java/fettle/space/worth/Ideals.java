package fettle.space.worth;

import fettle.space.Bare;
import fettle.space.Circuit;
import fettle.space.Spreading;
import java.util.Arrays;

/**
 * The best that some assembly of a node brings in each column, worked out when asked for. What parts and slots bring is remembered; of what stands between, of which
 * there is far more, only what was asked for lately.
 */
final class Ideals {

    private static final int FEWEST_REMEMBERED = 1 << 16;
    private static final int MOST_REMEMBERED = 1 << 20;
    /** There is room for one of so many nodes. */
    private static final int SHARE = 8;
    private static final Object NONE = new Object();

    private final Bare bare;
    private final Circuit circuit;
    private final Measure measure;
    private final ByNode<Object> kept = new ByNode<>();
    private int[] nodes = blank(FEWEST_REMEMBERED);
    private Yield[] lately = new Yield[FEWEST_REMEMBERED];

    Ideals(Bare bare, Measure measure) {
        this.bare = bare;
        this.circuit = bare.circuit();
        this.measure = measure;
    }

    /** The best of a node; empty-handed ({@code null}) where none of its assemblies takes part in the comparison. */
    Yield of(int node) {
        int slotless = bare.of(node);
        makeRoom();
        return ideal(slotless);
    }

    private Yield ideal(int node) {
        int first = circuit.first(node);
        switch (circuit.kind(node)) {
            case ONE:
                return measure.ofNothing();
            case PART: {
                Object known = kept.get(node);
                if (known == null) {
                    Yield yield = both(measure.ofPart(first), ideal(circuit.second(node)));
                    known = yield == null ? NONE : yield;
                    kept.put(node, known);
                }
                return known == NONE ? null : (Yield) known;
            }
            case SLOT, BOTH, EITHER, SEVERAL:
                break;
        }
        int place = place(node);
        if (nodes[place] == node) {
            return lately[place];
        }
        Yield found = switch (circuit.kind(node)) {
            case BOTH -> both(ideal(first), ideal(circuit.second(node)));
            case SEVERAL -> several(ideal(first), circuit.second(node));
            case EITHER -> either(node);
            case ONE, SLOT, PART -> throw new IllegalStateException();
        };
        nodes[place] = node;
        lately[place] = found;
        return found;
    }

    private int place(int node) {
        return (node * Spreading.INT >>> 8) & (nodes.length - 1);
    }

    private static int[] blank(int size) {
        int[] nodes = new int[size];
        Arrays.fill(nodes, -1);
        return nodes;
    }

    /** The circuit grows as it is asked about. */
    private void makeRoom() {
        if (nodes.length < MOST_REMEMBERED && nodes.length < circuit.size() / SHARE) {
            int size = Math.min(MOST_REMEMBERED, 4 * nodes.length);
            nodes = blank(size);
            lately = new Yield[size];
        }
    }

    private Yield both(Yield one, Yield other) {
        return one == null || other == null ? null : measure.both(one, other);
    }

    private Yield several(Yield one, int copies) {
        Yield all = one;
        for (int i = 1; i < copies; i++) {
            all = both(all, one);
        }
        return all;
    }

    private Yield either(int node) {
        Upper upper = new Upper(measure);
        for (int i = 0; i < circuit.width(node); i++) {
            Yield other = ideal(circuit.alternative(node, i));
            if (other != null) {
                upper.take(other);
            }
        }
        return upper.best();
    }
}

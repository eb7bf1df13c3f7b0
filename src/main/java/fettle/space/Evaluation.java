package fettle.space;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.Collections;
import java.util.List;

/** Works an algebra out over a circuit, node by node from below, in the places of a {@link Sweep}. */
public final class Evaluation<V> {

    private final Sweep sweep;
    private final List<V> values;

    private Evaluation(Sweep sweep) {
        this.sweep = sweep;
        this.values = new ArrayList<>(Collections.nCopies(sweep.places(), null));
    }

    /** Works it out for the roots of a sweep. */
    public static <V> Evaluation<V> of(Circuit circuit, Algebra<V> algebra, Sweep sweep) {
        Evaluation<V> evaluation = new Evaluation<>(sweep);
        BitSet nodes = sweep.nodes();
        for (int node = nodes.nextSetBit(0); node >= 0; node = nodes.nextSetBit(node + 1)) {
            evaluation.values.set(sweep.place(node), evaluation.value(circuit, algebra, node));
        }
        return evaluation;
    }

    private V value(Circuit circuit, Algebra<V> algebra, int node) {
        int first = circuit.first(node);
        int second = circuit.second(node);
        return switch (circuit.kind(node)) {
            case ONE -> algebra.one();
            case PART -> second == Circuit.ONE ? algebra.part(first) : algebra.both(algebra.part(first), of(second));
            case SLOT -> algebra.slot(first, of(second));
            case BOTH -> algebra.both(of(first), of(second));
            case SEVERAL -> algebra.several(of(first), second);
            case EITHER -> {
                V all = of(circuit.alternative(node, 0));
                for (int i = 1; i < circuit.width(node); i++) {
                    all = algebra.either(all, of(circuit.alternative(node, i)));
                }
                yield all;
            }
        };
    }

    /** The answer for a root of the sweep; while it goes on, for whatever is still needed. */
    public V of(int node) {
        return values.get(sweep.place(node));
    }

    /** These nodes and all that they are made of. */
    public static BitSet below(Circuit circuit, int... roots) {
        BitSet seen = new BitSet();
        Arrays.stream(roots).filter(root -> root != Circuit.NONE).forEach(seen::set);
        // Whatever a node is made of has a smaller number.
        for (int node = seen.length() - 1; node > 0; node = seen.previousSetBit(node - 1)) {
            switch (circuit.kind(node)) {
                case ONE -> { }
                case PART, SLOT -> seen.set(circuit.second(node));
                case SEVERAL -> seen.set(circuit.first(node));
                case BOTH -> {
                    seen.set(circuit.first(node));
                    seen.set(circuit.second(node));
                }
                case EITHER -> {
                    for (int i = 0; i < circuit.width(node); i++) {
                        seen.set(circuit.alternative(node, i));
                    }
                }
            }
        }
        return seen;
    }
}

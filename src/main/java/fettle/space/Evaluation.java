package fettle.space;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.Collections;
import java.util.List;

/** Works an algebra out over a circuit, node by node, for some nodes and all that they are made of. */
public final class Evaluation<V> {

    private final List<V> values;

    private Evaluation(int size) {
        values = new ArrayList<>(Collections.nCopies(size, null));
    }

    /**
     * Works it out.
     *
     * @param wanted the nodes asked about and all that they are made of
     */
    public static <V> Evaluation<V> of(Circuit circuit, Algebra<V> algebra, BitSet wanted) {
        Evaluation<V> evaluation = new Evaluation<>(wanted.length());
        for (int node = wanted.nextSetBit(0); node >= 0; node = wanted.nextSetBit(node + 1)) {
            evaluation.values.set(node, evaluation.value(circuit, algebra, node));
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

    /** The answer for a node that was asked about, or is part of one. */
    public V of(int node) {
        return values.get(node);
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

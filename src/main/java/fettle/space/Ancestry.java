package fettle.space;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.IntPredicate;
import java.util.function.IntUnaryOperator;

/** What is met on all ways up from nodes of a circuit, as far as some builds go. Sets that are alike are kept once. */
final class Ancestry {

    /** Nothing is met at a node. */
    static final int NOTHING = -1;

    private final Uplinks uplinks;
    private final BitSet nodes;
    private final IntUnaryOperator met;
    private final IntPredicate last;
    private final IntTable known = new IntTable();
    private final List<BitSet> sets = new ArrayList<>();
    private final Map<BitSet, Integer> numbers = new HashMap<>();

    /**
     * Ways up.
     *
     * @param nodes those of the builds that are looked at
     * @param met what is met at a node, as a number
     * @param last whether a way ends at a node
     */
    Ancestry(Uplinks uplinks, BitSet nodes, IntUnaryOperator met, IntPredicate last) {
        this.uplinks = uplinks;
        this.nodes = nodes;
        this.met = met;
        this.last = last;
    }

    /** What is met above a node; not to be changed. */
    BitSet of(int node) {
        return sets.get(number(node));
    }

    private int number(int node) {
        int number = known.get(node);
        if (number == IntTable.NONE) {
            BitSet all = new BitSet();
            for (int i = 0; i < uplinks.count(node); i++) {
                int parent = uplinks.parent(node, i);
                if (nodes.get(parent)) {
                    int here = met.applyAsInt(parent);
                    if (here != NOTHING) {
                        all.set(here);
                    }
                    if (!last.test(parent)) {
                        all.or(of(parent));
                    }
                }
            }
            number = numbers.computeIfAbsent(all, unused -> {
                sets.add(all);
                return sets.size() - 1;
            });
            known.put(node, number);
        }
        return number;
    }
}

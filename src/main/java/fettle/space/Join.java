package fettle.space;

import java.util.Arrays;
import java.util.BitSet;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.TreeSet;

/**
 * Puts two lots of classes together where nothing is left that could touch a monitor: goes through the monitors one by one, and adds up what has become alike, so
 * that it need not look at each pair.
 */
final class Join {

    private static final int NO_MORE = -1;

    private final Combining combining;
    private final Monitors monitors;
    private final int[] looked;
    private int[] products = new int[64];
    private int found;

    /** Classes by the states of the monitors that are looked at: {@code count} of them, each with its states and its node. */
    private static final class Side {

        private int[][] states;
        private int[] nodes;
        private int count;

        Side(int room) {
            this.states = new int[room][];
            this.nodes = new int[room];
        }

        void add(int[] state, int node) {
            if (count == nodes.length) {
                states = Arrays.copyOf(states, 2 * count + 1);
                nodes = Arrays.copyOf(nodes, 2 * count + 1);
            }
            states[count] = state;
            nodes[count++] = node;
        }
    }

    private Join(Combining combining, Monitors monitors, int[] looked) {
        this.combining = combining;
        this.monitors = monitors;
        this.looked = looked;
    }

    /** The node of all that is valid of one lot with all of another; {@link Circuit#NONE} where nothing is. */
    static int of(Combining combining, Monitors monitors, Classes one, Classes other) {
        TreeSet<Integer> touched = new TreeSet<>();
        for (Classes classes : new Classes[] {one, other}) {
            for (int signature : classes.signatures()) {
                Signature states = combining.signatures().get(signature);
                for (int i = 0; i < states.size(); i++) {
                    touched.add(states.monitor(i));
                }
            }
        }
        Join join = new Join(combining, monitors, touched.stream().mapToInt(Integer::intValue).toArray());
        join.go(join.side(one), join.side(other), 0);
        return join.found == 0 ? Circuit.NONE : combining.circuit().either(join.products, join.found);
    }

    private Side side(Classes classes) {
        Side side = new Side(classes.size());
        for (int i = 0; i < classes.size(); i++) {
            Signature signature = combining.signatures().get(classes.signatures()[i]);
            int[] state = new int[looked.length];
            for (int monitor = 0; monitor < looked.length; monitor++) {
                state[monitor] = signature.stateOf(looked[monitor]);
            }
            side.add(state, classes.nodes()[i]);
        }
        return side;
    }

    private void go(Side one, Side other, int depth) {
        if (one.count == 0 || other.count == 0) {
            return;
        }
        if (depth == looked.length) {
            if (found == products.length) {
                products = Arrays.copyOf(products, 2 * found);
            }
            products[found++] = combining.circuit().both(either(one), either(other));
            return;
        }
        Monoid monoid = monitors.monoid(looked[depth]);
        int[] theirs = states(other, depth);
        // States that go well with the same states of the other side are dealt with together.
        Map<BitSet, Side> byCompany = new LinkedHashMap<>();
        Map<Integer, BitSet> company = new HashMap<>();
        for (int i = 0; i < one.count; i++) {
            BitSet fine = company.computeIfAbsent(one.states[i][depth], state -> fine(monoid, state, theirs));
            byCompany.computeIfAbsent(fine, unused -> new Side(8)).add(one.states[i], one.nodes[i]);
        }
        byCompany.forEach((fine, mine) -> go(merged(mine, depth), among(other, depth, theirs, fine), depth + 1));
    }

    /** The states that one side has in a monitor, sorted. */
    private static int[] states(Side side, int depth) {
        int[] states = new int[side.count];
        for (int i = 0; i < side.count; i++) {
            states[i] = side.states[i][depth];
        }
        Arrays.sort(states);
        return Numbers.distinct(states);
    }

    /** The places of those states that a state goes well with. */
    private static BitSet fine(Monoid monoid, int state, int[] theirs) {
        BitSet fine = new BitSet();
        for (int i = 0; i < theirs.length; i++) {
            fine.set(i, !monoid.broken(monoid.plus(state, theirs[i])));
        }
        return fine;
    }

    private Side among(Side side, int depth, int[] states, BitSet wanted) {
        if (wanted.isEmpty()) {
            return new Side(0);
        }
        Side kept = side;
        if (wanted.cardinality() < states.length) {
            kept = new Side(side.count);
            for (int i = 0; i < side.count; i++) {
                if (wanted.get(Arrays.binarySearch(states, side.states[i][depth]))) {
                    kept.add(side.states[i], side.nodes[i]);
                }
            }
        }
        return merged(kept, depth);
    }

    /** Adds up what differs in no monitor after this one. */
    private Side merged(Side side, int depth) {
        combining.spend(side.count);
        if (side.count < 2) {
            return side;
        }
        // The first of what is alike stands for all of it: from it one comes to the others, and knows the last of them.
        int[] next = new int[side.count];
        int[] last = new int[side.count];
        int different = 0;
        int[] table = new int[Integer.highestOneBit(side.count) << 2];
        for (int i = 0; i < side.count; i++) {
            next[i] = NO_MORE;
            last[i] = i;
            int at = hash(side.states[i], depth + 1) & (table.length - 1);
            while (table[at] > 0 && !same(side.states[table[at] - 1], side.states[i], depth + 1)) {
                at = at + 1 & (table.length - 1);
            }
            if (table[at] == 0) {
                table[at] = i + 1;
                different++;
            } else {
                int first = table[at] - 1;
                next[last[first]] = i;
                last[first] = i;
                last[i] = NO_MORE;
            }
        }
        if (different == side.count) {
            return side;
        }
        Side merged = new Side(different);
        int[] alike = new int[side.count];
        for (int first = 0; first < side.count; first++) {
            if (last[first] != NO_MORE) {
                int count = 0;
                for (int i = first; i != NO_MORE; i = next[i]) {
                    alike[count++] = side.nodes[i];
                }
                merged.add(side.states[first], combining.circuit().either(alike, count));
            }
        }
        return merged;
    }

    /** Of the states from some monitor on. */
    private static int hash(int[] state, int from) {
        int sum = 1;
        for (int i = from; i < state.length; i++) {
            sum = 31 * sum + state[i];
        }
        return sum * Spreading.INT >>> 8;
    }

    private static boolean same(int[] one, int[] other, int from) {
        return Arrays.equals(one, from, one.length, other, from, other.length);
    }

    private int either(Side side) {
        return combining.circuit().either(Arrays.copyOf(side.nodes, side.count), side.count);
    }
}

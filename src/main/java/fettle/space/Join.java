package fettle.space;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;

/**
 * Puts two lots of classes together where nothing is left that could touch a monitor: goes through the monitors one by one, and adds up what has become alike, so
 * that it need not look at each pair.
 */
final class Join {

    private record Side(List<int[]> states, List<Integer> nodes) {
        Side() {
            this(new ArrayList<>(), new ArrayList<>());
        }

        void add(int[] state, int node) {
            states.add(state);
            nodes.add(node);
        }
    }

    private final Combining combining;
    private final Monitors monitors;
    private final int[] looked;
    private final List<Integer> products = new ArrayList<>();

    private Join(Combining combining, Monitors monitors, int[] looked) {
        this.combining = combining;
        this.monitors = monitors;
        this.looked = looked;
    }

    /** The node of all that is valid of one lot with all of another; {@link Circuit#NONE} where nothing is. */
    static int of(Combining combining, Monitors monitors, Classes one, Classes other) {
        TreeSet<Integer> touched = new TreeSet<>();
        for (Classes classes : List.of(one, other)) {
            for (int signature : classes.signatures()) {
                Signature states = combining.signatures().get(signature);
                for (int i = 0; i < states.size(); i++) {
                    touched.add(states.monitor(i));
                }
            }
        }
        int[] looked = touched.stream().mapToInt(Integer::intValue).toArray();
        Join join = new Join(combining, monitors, looked);
        join.go(join.side(one), join.side(other), 0);
        int[] products = join.products.stream().mapToInt(Integer::intValue).toArray();
        return products.length == 0 ? Circuit.NONE : combining.circuit().either(products, products.length);
    }

    private Side side(Classes classes) {
        Side side = new Side();
        for (int i = 0; i < classes.size(); i++) {
            Signature signature = combining.signatures().get(classes.signatures()[i]);
            side.add(Arrays.stream(looked).map(signature::stateOf).toArray(), classes.nodes()[i]);
        }
        return side;
    }

    private void go(Side one, Side other, int depth) {
        if (one.states.isEmpty() || other.states.isEmpty()) {
            return;
        }
        if (depth == looked.length) {
            products.add(combining.circuit().both(either(one.nodes), either(other.nodes)));
            return;
        }
        Monoid monoid = monitors.monoid(looked[depth]);
        TreeSet<Integer> theirs = new TreeSet<>();
        other.states.forEach(state -> theirs.add(state[depth]));
        // States that go well with the same states of the other side are dealt with together.
        Map<List<Integer>, Side> byCompany = new LinkedHashMap<>();
        Map<Integer, List<Integer>> company = new HashMap<>();
        for (int i = 0; i < one.states.size(); i++) {
            int state = one.states.get(i)[depth];
            List<Integer> fine = company.computeIfAbsent(state, mine -> theirs.stream().filter(their -> !monoid.broken(monoid.plus(mine, their))).toList());
            byCompany.computeIfAbsent(fine, unused -> new Side()).add(one.states.get(i), one.nodes.get(i));
        }
        byCompany.forEach((fine, mine) -> go(merged(mine, depth), among(other, depth, fine), depth + 1));
    }

    private Side among(Side side, int depth, List<Integer> states) {
        Side kept = new Side();
        for (int i = 0; i < side.states.size(); i++) {
            if (states.contains(side.states.get(i)[depth])) {
                kept.add(side.states.get(i), side.nodes.get(i));
            }
        }
        return merged(kept, depth);
    }

    /** Adds up what differs in no monitor after this one. */
    private Side merged(Side side, int depth) {
        combining.spend(side.states.size());
        Map<List<Integer>, List<Integer>> alike = new LinkedHashMap<>();
        Map<List<Integer>, int[]> states = new HashMap<>();
        for (int i = 0; i < side.states.size(); i++) {
            int[] state = side.states.get(i);
            List<Integer> rest = Arrays.stream(state, depth + 1, state.length).boxed().toList();
            alike.computeIfAbsent(rest, unused -> new ArrayList<>()).add(side.nodes.get(i));
            states.putIfAbsent(rest, state);
        }
        Side merged = new Side();
        alike.forEach((rest, nodes) -> merged.add(states.get(rest), either(nodes)));
        return merged;
    }

    private int either(List<Integer> nodes) {
        return combining.circuit().either(nodes.stream().mapToInt(Integer::intValue).toArray(), nodes.size());
    }
}

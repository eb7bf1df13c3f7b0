package fettle.space.best;

import java.util.Arrays;
import java.util.BitSet;
import java.util.Comparator;
import java.util.List;

/**
 * What each node of a plan can reach, in a row of numbers that add up: for each column the least and the greatest; the least cost among what has the
 * greatest benefit, and the fewest changes among those; and for each set of rates the most by it.
 */
final class Bounded {

    private final Problem problem;
    private final int columns;
    private final int width;
    private final long[] numbers;
    private final long[][] byPart;
    private final Spread[][] spreads;
    private final int[][] sorted;

    /**
     * Works the numbers out.
     *
     * @param rates by set of rates, what each part reaches
     */
    Bounded(Problem problem, Values values, List<long[]> rates) {
        this.problem = problem;
        this.columns = problem.ledger().columns().size();
        this.width = 2 * columns + 2 + rates.size();
        this.byPart = rates.toArray(new long[0][]);
        BitSet live = values.live();
        this.numbers = new long[live.length() * width];
        for (int column = 0; column < columns; column++) {
            int which = column;
            fill(column, values.least(node -> problem.brings(which, node)));
            fill(columns + column, values.greatest(node -> problem.brings(which, node)));
        }
        for (int set = 0; set < byPart.length; set++) {
            long[] reached = byPart[set];
            fill(2 * columns + 2 + set, values.greatest(node -> reached[problem.plan().first(node)]));
        }
        live.stream().forEach(this::tie);
        this.spreads = spreads(live);
        this.sorted = new int[live.length()][];
    }

    int columns() {
        return columns;
    }

    int width() {
        return width;
    }

    int cheapest() {
        return 2 * columns;
    }

    int unchanged() {
        return 2 * columns + 1;
    }

    int rated(int set) {
        return 2 * columns + 2 + set;
    }

    long at(int node, int number) {
        return numbers[node * width + number];
    }

    /** Adds a node's numbers to others. */
    void add(int node, long[] to) {
        int offset = node * width;
        for (int i = 0; i < width; i++) {
            to[i] += numbers[offset + i];
        }
    }

    /** Adds the numbers of a placed part by itself. */
    void addPart(int node, long[] to) {
        for (int column = 0; column < columns; column++) {
            long brought = problem.brings(column, node);
            to[column] += brought;
            to[columns + column] += brought;
        }
        to[cheapest()] += problem.brings(Ledger.COST, node);
        to[unchanged()] += problem.brings(Ledger.CHANGED, node);
        for (int set = 0; set < byPart.length; set++) {
            to[rated(set)] += byPart[set][problem.plan().first(node)];
        }
    }

    Spread spread(int curve, int node) {
        return spreads[curve][node];
    }

    /** The alternatives of a node, those that reach most at the first rates first. */
    int[] sorted(int either) {
        if (sorted[either] == null) {
            sorted[either] = Arrays.stream(problem.plan().alternatives(either)).boxed()
                    .sorted(Comparator.comparingLong((Integer node) -> -at(node, rated(0)))
                            .thenComparingLong(node -> -at(node, columns + Ledger.BENEFIT))
                            .thenComparingLong(node -> at(node, cheapest()))
                            .thenComparingLong(node -> at(node, unchanged())))
                    .mapToInt(Integer::intValue).toArray();
        }
        return sorted[either];
    }

    private void fill(int number, long[] values) {
        for (int node = 0; node < values.length; node++) {
            numbers[node * width + number] = values[node];
        }
    }

    private void tie(int node) {
        Plan plan = problem.plan();
        switch (plan.kind(node)) {
            case ONE -> { }
            case PART -> {
                set(node, cheapest(), problem.brings(Ledger.COST, node) + at(plan.second(node), cheapest()));
                set(node, unchanged(), problem.brings(Ledger.CHANGED, node) + at(plan.second(node), unchanged()));
            }
            case SLOT -> {
                set(node, cheapest(), at(plan.second(node), cheapest()));
                set(node, unchanged(), at(plan.second(node), unchanged()));
            }
            case BOTH -> {
                set(node, cheapest(), at(plan.first(node), cheapest()) + at(plan.second(node), cheapest()));
                set(node, unchanged(), at(plan.first(node), unchanged()) + at(plan.second(node), unchanged()));
            }
            case EITHER -> {
                int best = Arrays.stream(plan.alternatives(node)).boxed()
                        .min(Comparator.comparingLong((Integer each) -> -at(each, columns + Ledger.BENEFIT))
                                .thenComparingLong(each -> at(each, cheapest()))
                                .thenComparingLong(each -> at(each, unchanged())))
                        .orElseThrow();
                set(node, cheapest(), at(best, cheapest()));
                set(node, unchanged(), at(best, unchanged()));
            }
        }
    }

    private void set(int node, int number, long value) {
        numbers[node * width + number] = value;
    }

    private Spread[][] spreads(BitSet live) {
        Plan plan = problem.plan();
        Spread[][] all = new Spread[problem.ledger().curves().size()][];
        for (int c = 0; c < all.length; c++) {
            Curve curve = problem.ledger().curves().get(c);
            Spread[] spread = new Spread[live.length()];
            live.stream().forEach(node -> spread[node] = switch (plan.kind(node)) {
                case ONE -> curve.one();
                case PART -> curve.both(curve.byPart()[plan.first(node)], spread[plan.second(node)]);
                case SLOT -> spread[plan.second(node)];
                case BOTH -> curve.both(spread[plan.first(node)], spread[plan.second(node)]);
                case EITHER -> Arrays.stream(plan.alternatives(node)).mapToObj(each -> spread[each]).reduce(Spread::or).orElseThrow();
            });
            all[c] = spread;
        }
        return all;
    }
}

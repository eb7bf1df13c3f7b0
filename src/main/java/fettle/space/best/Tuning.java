package fettle.space.best;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;

/**
 * Finds rates on the budget and the rows at which the most that any build reaches comes down close to what one within the demands can reach. Any rates
 * bound truly; good ones bound closely. The builds that reach the most on the way are worth trying.
 */
final class Tuning {

    private static final int ROUNDS = 3;
    /** By how many binary digits the benefit is counted more coarsely, try by try. */
    private static final int STEP = 6;

    private final Problem problem;
    private final Values values;
    private final List<Row> rows;
    private final long[] sizes;
    private final long costSize;
    private final long greatestFactor;
    private final Consumer<List<Integer>> worthTrying;
    private final Effort effort;
    /** Whether a rate would have to be higher than it can be, for the present factor. */
    private boolean capped;

    /**
     * Tunes for a problem.
     *
     * @param rows of which none allows more than its parts can sum to
     * @param sizes by row, the most its parts can sum to
     * @param worthTrying is given the choices of builds that may be good
     * @param effort when it is spent, the rates stay as they are by then
     */
    Tuning(Problem problem, Values values, List<Row> rows, long[] sizes, Consumer<List<Integer>> worthTrying, Effort effort) {
        this.problem = problem;
        this.values = values;
        this.rows = rows;
        this.sizes = sizes;
        this.worthTrying = worthTrying;
        this.effort = effort;
        this.costSize = Math.max(1, values.size("cost", node -> problem.brings(Ledger.COST, node), problem.root()));
        long most = Math.max(1, values.size("benefit", node -> problem.brings(Ledger.BENEFIT, node), problem.root())
                + Math.abs(problem.base(Ledger.BENEFIT)));
        this.greatestFactor = Math.max(1, Math.min(1L << 40, Long.highestOneBit((1L << 56) / most)));
    }

    /** Rates to bound with, the closest first. */
    List<Weights> tuned() {
        // The finer the benefit is counted, the less room is left for rates on other things.
        for (long factor = greatestFactor; ; factor >>= STEP) {
            boolean coarsest = factor >> STEP == 0;
            capped = false;
            List<Weights> tuned = tuned(factor, coarsest);
            if (!capped || coarsest || outOfTime()) {
                return tuned;
            }
        }
    }

    /** Rates for one factor; where one would have to be too high, they are of use only if there is no coarser factor. */
    private List<Weights> tuned(long factor, boolean coarsest) {
        Weights weights = new Weights(factor, 0, new long[rows.size()]);
        boolean scarce = false;
        for (int round = 0; round < ROUNDS; round++) {
            for (int i = problem.limited() ? -1 : 0; i < rows.size() && (coarsest || !capped) && !outOfTime(); i++) {
                weights = settled(weights, i);
                scarce |= rate(weights, i) > 0;
            }
            if (!scarce || outOfTime()) {
                break;
            }
        }
        // Among equals the cheaper wins, so that cost counts a little even where there is enough money.
        long little = Math.max(1, factor / (2 * costSize));
        List<Weights> all = new ArrayList<>(List.of(weights));
        if (weights.cost() < little && little <= most(-1)) {
            all.add(weights.withCost(little));
        }
        return List.copyOf(all);
    }

    private long most(int i) {
        return (1L << 56) / (i < 0 ? costSize : Math.max(1, sizes[i])) / (rows.size() + 1);
    }

    private static long rate(Weights weights, int i) {
        return i < 0 ? weights.cost() : weights.rows()[i];
    }

    private static Weights with(Weights weights, int i, long rate) {
        return i < 0 ? weights.withCost(rate) : weights.withRow(i, rate);
    }

    /** The rate on one scarce thing at which it is just no longer used up, the others staying as they are. */
    private Weights settled(Weights weights, int i) {
        long most = most(i);
        long low = 0;
        if (most == 0 || !over(with(weights, i, 0), i)) {
            return with(weights, i, 0);
        }
        long high = Math.min(most, Math.max(16, rate(weights, i)));
        while (over(with(weights, i, high), i)) {
            low = high;
            if (high == most) {
                capped = true;
                return with(weights, i, most);
            }
            high = Math.min(most, 4 * high);
            if (outOfTime()) {
                return with(weights, i, low);
            }
        }
        while (high - low > Math.max(1, high >> 8) && !outOfTime()) {
            long middle = low + (high - low) / 2;
            if (over(with(weights, i, middle), i)) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return most(with(weights, i, low)) < most(with(weights, i, high)) ? with(weights, i, low) : with(weights, i, high);
    }

    /** Each step goes through all nodes, so that the clock may be looked at each time. */
    private boolean outOfTime() {
        effort.lookNext();
        return effort.spent();
    }

    private long[] values(Weights weights) {
        long[] byPart = byPart(weights);
        return values.greatest(node -> byPart[problem.plan().first(node)]);
    }

    /** What each part reaches at these rates. */
    long[] byPart(Weights weights) {
        long[] byPart = new long[problem.hosts().size()];
        long[] uses = new long[rows.size()];
        for (int part = 0; part < byPart.length; part++) {
            for (int row = 0; row < uses.length; row++) {
                uses[row] = rows.get(row).byPart()[part];
            }
            byPart[part] = weights.of(
                    problem.ledger().columns().get(Ledger.BENEFIT).byPart()[part], problem.ledger().columns().get(Ledger.COST).byPart()[part], uses);
        }
        return byPart;
    }

    /** What is to be added to what the parts reach, the budget aside. */
    long constant(Weights weights) {
        long constant = weights.factor() * problem.base(Ledger.BENEFIT);
        for (int row = 0; row < rows.size(); row++) {
            constant += weights.rows()[row] * rows.get(row).allowed();
        }
        return constant;
    }

    private long most(Weights weights) {
        return values(weights)[problem.root()] + constant(weights) + weights.cost() * problem.budget();
    }

    /** What, by these rates, no benefit exceeds, totals that don't add up aside. */
    BigDecimal bound(Weights weights) {
        return BigDecimal.valueOf(Math.floorDiv(most(weights), weights.factor()), problem.ledger().columns().get(Ledger.BENEFIT).scale());
    }

    /** Whether the build that reaches the most uses more of a scarce thing than there is. */
    private boolean over(Weights weights, int i) {
        long[] reached = values(weights);
        List<Integer> choices = new ArrayList<>();
        List<Integer> parts = problem.parts(either -> {
            int best = Plan.NONE;
            for (int alternative : problem.plan().alternatives(either)) {
                if (best == Plan.NONE || reached[alternative] > reached[best]) {
                    best = alternative;
                }
            }
            choices.add(best);
            return best;
        });
        worthTrying.accept(choices);
        long used = 0;
        for (int node : parts) {
            used += i < 0 ? problem.brings(Ledger.COST, node) : rows.get(i).byPart()[problem.plan().first(node)];
        }
        return used > (i < 0 ? problem.budget() : rows.get(i).allowed());
    }
}

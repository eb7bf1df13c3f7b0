package fettle.space.worth;

import fettle.catalog.Attribute;
import fettle.catalog.Catalog;
import fettle.space.Prices;
import fettle.space.Terrain;
import fettle.space.worth.Columns.Small;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.IntStream;

/**
 * By what assemblies are compared: a column for each attribute that serves in some direction, one for its loaded stats, one for cost where cost counts, and
 * the role kinds.
 *
 * <p>Small columns are whole numbers in which more is better: sums, scaled to their last place; the ranks of greatest and least values; and sets of role
 * kinds as bits. What may not fit, or is a product, is a large column, kept as the decimals from the least to the greatest that may come about.
 */
final class Measure {

    /** How assemblies compare. */
    enum Order { WORSE, EVEN, BETTER }

    private final Columns columns;
    private final List<Column> large;
    private final boolean[] scales;
    private final boolean[] turns;
    private final boolean turning;
    /** How many of the small columns are entries by themselves. */
    private final int plain;
    private final int weighing;
    /** The small columns' sorts, for what is done most often. */
    private final Small[] sorts;
    private final long[] widths;
    private final int[] adding;
    private final Yield nothing;
    private final Yield[] parts;

    private Measure(Columns columns) {
        this.columns = columns;
        this.large = columns.large();
        this.plain = columns.plain();
        this.weighing = columns.weighing();
        this.sorts = columns.small().toArray(Small[]::new);
        this.widths = columns.smallFigures().stream().mapToLong(Measure::width).toArray();
        this.scales = columns.scales();
        this.turns = columns.turns();
        this.turning = IntStream.range(0, turns.length).anyMatch(c -> turns[c]);
        this.adding = IntStream.iterate(sorts.length - 1, c -> c >= 0, c -> c - 1).filter(c -> sorts[c] == Small.ADD).toArray();
        this.nothing = nothing();
        this.parts = new Yield[columns.sold().length];
        for (int p = 0; p < parts.length; p++) {
            parts[p] = columns.sold()[p] ? gather(p) : null;
        }
    }

    /** Ignoring cost. */
    static Measure ignoringCost(Catalog catalog, Terrain terrain) {
        return new Measure(new Columns(catalog, terrain, Optional.empty()));
    }

    /** With cost; parts that are not sold bring nothing that could be compared. */
    static Measure withCost(Catalog catalog, Terrain terrain, Prices prices) {
        return new Measure(new Columns(catalog, terrain, Optional.of(prices)));
    }

    private Yield nothing() {
        long[] steps = new long[sorts.length];
        for (int c = 0; c < steps.length; c++) {
            steps[c] = switch (sorts[c]) {
                case ADD, ROLES -> 0;
                case PEAK -> Long.MIN_VALUE;
                case FLOOR -> Long.MAX_VALUE;
            };
        }
        BigDecimal[] identities = new BigDecimal[large.size()];
        for (int c = 0; c < identities.length; c++) {
            identities[c] = product(c) ? BigDecimal.ONE : BigDecimal.ZERO;
        }
        return new Yield(steps, identities, identities);
    }

    private boolean product(int c) {
        return large.get(c).combine() == Attribute.Combine.PRODUCT;
    }

    private Yield gather(int part) {
        long[] steps = columns.smallFigures().stream().mapToLong(figures -> figures[part]).toArray();
        BigDecimal[] figures = columns.largeFigures().stream().map(all -> all[part]).toArray(BigDecimal[]::new);
        // Most parts bring nothing in the large columns, which one look tells where they all have the same.
        BigDecimal[] shared = Arrays.equals(figures, nothing.least()) ? nothing.least() : figures;
        return new Yield(steps, shared, shared);
    }

    /** What nothing brings. */
    Yield ofNothing() {
        return nothing;
    }

    /** What a part by itself brings; empty-handed ({@code null}) where it takes no part in the comparison. */
    Yield ofPart(int part) {
        return parts[part];
    }

    /** What two bring together. */
    Yield both(Yield one, Yield other) {
        if (one == nothing) {
            return other;
        }
        if (other == nothing) {
            return one;
        }
        long[] sum = new long[one.small().length];
        for (int c = 0; c < sum.length; c++) {
            sum[c] = together(sorts[c], one.small()[c], other.small()[c]);
        }
        if (bare(other)) {
            return new Yield(sum, one.least(), one.most());
        }
        if (bare(one)) {
            return new Yield(sum, other.least(), other.most());
        }
        boolean exact = one.least() == one.most() && other.least() == other.most();
        BigDecimal[] least = new BigDecimal[large.size()];
        BigDecimal[] most = exact ? least : new BigDecimal[large.size()];
        for (int c = 0; c < least.length; c++) {
            if (product(c)) {
                multiply(one, other, c, least, most);
            } else {
                least[c] = plus(one.least()[c], other.least()[c]);
                most[c] = exact ? least[c] : plus(one.most()[c], other.most()[c]);
            }
        }
        return new Yield(sum, least, most);
    }

    /** What any number bring together. */
    Yield all(Yield... some) {
        long[] sum = some[0].small().clone();
        Yield large = some[0];
        boolean one = true;
        for (int i = 1; i < some.length; i++) {
            for (int c = 0; c < sum.length; c++) {
                sum[c] = together(sorts[c], sum[c], some[i].small()[c]);
            }
            one &= bare(large) || bare(some[i]);
            large = bare(large) ? some[i] : large;
        }
        if (one) {
            return new Yield(sum, large.least(), large.most());
        }
        Yield all = some[0];
        for (int i = 1; i < some.length; i++) {
            all = both(all, some[i]);
        }
        return all;
    }

    /** Whether it is seen at once that something brings nothing in the large columns. */
    private boolean bare(Yield yield) {
        return yield.least() == nothing.least() && yield.most() == nothing.least();
    }

    private static long together(Small sort, long one, long other) {
        return switch (sort) {
            case ADD -> Math.addExact(one, other);
            case PEAK -> Math.max(one, other);
            case FLOOR -> Math.min(one, other);
            case ROLES -> one | other;
        };
    }

    private static void multiply(Yield one, Yield other, int c, BigDecimal[] least, BigDecimal[] most) {
        BigDecimal first = times(one.least()[c], other.least()[c]);
        if (one.least()[c] == one.most()[c] && other.least()[c] == other.most()[c]) {
            least[c] = first;
            most[c] = first;
            return;
        }
        BigDecimal second = one.least()[c].multiply(other.most()[c]);
        BigDecimal third = one.most()[c].multiply(other.least()[c]);
        BigDecimal fourth = one.most()[c].multiply(other.most()[c]);
        least[c] = first.min(second).min(third.min(fourth));
        most[c] = first.max(second).max(third.max(fourth));
    }

    private static BigDecimal plus(BigDecimal one, BigDecimal other) {
        return one == BigDecimal.ZERO ? other : other == BigDecimal.ZERO ? one : one.add(other);
    }

    /** What is multiplied by the same one as nothing brings stays the same, which shows at once that it does. */
    private static BigDecimal times(BigDecimal one, BigDecimal other) {
        return one == BigDecimal.ONE ? other : other == BigDecimal.ONE ? one : one.multiply(other);
    }

    /** The best of either in each column. */
    Yield best(Yield one, Yield other) {
        return best(one, other, false);
    }

    /**
     * The same, see {@link Upper}.
     *
     * @param ours whether nobody else has the first, so that it may be changed rather than another made
     */
    Yield best(Yield one, Yield other, boolean ours) {
        // Often one has the best already, and no other need be made.
        if (holds(one, other)) {
            return one;
        }
        if (holds(other, one)) {
            return other;
        }
        long[] best = ours ? one.small() : new long[one.small().length];
        for (int c = 0; c < best.length; c++) {
            best[c] = sorts[c] == Small.ROLES ? one.small()[c] | other.small()[c] : Math.max(one.small()[c], other.small()[c]);
        }
        if (sameLarge(one, other)) {
            return ours ? one : new Yield(best, one.least(), one.most());
        }
        BigDecimal[] least = new BigDecimal[large.size()];
        BigDecimal[] most = new BigDecimal[large.size()];
        for (int c = 0; c < least.length; c++) {
            least[c] = one.least()[c].min(other.least()[c]);
            most[c] = one.most()[c].max(other.most()[c]);
        }
        return new Yield(best, least, most);
    }

    /** Whether one is the best of both in each column. */
    private boolean holds(Yield one, Yield other) {
        if (one == other) {
            return true;
        }
        for (int c = 0; c < sorts.length; c++) {
            long a = one.small()[c];
            long b = other.small()[c];
            if (sorts[c] == Small.ROLES ? (a | b) != a : a < b) {
                return false;
            }
        }
        return sameLarge(one, other);
    }

    /** How one compares with another: worse in some column, even in all, or better in some and worse in none. Of bounds the best end is taken. */
    Order compare(Yield one, Yield other) {
        boolean better = false;
        for (int c = 0; c < one.small().length; c++) {
            long a = one.small()[c];
            long b = other.small()[c];
            if (sorts[c] == Small.ROLES) {
                if ((a & b) != b) {
                    return Order.WORSE;
                }
            } else if (a < b) {
                return Order.WORSE;
            } else {
                better |= a > b;
            }
        }
        for (int c = 0; c < large.size() && !sameLarge(one, other); c++) {
            int order = order(one, other, c);
            if (order < 0) {
                return Order.WORSE;
            }
            better |= order > 0;
        }
        return better ? Order.BETTER : Order.EVEN;
    }

    /** Whether it is seen at once that two bring the same in the large columns, as all do where there are none. */
    private static boolean sameLarge(Yield one, Yield other) {
        return one.least() == other.least() && one.most() == other.most();
    }

    /** How two together compare with another, without putting them together where small columns tell. */
    Order compareBoth(Yield one, Yield other, Yield target) {
        boolean better = false;
        for (int c = 0; c < sorts.length; c++) {
            long a = together(sorts[c], one.small()[c], other.small()[c]);
            long b = target.small()[c];
            if (sorts[c] == Small.ROLES ? (a & b) != b : a < b) {
                return Order.WORSE;
            }
            better |= sorts[c] != Small.ROLES && a > b;
        }
        return withLarge(better, target, one, other);
    }

    /** Whether something brings nothing in the large columns, which most parts don't. */
    private boolean plainly(Yield yield) {
        for (int c = 0; c < nothing.least().length && !bare(yield); c++) {
            if (yield.least()[c] != nothing.least()[c] || yield.most()[c] != nothing.least()[c]) {
                return false;
            }
        }
        return true;
    }

    /** The same of any number together. */
    Order compareAll(Yield[] all, Yield target) {
        boolean better = false;
        for (int c = 0; c < sorts.length; c++) {
            long a = all[0].small()[c];
            for (int i = 1; i < all.length; i++) {
                a = together(sorts[c], a, all[i].small()[c]);
            }
            long b = target.small()[c];
            if (sorts[c] == Small.ROLES ? (a & b) != b : a < b) {
                return Order.WORSE;
            }
            better |= sorts[c] != Small.ROLES && a > b;
        }
        return withLarge(better, target, all);
    }

    /** The order of all together, of whose small columns none is worse than the target's. */
    private Order withLarge(boolean better, Yield target, Yield... all) {
        boolean plain = plainly(target);
        for (int i = 0; i < all.length && plain; i++) {
            plain = plainly(all[i]);
        }
        if (plain) {
            return better ? Order.BETTER : Order.EVEN;
        }
        return compare(all(all), target);
    }

    private int order(Yield one, Yield other, int c) {
        return large.get(c).higher() ? compare(one.most()[c], other.most()[c]) : compare(other.least()[c], one.least()[c]);
    }

    /** Whether one brings no less than another together with anything that may be added to both; not less in any way at all where figures can turn round. */
    boolean neverWorse(Yield one, Yield other) {
        for (int c = 0; c < large.size() && turning; c++) {
            if (turns[c] && !(same(one.least()[c], one.most()[c]) && same(other.least()[c], other.most()[c]) && same(one.least()[c], other.least()[c]))) {
                return false;
            }
        }
        return compare(one, other) != Order.WORSE;
    }

    /** The same, and better together with anything that may be added to both. */
    boolean alwaysBetter(Yield one, Yield other) {
        if (!neverWorse(one, other)) {
            return false;
        }
        for (int c = 0; c < one.small().length; c++) {
            if (sorts[c] == Small.ADD && one.small()[c] > other.small()[c]) {
                return true;
            }
        }
        for (int c = 0; c < large.size(); c++) {
            if (!scales[c] && order(one, other, c) > 0) {
                return true;
            }
        }
        return false;
    }

    private static boolean same(BigDecimal one, BigDecimal other) {
        return compare(one, other) == 0;
    }

    /** Most figures are the very same, since most parts bring nothing. */
    private static int compare(BigDecimal one, BigDecimal other) {
        return one == other ? 0 : one.compareTo(other);
    }

    /** The columns in which one is better than another. */
    List<Column> leads(Yield one, Yield other) {
        List<Column> leads = new ArrayList<>();
        for (int c = 0; c < plain; c++) {
            if (one.small()[c] > other.small()[c]) {
                leads.add(columns.smallColumns().get(c));
            }
        }
        for (int c = 0; c < large.size(); c++) {
            if (order(one, other, c) > 0) {
                leads.add(large.get(c));
            }
        }
        return leads;
    }

    /** The columns that add up, those that weigh several first; not to be changed. */
    int[] adding() {
        return adding;
    }

    /** Whether a part does no more than add to sums, so that what is on it compares as before. */
    boolean addsOnly(int part) {
        for (int c = 0; c < sorts.length; c++) {
            if (sorts[c] != Small.ADD && parts[part].small()[c] != nothing.small()[c]) {
                return false;
            }
        }
        for (int c = 0; c < large.size(); c++) {
            if (product(c) && !same(parts[part].least()[c], BigDecimal.ONE)) {
                return false;
            }
        }
        return true;
    }

    /** How many small columns are entries by themselves, the first ones. */
    int plain() {
        return plain;
    }

    /** How far apart parts are at most in a small column; at least 1. */
    long widest(int column) {
        return widths[column];
    }

    private static long width(long[] figures) {
        long low = Long.MAX_VALUE;
        long high = Long.MIN_VALUE;
        for (long figure : figures) {
            if (figure != Long.MIN_VALUE && figure != Long.MAX_VALUE) {
                low = Math.min(low, figure);
                high = Math.max(high, figure);
            }
        }
        return high < low ? 1 : Math.max(1, high - low);
    }

    /** Whether two bring the same role kinds. */
    boolean sameRoles(Yield one, Yield other) {
        for (int c = plain; c < sorts.length; c++) {
            if (sorts[c] == Small.ROLES && one.small()[c] != other.small()[c]) {
                return false;
            }
        }
        return true;
    }

    /** A figure that is no less where something is as good in every column. */
    long weight(Yield yield) {
        return weighing < 0 ? 0 : yield.small()[weighing];
    }

    /** How many columns of something exact are as good as a bound. */
    int reached(Yield exact, Yield bound) {
        int reached = 0;
        for (int c = 0; c < exact.small().length; c++) {
            reached += exact.small()[c] == bound.small()[c] ? 1 : 0;
        }
        for (int c = 0; c < large.size(); c++) {
            reached += order(exact, bound, c) == 0 ? 1 : 0;
        }
        return reached;
    }
}

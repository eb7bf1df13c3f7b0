package fettle.space.worth;

import fettle.catalog.Attribute;
import fettle.catalog.Catalog;
import fettle.catalog.Part;
import fettle.catalog.Stat;
import fettle.space.Prices;
import fettle.space.Terrain;
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

    /** How a small column combines. */
    private enum Small { ADD, PEAK, FLOOR, ROLES }

    /** How assemblies compare. */
    enum Order { WORSE, EVEN, BETTER }

    private static final int ROLES_A_COLUMN = 62;
    private static final int MOST_PLACES = 9;
    private static final long MIXED = 1L << 20;
    private static final long MOST_STEPS = 1L << 40;
    private static final BigDecimal HUNDRED = BigDecimal.valueOf(100);

    private final List<Small> small = new ArrayList<>();
    private final List<Column> smallColumns = new ArrayList<>();
    private final List<long[]> smallFigures = new ArrayList<>();
    private final List<Column> large = new ArrayList<>();
    private final List<BigDecimal[]> largeFigures = new ArrayList<>();
    private final List<Boolean> scales = new ArrayList<>();
    private final List<Boolean> turns = new ArrayList<>();
    private final boolean turning;
    /** How many of the small columns are entries by themselves. */
    private final int plain;
    /** The column that weighs all that add up evenly, or the only one; less than 0 where there is none. */
    private int weighing = -1;
    /** The small columns' sorts again, for what is done most often. */
    private final Small[] sorts;
    private final long[] widths;
    private final int[] adding;
    private final Yield nothing;
    private final Yield[] parts;

    private Measure(Catalog catalog, Terrain terrain, Optional<Prices> prices) {
        List<Part> entries = terrain.hosts().subList(0, terrain.parts()).stream().map(catalog.parts()::get).toList();
        for (Attribute attribute : catalog.attributes().values()) {
            if (attribute.better() != Attribute.Better.NONE) {
                add(new Column(Optional.of(attribute), false), entries.stream().map(part -> figure(part.stats(), attribute)).toArray(BigDecimal[]::new));
                add(new Column(Optional.of(attribute), true), entries.stream().map(part -> figure(part.loaded(), attribute)).toArray(BigDecimal[]::new));
            }
        }
        boolean[] sold = new boolean[entries.size()];
        Arrays.fill(sold, true);
        prices.ifPresent(open -> {
            BigDecimal[] costs = new BigDecimal[entries.size()];
            for (int p = 0; p < costs.length; p++) {
                Optional<Prices.Priced> cheapest = open.cheapest(entries.get(p).id());
                sold[p] = cheapest.isPresent();
                costs[p] = cheapest.map(Prices.Priced::cost).orElse(null);
            }
            add(Column.COST, costs);
        });
        plain = small.size();
        addMixtures(entries.size());
        addRoles(catalog, entries);
        widths = smallFigures.stream().mapToLong(Measure::width).toArray();
        sorts = small.toArray(Small[]::new);
        turning = turns.contains(true);
        adding = IntStream.iterate(sorts.length - 1, c -> c >= 0, c -> c - 1).filter(c -> sorts[c] == Small.ADD).toArray();
        nothing = nothing();
        parts = new Yield[entries.size()];
        for (int p = 0; p < parts.length; p++) {
            parts[p] = sold[p] ? gather(p) : null;
        }
    }

    /** Ignoring cost. */
    static Measure ignoringCost(Catalog catalog, Terrain terrain) {
        return new Measure(catalog, terrain, Optional.empty());
    }

    /** With cost; parts that are not sold bring nothing that could be compared. */
    static Measure withCost(Catalog catalog, Terrain terrain, Prices prices) {
        return new Measure(catalog, terrain, Optional.of(prices));
    }

    private static BigDecimal figure(Map<String, Stat> stats, Attribute attribute) {
        Stat stat = stats.get(attribute.id());
        return stat == null ? null : stat.value();
    }

    /** A column, unless no part has a figure in it. */
    private void add(Column column, BigDecimal[] figures) {
        if (Arrays.stream(figures).allMatch(figure -> figure == null)) {
            return;
        }
        switch (column.combine()) {
            case SUM, PERCENT -> addSum(column, figures);
            case MAX, MIN -> addRanks(column, figures);
            case PRODUCT -> {
                BigDecimal[] factors = Arrays.stream(figures).map(Measure::factor).toArray(BigDecimal[]::new);
                addLarge(column, factors, Arrays.stream(factors).anyMatch(factor -> factor.signum() <= 0), Arrays.stream(factors).anyMatch(factor -> factor.signum() < 0));
            }
        }
    }

    private static BigDecimal factor(BigDecimal percent) {
        return percent == null ? BigDecimal.ONE : percent.add(HUNDRED).divide(HUNDRED);
    }

    private void addSum(Column column, BigDecimal[] figures) {
        int places = 0;
        for (BigDecimal figure : figures) {
            places = figure == null ? places : Math.max(places, figure.stripTrailingZeros().scale());
        }
        long[] steps = new long[figures.length];
        boolean fits = places <= MOST_PLACES;
        for (int p = 0; p < figures.length && fits; p++) {
            if (figures[p] != null) {
                BigDecimal scaled = figures[p].movePointRight(places);
                fits = scaled.abs().compareTo(BigDecimal.valueOf(MOST_STEPS)) < 0;
                steps[p] = fits ? column.higher() ? scaled.longValueExact() : -scaled.longValueExact() : 0;
            }
        }
        if (fits) {
            addSmall(Small.ADD, column, steps);
        } else {
            addLarge(column, Arrays.stream(figures).map(figure -> figure == null ? BigDecimal.ZERO : figure).toArray(BigDecimal[]::new), false, false);
        }
    }

    /** Greatest and least values only ever compare, so that their order is all that counts. */
    private void addRanks(Column column, BigDecimal[] figures) {
        boolean turned = !column.higher();
        Map<BigDecimal, Integer> ranks = new TreeMap<>();
        TreeSet<BigDecimal> values = new TreeSet<>();
        Arrays.stream(figures).filter(figure -> figure != null).forEach(values::add);
        for (BigDecimal value : values) {
            ranks.put(value, turned ? -ranks.size() : ranks.size());
        }
        // A maximum of which less is better is a minimum of what is turned round, and the other way round.
        boolean peak = (column.combine() == Attribute.Combine.MAX) != turned;
        long none = peak ? Long.MIN_VALUE : Long.MAX_VALUE;
        addSmall(peak ? Small.PEAK : Small.FLOOR, column, Arrays.stream(figures).mapToLong(figure -> figure == null ? none : ranks.get(figure)).toArray());
    }

    private void addSmall(Small sort, Column column, long[] figures) {
        small.add(sort);
        smallColumns.add(column);
        smallFigures.add(figures);
    }

    private void addLarge(Column column, BigDecimal[] figures, boolean scaling, boolean turning) {
        large.add(column);
        largeFigures.add(figures);
        scales.add(scaling);
        turns.add(turning);
    }

    /** Weighed sums of the columns that add up: better in none of these where worse in none of those, they tell early what cannot be reached together. */
    private void addMixtures(int parts) {
        List<Integer> adding = new ArrayList<>();
        List<Long> weights = new ArrayList<>();
        for (int c = 0; c < small.size(); c++) {
            long[] figures = smallFigures.get(c);
            long widest = Arrays.stream(figures).map(Math::abs).max().orElse(0);
            if (small.get(c) == Small.ADD && widest > 0) {
                adding.add(c);
                weights.add(Math.max(1, MIXED / widest));
            }
        }
        weighing = adding.size() > 1 ? small.size() : adding.isEmpty() ? -1 : adding.get(0);
        if (adding.size() > 1) {
            for (int favoured = -1; favoured < adding.size(); favoured++) {
                mix(adding, weights, favoured, 4, parts);
            }
            for (int left = 0; left < adding.size() && adding.size() > 2; left++) {
                mix(adding, weights, left, 0, parts);
            }
        }
    }

    private void mix(List<Integer> adding, List<Long> weights, int favoured, long favour, int parts) {
        long[] mixed = new long[parts];
        for (int p = 0; p < parts; p++) {
            for (int i = 0; i < adding.size(); i++) {
                mixed[p] += smallFigures.get(adding.get(i))[p] * weights.get(i) * (i == favoured ? favour : 1);
            }
        }
        addSmall(Small.ADD, Column.COST, mixed);
    }

    private void addRoles(Catalog catalog, List<Part> entries) {
        List<String> roles = catalog.kinds().values().stream().filter(Catalog.Kind::role).map(Catalog.Kind::id).toList();
        for (int from = 0; from < roles.size(); from += ROLES_A_COLUMN) {
            List<String> some = roles.subList(from, Math.min(roles.size(), from + ROLES_A_COLUMN));
            long[] bits = new long[entries.size()];
            for (int p = 0; p < bits.length; p++) {
                int at = entries.get(p).kind().map(some::indexOf).orElse(-1);
                bits[p] = at < 0 ? 0 : 1L << at;
            }
            addSmall(Small.ROLES, Column.COST, bits);
        }
    }

    private Yield nothing() {
        long[] steps = new long[small.size()];
        for (int c = 0; c < steps.length; c++) {
            steps[c] = switch (small.get(c)) {
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
        long[] steps = smallFigures.stream().mapToLong(figures -> figures[part]).toArray();
        BigDecimal[] figures = largeFigures.stream().map(all -> all[part]).toArray(BigDecimal[]::new);
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
        // Often one has the best already, and no other need be made.
        if (holds(one, other)) {
            return one;
        }
        if (holds(other, one)) {
            return other;
        }
        long[] best = new long[one.small().length];
        for (int c = 0; c < best.length; c++) {
            best[c] = small.get(c) == Small.ROLES ? one.small()[c] | other.small()[c] : Math.max(one.small()[c], other.small()[c]);
        }
        if (sameLarge(one, other)) {
            return new Yield(best, one.least(), one.most());
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
        Yield together = all[0];
        for (int i = 1; i < all.length; i++) {
            together = both(together, all[i]);
        }
        return compare(together, target);
    }

    private int order(Yield one, Yield other, int c) {
        return large.get(c).higher() ? compare(one.most()[c], other.most()[c]) : compare(other.least()[c], one.least()[c]);
    }

    /** Whether one brings no less than another together with anything that may be added to both; not less in any way at all where figures can turn round. */
    boolean neverWorse(Yield one, Yield other) {
        for (int c = 0; c < large.size() && turning; c++) {
            if (turns.get(c) && !(same(one.least()[c], one.most()[c]) && same(other.least()[c], other.most()[c]) && same(one.least()[c], other.least()[c]))) {
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
            if (small.get(c) == Small.ADD && one.small()[c] > other.small()[c]) {
                return true;
            }
        }
        for (int c = 0; c < large.size(); c++) {
            if (!scales.get(c) && order(one, other, c) > 0) {
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
                leads.add(smallColumns.get(c));
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
        for (int c = 0; c < small.size(); c++) {
            if (small.get(c) != Small.ADD && parts[part].small()[c] != nothing.small()[c]) {
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

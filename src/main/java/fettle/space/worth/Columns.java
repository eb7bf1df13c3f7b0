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

/**
 * The columns by which assemblies are compared, and the figures that each part has in them: whole numbers in which more is better, where sums fit once they are scaled to
 * their last place, ranks, and sets of role kinds; decimals for all else.
 */
final class Columns {

    /** How a small column combines. */
    enum Small { ADD, PEAK, FLOOR, ROLES }

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
    /** How many of the small columns are entries by themselves. */
    private final int plain;
    private final boolean[] sold;
    private int weighing = -1;

    /**
     * The columns of a catalog.
     *
     * @param prices what cost is looked up in, where cost counts
     */
    Columns(Catalog catalog, Terrain terrain, Optional<Prices> prices) {
        List<Part> entries = terrain.hosts().subList(0, terrain.parts()).stream().map(catalog.parts()::get).toList();
        for (Attribute attribute : catalog.attributes().values()) {
            if (attribute.better() != Attribute.Better.NONE) {
                add(new Column(Optional.of(attribute), false), entries.stream().map(part -> figure(part.stats(), attribute)).toArray(BigDecimal[]::new));
                add(new Column(Optional.of(attribute), true), entries.stream().map(part -> figure(part.loaded(), attribute)).toArray(BigDecimal[]::new));
            }
        }
        sold = new boolean[entries.size()];
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
                BigDecimal[] factors = Arrays.stream(figures).map(Columns::factor).toArray(BigDecimal[]::new);
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

    /** How each small column combines. */
    List<Small> small() {
        return small;
    }

    /** What each small column is for; what weighs several, and roles, are for none. */
    List<Column> smallColumns() {
        return smallColumns;
    }

    /** By small column, the parts' figures. */
    List<long[]> smallFigures() {
        return smallFigures;
    }

    /** What each large column is for. */
    List<Column> large() {
        return large;
    }

    /** By large column, the parts' figures. */
    List<BigDecimal[]> largeFigures() {
        return largeFigures;
    }

    /** Of each large column, whether some figure takes away all there is, or turns it round. */
    boolean[] scales() {
        return array(scales);
    }

    /** Of each large column, whether some figure turns what there is round. */
    boolean[] turns() {
        return array(turns);
    }

    /** How many of the small columns are entries by themselves, the first ones. */
    int plain() {
        return plain;
    }

    /** The small column that weighs all that add up evenly, or the only one that does; less than 0 where there is none. */
    int weighing() {
        return weighing;
    }

    /** Whether each part takes part in the comparison. */
    boolean[] sold() {
        return sold;
    }

    private static boolean[] array(List<Boolean> flags) {
        boolean[] array = new boolean[flags.size()];
        for (int i = 0; i < array.length; i++) {
            array[i] = flags.get(i);
        }
        return array;
    }
}

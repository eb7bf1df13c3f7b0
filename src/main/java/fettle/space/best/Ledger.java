package fettle.space.best;

import fettle.catalog.Attribute;
import fettle.catalog.Catalog;
import fettle.catalog.Limit;
import fettle.catalog.Part;
import fettle.catalog.Stat;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** All that is added up, or multiplied or compared, to judge a build. */
final class Ledger {

    /** The column of the weighed totals that add up. */
    static final int BENEFIT = 0;
    /** What that column is called; no attribute is. */
    static final String WEIGHED = "the benefit";
    /** The column of costs. */
    static final int COST = 1;
    /** The column of changed paths, which the plan knows. */
    static final int CHANGED = 2;

    /** A curve that the lens weighs, with its weight, turned for {@code better: lower}. */
    record Weighed(int curve, BigDecimal weight) {}

    private record Key(String attribute, boolean loaded) {}

    private final Catalog catalog;
    private final List<String> hosts;
    private final Part platform;
    private final Demands demands;
    private final List<Column> columns = new ArrayList<>();
    private final List<Curve> curves = new ArrayList<>();
    private final List<Weighed> weighed = new ArrayList<>();
    private final List<Gauge> gauges = new ArrayList<>();
    private final Map<Key, Quantity> quantities = new HashMap<>();
    private final Map<String, Integer> places = new HashMap<>();

    /**
     * Opens the ledger for a platform.
     *
     * @param hosts ids by part number
     * @param costs by part number; zero where a part cannot be had
     */
    Ledger(Catalog catalog, List<String> hosts, String platform, Demands demands, BigDecimal[] costs) {
        this.catalog = catalog;
        this.hosts = hosts;
        this.platform = catalog.platforms().get(platform);
        this.demands = demands;
        benefit();
        columns.add(Column.of("cost", BigDecimal.ZERO, costs, 0));
        columns.add(new Column(0, new long[hosts.size()], 0));
        demands.limits().forEach(this::note);
        demands.limits().forEach(this::gauge);
    }

    List<Column> columns() {
        return columns;
    }

    List<Curve> curves() {
        return curves;
    }

    List<Weighed> weighed() {
        return weighed;
    }

    List<Gauge> gauges() {
        return gauges;
    }

    private void benefit() {
        BigDecimal[] byPart = zeros();
        BigDecimal base = BigDecimal.ZERO;
        Map<String, BigDecimal> weights = demands.lens().map(lens -> lens.weights()).orElse(Map.of());
        for (Attribute attribute : catalog.attributes().values()) {
            BigDecimal weight = weights.get(attribute.id());
            if (weight == null) {
                continue;
            }
            BigDecimal signed = attribute.better() == Attribute.Better.LOWER ? weight.negate() : weight;
            Optional<BigDecimal[]> figures = added(attribute, demands.loaded());
            if (figures.isPresent()) {
                base = base.add(signed.multiply(addedBase(attribute)));
                for (int part = 0; part < byPart.length; part++) {
                    byPart[part] = byPart[part].add(signed.multiply(figures.get()[part]));
                }
            } else if (quantity(attribute, demands.loaded()) instanceof Quantity.Bent bent) {
                weighed.add(new Weighed(bent.curve(), signed));
            }
        }
        columns.add(BENEFIT, Column.of(WEIGHED, base, byPart, 0));
    }

    /** A table is read in whole units, so its points must be whole. */
    private void note(Limit limit) {
        if (limit.bound() instanceof Limit.Table table) {
            for (Limit.Point point : table.points()) {
                places.merge(limit.attribute(), Math.max(0, point.y().scale()), Math::max);
                places.merge(table.by(), Math.max(0, point.x().scale()), Math::max);
            }
        }
    }

    private void gauge(Limit limit) {
        if (!known(limit)) {
            return;
        }
        Quantity value = quantity(catalog.attributes().get(limit.attribute()), limit.loaded());
        Optional<Quantity> by = limit.bound() instanceof Limit.Table table
                ? Optional.of(quantity(catalog.attributes().get(table.by()), limit.loaded()))
                : Optional.empty();
        if (value instanceof Quantity.Missing || by.map(followed -> followed instanceof Quantity.Missing).orElse(false)) {
            return;
        }
        long fixed = 0;
        Optional<Table> whole = Optional.empty();
        if (value instanceof Quantity.Added added) {
            Column column = columns.get(added.column());
            if (limit.bound() instanceof Limit.Fixed bound) {
                fixed = limit.side() == Limit.Side.AT_MOST ? column.floor(bound.value()) : column.ceiling(bound.value());
            } else if (by.get() instanceof Quantity.Added followed) {
                Column other = columns.get(followed.column());
                List<Limit.Point> points = ((Limit.Table) limit.bound()).points();
                // A line to a point that was moved nearer would be another.
                if (points.stream().allMatch(point -> other.counts(point.x()) && column.counts(point.y()))) {
                    whole = Optional.of(new Table(
                            points.stream().mapToLong(point -> other.floor(point.x())).toArray(),
                            points.stream().mapToLong(point -> column.floor(point.y())).toArray()));
                }
            }
        }
        gauges.add(new Gauge(limit, value, by, fixed, whole));
    }

    /** A limit that names an attribute which the catalog doesn't have can't be measured, and holds. */
    private boolean known(Limit limit) {
        return catalog.attributes().containsKey(limit.attribute())
                && (!(limit.bound() instanceof Limit.Table table) || catalog.attributes().containsKey(table.by()));
    }

    private Quantity quantity(Attribute attribute, boolean loaded) {
        Key key = new Key(attribute.id(), loaded);
        Quantity known = quantities.get(key);
        if (known == null) {
            known = made(attribute, loaded);
            quantities.put(key, known);
        }
        return known;
    }

    private Quantity made(Attribute attribute, boolean loaded) {
        Optional<BigDecimal[]> figures = added(attribute, loaded);
        if (figures.isPresent()) {
            columns.add(Column.of(attribute.id(), addedBase(attribute), figures.get(), places.getOrDefault(attribute.id(), 0)));
            return new Quantity.Added(columns.size() - 1);
        }
        Optional<BigDecimal> base = base(attribute);
        boolean product = attribute.combine() == Attribute.Combine.PRODUCT;
        boolean percent = attribute.combine() == Attribute.Combine.PERCENT;
        if (percent || product && base.isEmpty()) {
            return new Quantity.Missing();
        }
        Curve.Combine combine = product ? Curve.Combine.PRODUCT : attribute.combine() == Attribute.Combine.MAX ? Curve.Combine.MAX : Curve.Combine.MIN;
        Curve bare = new Curve(combine, base.map(Spread::at).orElse(Spread.NOTHING), new Spread[hosts.size()], factor(attribute));
        for (int part = 0; part < hosts.size(); part++) {
            Spread own = bare.one();
            for (BigDecimal stat : stats(part, attribute, loaded)) {
                own = bare.both(own, Spread.at(product ? percent(stat) : stat));
            }
            bare.byPart()[part] = own;
        }
        curves.add(bare);
        return new Quantity.Bent(curves.size() - 1);
    }

    /** What each part adds to the final value; empty where the total does not add up, or has no base that it needs. */
    private Optional<BigDecimal[]> added(Attribute attribute, boolean loaded) {
        BigDecimal each;
        switch (attribute.combine()) {
            case SUM -> each = factor(attribute);
            case PERCENT -> {
                if (base(attribute).isEmpty()) {
                    return Optional.empty();
                }
                each = factor(attribute).multiply(base(attribute).get()).movePointLeft(2);
            }
            default -> {
                return Optional.empty();
            }
        }
        BigDecimal[] figures = zeros();
        for (int part = 0; part < figures.length; part++) {
            for (BigDecimal stat : stats(part, attribute, loaded)) {
                figures[part] = figures[part].add(stat.multiply(each));
            }
        }
        return Optional.of(figures);
    }

    private BigDecimal addedBase(Attribute attribute) {
        return base(attribute).orElse(BigDecimal.ZERO).multiply(factor(attribute));
    }

    private Optional<BigDecimal> base(Attribute attribute) {
        return Optional.ofNullable(platform.stats().get(attribute.id())).map(Stat::value);
    }

    private BigDecimal factor(Attribute attribute) {
        return demands.outfit().map(outfit -> percent(outfit.effects().getOrDefault(attribute.id(), BigDecimal.ZERO))).orElse(BigDecimal.ONE);
    }

    private static BigDecimal percent(BigDecimal effect) {
        return BigDecimal.ONE.add(effect.movePointLeft(2));
    }

    private List<BigDecimal> stats(int number, Attribute attribute, boolean loaded) {
        Part part = catalog.parts().get(hosts.get(number));
        if (part == null) {
            return List.of();
        }
        List<BigDecimal> stats = new ArrayList<>();
        Optional.ofNullable(part.stats().get(attribute.id())).map(Stat::value).ifPresent(stats::add);
        if (loaded) {
            Optional.ofNullable(part.loaded().get(attribute.id())).map(Stat::value).ifPresent(stats::add);
        }
        return stats;
    }

    private BigDecimal[] zeros() {
        BigDecimal[] zeros = new BigDecimal[hosts.size()];
        Arrays.fill(zeros, BigDecimal.ZERO);
        return zeros;
    }
}

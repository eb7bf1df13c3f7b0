package fettle.space;

import fettle.catalog.Attribute;
import fettle.catalog.Catalog;
import fettle.catalog.Limit;
import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * How a build stands to a limit.
 *
 * @param value the attribute's total; empty where it has none, and then the limit holds, unless that can't be told
 * @param followed the total of the attribute that the bound follows; empty where it is fixed, or there is no total
 * @param threshold the bound; empty where the attribute that it follows has no total, and then the limit holds, unless that can't be told
 * @param margin how far the value is inside the bound, negative where outside
 * @param told whether it can be told; otherwise an attribute that it needs is not in the catalog, or has no base to be a total
 * @param holds whether the limit holds; where that can't be told, so that nothing is known to break it
 */
public record LimitMargin(
        Limit limit, Optional<BigDecimal> value, Optional<BigDecimal> followed, Optional<Fraction> threshold, Optional<Fraction> margin, boolean told, boolean holds) {

    /** Measures a limit against totals. */
    public static LimitMargin of(Limit limit, Map<String, BigDecimal> totals) {
        Optional<BigDecimal> value = Optional.ofNullable(totals.get(limit.attribute()));
        Optional<BigDecimal> followed = limit.by().map(totals::get);
        Optional<Fraction> threshold = threshold(limit.bound(), followed);
        if (value.isEmpty() || threshold.isEmpty()) {
            return new LimitMargin(limit, value, followed, threshold, Optional.empty(), true, true);
        }
        Fraction inside = Fraction.of(value.get()).minus(threshold.get());
        Fraction margin = limit.side() == Limit.Side.AT_LEAST ? inside : inside.negate();
        return new LimitMargin(limit, value, followed, threshold, Optional.of(margin), true, margin.signum() >= 0);
    }

    /** The same, knowing what attributes there are. */
    static LimitMargin of(Limit limit, Map<String, BigDecimal> totals, Catalog catalog) {
        LimitMargin margin = of(limit, totals);
        boolean untold = margin.value.isEmpty() ? untold(catalog, limit.attribute()) : margin.threshold.isEmpty() && limit.by().filter(by -> untold(catalog, by)).isPresent();
        return untold ? new LimitMargin(limit, margin.value, margin.followed, margin.threshold, margin.margin, false, margin.holds) : margin;
    }

    private static boolean untold(Catalog catalog, String attribute) {
        return Optional.ofNullable(catalog.attributes().get(attribute)).map(Attribute::basedOnPlatform).orElse(true);
    }

    private static Optional<Fraction> threshold(Limit.Bound bound, Optional<BigDecimal> followed) {
        if (bound instanceof Limit.Fixed fixed) {
            return Optional.of(Fraction.of(fixed.value()));
        }
        return followed.map(x -> at(((Limit.Table) bound).points(), x));
    }

    /** The table's value at x: straight lines between the points, flat beyond the ends. */
    public static Fraction at(List<Limit.Point> points, BigDecimal x) {
        Limit.Point left = points.get(0);
        if (x.compareTo(left.x()) <= 0) {
            return Fraction.of(left.y());
        }
        for (Limit.Point right : points) {
            if (x.compareTo(right.x()) <= 0) {
                Fraction slope = Fraction.of(right.y().subtract(left.y())).over(Fraction.of(right.x().subtract(left.x())));
                return Fraction.of(left.y()).plus(slope.times(Fraction.of(x.subtract(left.x()))));
            }
            left = right;
        }
        return Fraction.of(left.y());
    }

    /** How far the value is outside the bound; only where the limit doesn't hold. */
    public Fraction excess() {
        return margin.orElseThrow().negate();
    }

    /** What the value lacks to the bound; empty where the limit holds, or the value is too high. */
    public Optional<Fraction> lack() {
        return margin.filter(inside -> !holds && limit.side() == Limit.Side.AT_LEAST).map(Fraction::negate);
    }

    /** What the value has beyond the bound; empty where the limit holds, or the value is too low. */
    public Optional<Fraction> surplus() {
        return margin.filter(inside -> !holds && limit.side() == Limit.Side.AT_MOST).map(Fraction::negate);
    }

    /** The attribute that the bound follows, where enough more of it would leave the value inside. */
    public Optional<String> easedByMore() {
        return limit.by().filter(unused -> eased(1));
    }

    /** The attribute that the bound follows, where enough less of it would leave the value inside. */
    public Optional<String> easedByLess() {
        return limit.by().filter(unused -> eased(-1));
    }

    /** Whether the value is inside the table's at some point to the right (1) or left (-1) of where the build is: between points it is nowhere farther in than at one of them. */
    private boolean eased(int way) {
        int side = limit.side() == Limit.Side.AT_MOST ? 1 : -1;
        return limit.bound() instanceof Limit.Table table && followed.isPresent() && value.isPresent() && table.points().stream()
                .anyMatch(point -> point.x().compareTo(followed.get()) * way > 0 && value.get().compareTo(point.y()) * side <= 0);
    }

    /** Whether the limit holds with a margin below what it calls near. */
    public boolean close() {
        return holds && margin.isPresent() && limit.near().map(near -> margin.get().compareTo(Fraction.of(near)) < 0).orElse(false);
    }
}

package fettle.space.best;

import fettle.catalog.Limit;
import fettle.space.Fraction;
import fettle.space.LimitMargin;
import java.math.BigDecimal;
import java.math.BigInteger;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Straightens limits: a bound that follows another total by a table lies below the straight lines of the table's hull, over the range that builds can reach. */
final class Relaxation {

    private final Ledger ledger;
    private final long[] least;
    private final long[] greatest;

    /**
     * Straightens over these ranges.
     *
     * @param least by column, the least total of any build
     * @param greatest by column, the greatest
     */
    Relaxation(Ledger ledger, long[] least, long[] greatest) {
        this.ledger = ledger;
        this.least = least;
        this.greatest = greatest;
    }

    List<Row> rows() {
        List<Row> rows = new ArrayList<>();
        for (Gauge gauge : ledger.gauges()) {
            if (gauge.added()) {
                rows.addAll(rows(gauge));
            }
        }
        return rows;
    }

    private List<Row> rows(Gauge gauge) {
        Column value = ledger.columns().get(((Quantity.Added) gauge.value()).column());
        if (gauge.by().isEmpty()) {
            long[] byPart = value.byPart().clone();
            if (!gauge.atMost()) {
                for (int part = 0; part < byPart.length; part++) {
                    byPart[part] = -byPart[part];
                }
            }
            return List.of(new Row(byPart, gauge.atMost() ? gauge.fixed() - value.base() : value.base() - gauge.fixed()));
        }
        int by = ((Quantity.Added) gauge.by().get()).column();
        Column followed = ledger.columns().get(by);
        List<Point> hull = hull(gauge, followed.decimal(least[by]), followed.decimal(greatest[by]));
        List<Row> rows = new ArrayList<>();
        for (int i = 1; i < hull.size() || i == 1; i++) {
            Point left = hull.get(i - 1);
            Fraction slope = i < hull.size() ? hull.get(i).y.minus(left.y).over(hull.get(i).x.minus(left.x)) : Fraction.ZERO;
            row(gauge.atMost(), value, followed, left, slope).ifPresent(rows::add);
        }
        return rows;
    }

    private record Point(Fraction x, Fraction y) {}

    /** The corners of the upper hull of a bound from above, or the lower one of a bound from below. */
    private static List<Point> hull(Gauge gauge, BigDecimal from, BigDecimal to) {
        List<Limit.Point> points = ((Limit.Table) gauge.limit().bound()).points();
        List<Point> corners = new ArrayList<>();
        add(corners, new Point(Fraction.of(from), LimitMargin.at(points, from)), gauge.atMost());
        for (Limit.Point point : points) {
            if (point.x().compareTo(from) > 0 && point.x().compareTo(to) < 0) {
                add(corners, new Point(Fraction.of(point.x()), Fraction.of(point.y())), gauge.atMost());
            }
        }
        if (from.compareTo(to) < 0) {
            add(corners, new Point(Fraction.of(to), LimitMargin.at(points, to)), gauge.atMost());
        }
        return corners;
    }

    private static void add(List<Point> corners, Point next, boolean upper) {
        while (corners.size() > 1) {
            Point last = corners.get(corners.size() - 1);
            Point before = corners.get(corners.size() - 2);
            int turn = last.y.minus(before.y).times(next.x.minus(last.x)).compareTo(next.y.minus(last.y).times(last.x.minus(before.x)));
            if (upper ? turn > 0 : turn < 0) {
                break;
            }
            corners.remove(corners.size() - 1);
        }
        corners.add(next);
    }

    /** value ≤ y + slope × (followed − x), or the same turned round, in whole numbers; left out where they are too large to count with. */
    private static Optional<Row> row(boolean atMost, Column value, Column followed, Point through, Fraction slope) {
        Fraction sign = Fraction.of(BigDecimal.valueOf(atMost ? 1 : -1));
        Fraction ofValue = sign.times(Fraction.of(BigDecimal.ONE.movePointLeft(value.scale())));
        Fraction ofFollowed = sign.negate().times(slope).times(Fraction.of(BigDecimal.ONE.movePointLeft(followed.scale())));
        Fraction allowed = sign.times(through.y.minus(slope.times(through.x)));
        BigInteger common = ofValue.denominator().multiply(ofFollowed.denominator());
        BigInteger v = ofValue.numerator().multiply(ofFollowed.denominator());
        BigInteger f = ofFollowed.numerator().multiply(ofValue.denominator());
        BigInteger divisor = v.gcd(f);
        Fraction scaled = allowed.times(new Fraction(common, divisor));
        v = v.divide(divisor);
        f = f.divide(divisor);
        BigInteger[] parts = scaled.numerator().divideAndRemainder(scaled.denominator());
        BigInteger whole = parts[1].signum() < 0 ? parts[0].subtract(BigInteger.ONE) : parts[0];
        long[] byPart = new long[value.byPart().length];
        for (int part = 0; part < byPart.length; part++) {
            BigInteger sum = v.multiply(BigInteger.valueOf(value.byPart()[part])).add(f.multiply(BigInteger.valueOf(followed.byPart()[part])));
            if (sum.bitLength() > 50) {
                return Optional.empty();
            }
            byPart[part] = sum.longValueExact();
        }
        whole = whole.subtract(v.multiply(BigInteger.valueOf(value.base()))).subtract(f.multiply(BigInteger.valueOf(followed.base())));
        return whole.bitLength() > 57 ? Optional.empty() : Optional.of(new Row(byPart, whole.longValueExact()));
    }
}

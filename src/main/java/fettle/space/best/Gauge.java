package fettle.space.best;

import fettle.catalog.Limit;
import fettle.space.Fraction;
import fettle.space.LimitMargin;
import java.util.List;
import java.util.Optional;

/**
 * A limit, with where to find the totals that it needs.
 *
 * @param by what its bound follows; empty where it is fixed
 * @param fixed the bound in whole units of the value's column, rounded to the side that is allowed
 * @param table the bound by whole units, where both totals add up and its points are no farther than is counted
 */
record Gauge(Limit limit, Quantity value, Optional<Quantity> by, long fixed, Optional<Table> table) {

    boolean atMost() {
        return limit.side() == Limit.Side.AT_MOST;
    }

    /** Whether all that it needs is counted in whole units. */
    boolean added() {
        return value instanceof Quantity.Added && (by.isEmpty() || table.isPresent());
    }

    /** Whether some of these whole totals may keep the limit; exact where each is but one. */
    boolean possible(long least, long greatest, long byLeast, long byGreatest) {
        long bound = table.isPresent() ? table.get().extreme(byLeast, byGreatest, !atMost()) : fixed;
        return atMost() ? least <= bound : greatest >= bound;
    }

    /** The same of totals of any sort. */
    boolean possible(Spread values, Optional<Spread> followed) {
        if (values.valueless() || values.empty() || followed.map(spread -> spread.valueless() || spread.empty()).orElse(false)) {
            return true;
        }
        Fraction bound = followed.map(this::loosest).orElseGet(() -> Fraction.of(((Limit.Fixed) limit.bound()).value()));
        return atMost()
                ? Fraction.of(values.least().orElseThrow()).compareTo(bound) <= 0
                : Fraction.of(values.greatest().orElseThrow()).compareTo(bound) >= 0;
    }

    private Fraction loosest(Spread followed) {
        List<Limit.Point> points = ((Limit.Table) limit.bound()).points();
        Fraction loosest = looser(LimitMargin.at(points, followed.least().orElseThrow()), LimitMargin.at(points, followed.greatest().orElseThrow()));
        for (Limit.Point point : points) {
            if (point.x().compareTo(followed.least().get()) > 0 && point.x().compareTo(followed.greatest().get()) < 0) {
                loosest = looser(loosest, Fraction.of(point.y()));
            }
        }
        return loosest;
    }

    private Fraction looser(Fraction one, Fraction other) {
        return one.compareTo(other) >= 0 == atMost() ? one : other;
    }
}

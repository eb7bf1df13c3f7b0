package fettle.space.best;

import java.math.BigDecimal;

/**
 * A total that does not add up: a product, a maximum or a minimum.
 *
 * @param combine which of them
 * @param base what the platform brings
 * @param byPart by part number
 * @param factor what the final value is multiplied by
 */
record Curve(Combine combine, Spread base, Spread[] byPart, BigDecimal factor) {

    enum Combine { PRODUCT, MAX, MIN }

    Spread one() {
        return combine == Combine.PRODUCT ? Spread.at(BigDecimal.ONE) : Spread.NOTHING;
    }

    Spread both(Spread one, Spread other) {
        return combine == Combine.PRODUCT ? one.times(other) : one.peak(other, combine == Combine.MIN);
    }

    /** The total's spread over builds whose parts have this spread. */
    Spread total(Spread parts) {
        return both(base, parts).scaled(factor);
    }
}

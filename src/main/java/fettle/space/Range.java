package fettle.space;

import java.math.BigDecimal;

/** The least and the greatest total of an attribute over the valid builds that have a value of it; unloaded, without an outfit, exact. */
public record Range(BigDecimal least, BigDecimal greatest) {

    static Range at(BigDecimal value) {
        return new Range(value, value);
    }

    static Range between(BigDecimal one, BigDecimal other) {
        return one.compareTo(other) <= 0 ? new Range(one, other) : new Range(other, one);
    }

    /** The same without trailing zeros. */
    Range plain() {
        return new Range(plain(least), plain(greatest));
    }

    private static BigDecimal plain(BigDecimal value) {
        return value.signum() == 0 ? BigDecimal.ZERO : value.stripTrailingZeros();
    }

    /** The range of values that lie in either. */
    Range span(Range other) {
        return new Range(least.min(other.least), greatest.max(other.greatest));
    }

    Range plus(Range other) {
        return new Range(least.add(other.least), greatest.add(other.greatest));
    }

    /** The range of multiples by a number, which turns it round where that is negative. */
    Range times(BigDecimal number) {
        return between(least.multiply(number), greatest.multiply(number));
    }
}

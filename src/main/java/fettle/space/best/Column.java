package fettle.space.best;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.RoundingMode;

/**
 * A figure that adds up over placed parts, in whole units of a power of ten.
 *
 * @param base what the platform brings
 * @param byPart by part number
 * @param scale decimal places of a unit
 */
record Column(long base, long[] byPart, int scale) {

    /** No sum of so much can overflow, however often it is added to another. */
    static final long MOST = 1L << 58;

    /**
     * A column of these exact figures.
     *
     * @param places decimal places to be kept at least
     * @throws TooMany where they take more digits than can be counted with
     */
    static Column of(String name, BigDecimal base, BigDecimal[] byPart, int places) {
        int scale = Math.max(places, scale(base));
        for (BigDecimal figure : byPart) {
            scale = Math.max(scale, scale(figure));
        }
        long[] units = new long[byPart.length];
        for (int i = 0; i < units.length; i++) {
            units[i] = units(name, byPart[i], scale);
        }
        return new Column(units(name, base, scale), units, scale);
    }

    private static int scale(BigDecimal value) {
        return value.signum() == 0 ? 0 : Math.max(0, value.stripTrailingZeros().scale());
    }

    private static long units(String name, BigDecimal value, int scale) {
        BigInteger units = value.setScale(scale, RoundingMode.UNNECESSARY).unscaledValue();
        if (units.bitLength() > 57) {
            throw new TooMany(name, MOST);
        }
        return units.longValueExact();
    }

    /** A number of units as the decimal that it is. */
    BigDecimal decimal(long units) {
        return BigDecimal.valueOf(units, scale);
    }

    /** Whether a value is within what units are counted to. */
    boolean counts(BigDecimal value) {
        return value.abs().compareTo(decimal(2 * MOST)) < 0;
    }

    /** The greatest number of units that is no more than a value. */
    long floor(BigDecimal value) {
        return clamped(value.setScale(scale, RoundingMode.FLOOR).unscaledValue());
    }

    /** The least number of units that is no less than a value. */
    long ceiling(BigDecimal value) {
        return clamped(value.setScale(scale, RoundingMode.CEILING).unscaledValue());
    }

    /** Beyond what any sum can reach, more makes no difference. */
    private static long clamped(BigInteger units) {
        return units.min(BigInteger.valueOf(2 * MOST)).max(BigInteger.valueOf(-2 * MOST)).longValueExact();
    }
}

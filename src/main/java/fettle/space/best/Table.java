package fettle.space.best;

import java.math.BigInteger;

/**
 * A bound that follows another total, in whole units of both: straight lines between points, flat beyond the ends.
 *
 * @param x rising strictly
 * @param y by point
 */
record Table(long[] x, long[] y) {

    /** The greatest whole bound at a value, or the least with {@code up}. */
    long at(long value, boolean up) {
        if (value <= x[0]) {
            return y[0];
        }
        for (int i = 1; i < x.length; i++) {
            if (value <= x[i]) {
                long rise = floor(up ? y[i - 1] - y[i] : y[i] - y[i - 1], value - x[i - 1], x[i] - x[i - 1]);
                return up ? y[i - 1] - rise : y[i - 1] + rise;
            }
        }
        return y[y.length - 1];
    }

    private static long floor(long factor, long times, long over) {
        long low = factor * times;
        return Math.multiplyHigh(factor, times) == low >> 63
                ? Math.floorDiv(low, over)
                : floor(BigInteger.valueOf(factor).multiply(BigInteger.valueOf(times)), BigInteger.valueOf(over));
    }

    private static long floor(BigInteger number, BigInteger over) {
        BigInteger[] parts = number.divideAndRemainder(over);
        return (parts[1].signum() < 0 ? parts[0].subtract(BigInteger.ONE) : parts[0]).longValueExact();
    }

    /** The greatest bound over a range of values, rounded down; with {@code up} the least, rounded up. */
    long extreme(long least, long greatest, boolean up) {
        long extreme = best(at(least, up), at(greatest, up), up);
        for (int i = 0; i < x.length; i++) {
            if (x[i] > least && x[i] < greatest) {
                extreme = best(extreme, y[i], up);
            }
        }
        return extreme;
    }

    private static long best(long one, long other, boolean least) {
        return least ? Math.min(one, other) : Math.max(one, other);
    }
}

package fettle.space;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Exact products by number, of which the latest are remembered; bounds in a small unit tell most of them apart without looking at all their digits. */
final class Factors {

    /** The number of 1. */
    static final int ONE = 0;

    private static final int PLACES = 9;
    private static final long UNIT = 1_000_000_000;
    /** Bounds whose product, in units of a unit, is no longer than a long. */
    private static final long LIMIT = 3 * UNIT;
    private static final long WIDE = 1_000;

    private final List<BigDecimal> values = new ArrayList<>();
    /** By number, units that it has at least. */
    private long[] floors = new long[64];
    /** By number, units that it has at most. */
    private long[] ceilings = new long[64];
    private final Map<BigDecimal, Integer> numbers = new HashMap<>();
    private final Memory products = new Memory();

    Factors() {
        number(BigDecimal.ONE);
    }

    /** The number of a factor, the same for equal ones. */
    int number(BigDecimal value) {
        BigDecimal plain = value.signum() == 0 ? BigDecimal.ZERO : value.stripTrailingZeros();
        return numbered(plain, 0, Long.MAX_VALUE);
    }

    /** The number of a decimal as it is written; zeros at the end of a product aren't taken away, which would take longer than all else. */
    private int numbered(BigDecimal written, long floor, long ceiling) {
        int next = values.size();
        Integer known = numbers.putIfAbsent(written, next);
        if (known != null) {
            return known;
        }
        values.add(written);
        if (next == floors.length) {
            floors = Arrays.copyOf(floors, 2 * next);
            ceilings = Arrays.copyOf(ceilings, 2 * next);
        }
        boolean close = ceiling - floor < WIDE;
        floors[next] = close ? floor : units(written, RoundingMode.FLOOR);
        ceilings[next] = close ? ceiling : units(written, RoundingMode.CEILING);
        return next;
    }

    /** Rounded; where a long is too short, the bound that is surely one. */
    private static long units(BigDecimal value, RoundingMode mode) {
        BigInteger units = value.setScale(PLACES, mode).unscaledValue();
        if (units.bitLength() < Long.SIZE - 1) {
            return units.longValue();
        }
        boolean outward = mode == RoundingMode.CEILING == units.signum() > 0;
        long bound = outward ? Long.MAX_VALUE : Long.MAX_VALUE >> 1;
        return units.signum() > 0 ? bound : -bound;
    }

    private int product(int one, int other) {
        BigDecimal product = value(one).multiply(value(other));
        boolean bounded = floors[one] >= 0 && floors[other] >= 0 && ceilings[one] < LIMIT && ceilings[other] < LIMIT;
        return bounded
                ? numbered(product, floors[one] * floors[other] / UNIT, ceilings[one] * ceilings[other] / UNIT + 1)
                : numbered(product, 0, Long.MAX_VALUE);
    }

    BigDecimal value(int number) {
        return values.get(number);
    }

    int times(int one, int other) {
        if (one == ONE) {
            return other;
        }
        if (other == ONE) {
            return one;
        }
        long key = (long) one << 32 | other;
        int known = products.recall(key);
        return known != Memory.FORGOTTEN ? known : products.keep(key, product(one, other));
    }

    boolean positive(int number) {
        return value(number).signum() >= 0;
    }

    int lesser(int one, int other) {
        return compare(one, other) <= 0 ? one : other;
    }

    int greater(int one, int other) {
        return compare(one, other) >= 0 ? one : other;
    }

    private int compare(int one, int other) {
        if (one == other) {
            return 0;
        }
        return ceilings[one] < floors[other] ? -1 : floors[one] > ceilings[other] ? 1 : value(one).compareTo(value(other));
    }
}

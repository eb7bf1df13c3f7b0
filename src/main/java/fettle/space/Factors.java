package fettle.space;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Exact products by number, of which the latest are remembered; whole multiples of a small unit tell most of them apart without looking at all their digits. */
final class Factors {

    /** The number of 1. */
    static final int ONE = 0;

    private static final int PLACES = 9;

    private final List<BigDecimal> values = new ArrayList<>();
    private long[] floors = new long[64];
    private final Map<BigDecimal, Integer> numbers = new HashMap<>();
    private final Memory products = new Memory();

    Factors() {
        number(BigDecimal.ONE);
    }

    int number(BigDecimal value) {
        BigDecimal plain = value.signum() == 0 ? BigDecimal.ZERO : value.stripTrailingZeros();
        int next = values.size();
        Integer known = numbers.putIfAbsent(plain, next);
        if (known != null) {
            return known;
        }
        values.add(plain);
        BigInteger floor = plain.setScale(PLACES, RoundingMode.FLOOR).unscaledValue();
        floors = next == floors.length ? Arrays.copyOf(floors, 2 * next) : floors;
        floors[next] = floor.bitLength() < Long.SIZE - 1 ? floor.longValue() : floor.signum() < 0 ? Long.MIN_VALUE : Long.MAX_VALUE;
        return next;
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
        long key = Memory.pair(one, other);
        int known = products.recall(key);
        return known != Memory.FORGOTTEN ? known : products.keep(key, number(value(one).multiply(value(other))));
    }

    boolean positive(int number) {
        return floors[number] >= 0;
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
        int byFloor = Long.compare(floors[one], floors[other]);
        return byFloor != 0 ? byFloor : value(one).compareTo(value(other));
    }
}

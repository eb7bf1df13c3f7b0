package fettle.space;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Exact products by number, each worked out once; whole multiples of a small unit tell most of them apart without looking at all their digits. */
final class Factors {

    /** The number of 1. */
    static final int ONE = 0;

    private static final int PLACES = 9;
    private static final BigInteger LARGEST = BigInteger.valueOf(Long.MAX_VALUE);

    private final List<BigDecimal> values = new ArrayList<>();
    private final List<Long> floors = new ArrayList<>();
    private final Map<BigDecimal, Integer> numbers = new HashMap<>();
    private final Map<Long, Integer> products = new HashMap<>();

    Factors() {
        number(BigDecimal.ONE);
    }

    int number(BigDecimal value) {
        BigDecimal plain = value.signum() == 0 ? BigDecimal.ZERO : value.stripTrailingZeros();
        return numbers.computeIfAbsent(plain, unused -> {
            values.add(plain);
            BigInteger floor = plain.setScale(PLACES, RoundingMode.FLOOR).unscaledValue();
            floors.add(floor.abs().compareTo(LARGEST) < 0 ? floor.longValue() : floor.signum() < 0 ? Long.MIN_VALUE : Long.MAX_VALUE);
            return values.size() - 1;
        });
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
        long key = (long) Math.min(one, other) << 32 | Math.max(one, other);
        Integer known = products.get(key);
        if (known == null) {
            known = number(value(one).multiply(value(other)));
            products.put(key, known);
        }
        return known;
    }

    boolean positive(int number) {
        return floors.get(number) >= 0;
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
        int byFloor = Long.compare(floors.get(one), floors.get(other));
        return byFloor != 0 ? byFloor : value(one).compareTo(value(other));
    }
}

package fettle.sat;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.util.Collection;
import java.util.Map;
import java.util.TreeMap;

/**
 * A figure that placed parts add up to.
 *
 * @param base what it is before any part is placed
 * @param byPart what a part adds; parts left out add nothing
 */
record Sum(BigDecimal base, Map<String, BigDecimal> byPart) {

    Sum {
        byPart = new TreeMap<>(byPart);
        byPart.values().removeIf(value -> value.signum() == 0);
    }

    BigDecimal of(String part) {
        return byPart.getOrDefault(part, BigDecimal.ZERO);
    }

    Sum times(BigDecimal factor) {
        Map<String, BigDecimal> times = new TreeMap<>();
        byPart.forEach((part, value) -> times.put(part, value.multiply(factor)));
        return new Sum(base.multiply(factor), times);
    }

    Sum plus(Sum other) {
        Map<String, BigDecimal> plus = new TreeMap<>(byPart);
        other.byPart.forEach((part, value) -> plus.merge(part, value, BigDecimal::add));
        return new Sum(base.add(other.base), plus);
    }

    /** The largest unit of which everything that parts add is a whole number. */
    BigDecimal unit() {
        return byPart.isEmpty() ? BigDecimal.ONE : unit(byPart.values());
    }

    /** The largest unit of which each of these, not all 0, is a whole number. */
    static BigDecimal unit(Collection<BigDecimal> values) {
        int scale = values.stream().mapToInt(value -> value.stripTrailingZeros().scale()).max().orElse(0);
        BigInteger divisor = values.stream().map(value -> value.setScale(scale).unscaledValue()).reduce(BigInteger.ZERO, BigInteger::gcd);
        return new BigDecimal(divisor, scale);
    }
}

package fettle.space;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.util.Optional;

/** An exact ratio in lowest terms, with a positive denominator. */
public record Fraction(BigInteger numerator, BigInteger denominator) implements Comparable<Fraction> {

    public static final Fraction ZERO = new Fraction(BigInteger.ZERO, BigInteger.ONE);

    public Fraction {
        if (denominator.signum() == 0) {
            throw new ArithmeticException("a fraction needs a denominator other than zero");
        }
        if (!denominator.equals(BigInteger.ONE)) {
            BigInteger common = numerator.gcd(denominator);
            BigInteger divisor = denominator.signum() < 0 ? common.negate() : common;
            numerator = numerator.divide(divisor);
            denominator = denominator.divide(divisor);
        }
    }

    /** A decimal as a fraction. */
    public static Fraction of(BigDecimal value) {
        return value.scale() > 0
                ? new Fraction(value.unscaledValue(), BigInteger.TEN.pow(value.scale()))
                : new Fraction(value.toBigIntegerExact(), BigInteger.ONE);
    }

    public Fraction plus(Fraction other) {
        return new Fraction(
                numerator.multiply(other.denominator).add(other.numerator.multiply(denominator)), denominator.multiply(other.denominator));
    }

    public Fraction minus(Fraction other) {
        return plus(other.negate());
    }

    public Fraction times(Fraction other) {
        return new Fraction(numerator.multiply(other.numerator), denominator.multiply(other.denominator));
    }

    /** The quotient; the other must not be zero. */
    public Fraction over(Fraction other) {
        return new Fraction(numerator.multiply(other.denominator), denominator.multiply(other.numerator));
    }

    public Fraction negate() {
        return new Fraction(numerator.negate(), denominator);
    }

    public int signum() {
        return numerator.signum();
    }

    @Override
    public int compareTo(Fraction other) {
        return numerator.multiply(other.denominator).compareTo(other.numerator.multiply(denominator));
    }

    /** The value as a decimal, where one ends. */
    public Optional<BigDecimal> decimal() {
        BigInteger rest = denominator;
        int twos = rest.getLowestSetBit();
        rest = rest.shiftRight(twos);
        int fives = 0;
        BigInteger five = BigInteger.valueOf(5);
        while (rest.mod(five).signum() == 0) {
            rest = rest.divide(five);
            fives++;
        }
        if (!rest.equals(BigInteger.ONE)) {
            return Optional.empty();
        }
        int places = Math.max(twos, fives);
        return Optional.of(new BigDecimal(numerator.multiply(BigInteger.TEN.pow(places)).divide(denominator), places));
    }

    /** A decimal without trailing zeros, or {@code a/b} where no decimal ends. */
    @Override
    public String toString() {
        return decimal().map(Exact::text).orElse(numerator + "/" + denominator);
    }
}

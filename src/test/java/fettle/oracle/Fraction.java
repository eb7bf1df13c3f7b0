package fettle.oracle;

import java.math.BigDecimal;
import java.math.BigInteger;

/** An exact fraction in lowest terms, its denominator above 0. */
public record Fraction(BigInteger above, BigInteger below) implements Comparable<Fraction> {
  public static final Fraction ZERO = of(BigDecimal.ZERO);

  public Fraction {
    if (below.signum() == 0) {
      throw new ArithmeticException("a fraction over nothing");
    }
    BigInteger common = above.gcd(below);
    BigInteger divisor = below.signum() < 0 ? common.negate() : common;
    above = above.divide(divisor);
    below = below.divide(divisor);
  }

  public static Fraction of(BigDecimal value) {
    return value.scale() >= 0
        ? new Fraction(value.unscaledValue(), BigInteger.TEN.pow(value.scale()))
        : new Fraction(value.toBigIntegerExact(), BigInteger.ONE);
  }

  public static Fraction of(String decimal) {
    return of(new BigDecimal(decimal));
  }

  public Fraction plus(Fraction other) {
    return new Fraction(above.multiply(other.below).add(other.above.multiply(below)), below.multiply(other.below));
  }

  public Fraction minus(Fraction other) {
    return plus(new Fraction(other.above.negate(), other.below));
  }

  public Fraction times(Fraction other) {
    return new Fraction(above.multiply(other.above), below.multiply(other.below));
  }

  public Fraction over(Fraction other) {
    return new Fraction(above.multiply(other.below), below.multiply(other.above));
  }

  public int signum() {
    return above.signum();
  }

  @Override
  public int compareTo(Fraction other) {
    return minus(other).signum();
  }

  /** commands.md: "a decimal, or an exact fraction "a/b" where no decimal ends", the decimal without trailing zeros. */
  @Override
  public String toString() {
    BigInteger rest = below;
    for (BigInteger prime : new BigInteger[] {BigInteger.TWO, BigInteger.valueOf(5)}) {
      while (rest.mod(prime).signum() == 0) {
        rest = rest.divide(prime);
      }
    }
    return rest.equals(BigInteger.ONE)
        ? Decimals.text(new BigDecimal(above).divide(new BigDecimal(below)))
        : above + "/" + below;
  }
}

package fettle.oracle;

import java.math.BigDecimal;

/** Decimals by their value alone: without trailing zeros, so that equal values are equal objects. */
public final class Decimals {
  static final BigDecimal HUNDREDTH = new BigDecimal("0.01");

  private Decimals() {}

  public static BigDecimal plain(BigDecimal value) {
    BigDecimal stripped = value.stripTrailingZeros();
    return stripped.scale() < 0 ? stripped.setScale(0) : stripped;
  }

  /** "A total is written in JSON as a decimal string without trailing zeros". */
  public static String text(BigDecimal value) {
    return plain(value).toPlainString();
  }

  /** 1 + percent/100. */
  static BigDecimal factor(BigDecimal percent) {
    return BigDecimal.ONE.add(percent.multiply(HUNDREDTH));
  }
}

package fettle.space;

import java.math.BigDecimal;

/** Writes exact decimals. */
public final class Exact {

    private Exact() {}

    /** The decimal in plain digits without trailing zeros. */
    public static String text(BigDecimal value) {
        return value.signum() == 0 ? "0" : value.stripTrailingZeros().toPlainString();
    }
}

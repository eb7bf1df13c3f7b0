package fettle.document;

import java.math.BigDecimal;
import java.util.Optional;

/** Reads decimals exactly, and refuses those that are too long to compute with. */
final class Decimals {
    /** The most digits that may stand before the decimal point, and behind it, once the exponent is written out. */
    static final int MOST_DIGITS = 40;

    private static final int LONGEST_LITERAL = 200;

    private Decimals() {}

    /** The number as written, trailing zeros and all; empty where it has too many digits. */
    static Optional<BigDecimal> read(String literal) {
        if (literal.length() > LONGEST_LITERAL) {
            return Optional.empty();
        }
        try {
            return Optional.of(new BigDecimal(literal)).filter(Decimals::isBounded);
        } catch (NumberFormatException exponentBeyondAllBounds) {
            return Optional.empty();
        }
    }

    private static boolean isBounded(BigDecimal number) {
        long before = (long) number.precision() - number.scale();
        return number.scale() <= MOST_DIGITS && before <= MOST_DIGITS && number.scale() >= -MOST_DIGITS;
    }
}

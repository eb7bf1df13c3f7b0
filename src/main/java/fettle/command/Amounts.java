package fettle.command;

import java.math.BigDecimal;
import java.util.regex.Pattern;
import picocli.CommandLine.TypeConversionException;

/** Reads the amounts on a command line, and says what one has to look like where it can't. */
final class Amounts {

    private static final Pattern MONEY = Pattern.compile("\\d{1,30}(\\.\\d{1,30})?");
    private static final Pattern COUNT = Pattern.compile("\\d{1,9}");

    private Amounts() {}

    /** A decimal from nought. */
    static BigDecimal money(String value) {
        if (!MONEY.matcher(value).matches()) {
            throw new TypeConversionException("expected an amount of money such as 30000 or 199.5, of at most 30 digits either side of the point, not '" + value + "'");
        }
        return new BigDecimal(value);
    }

    /** A whole number from nought. */
    static int count(String value) {
        if (!COUNT.matcher(value).matches()) {
            throw new TypeConversionException("expected a whole number such as 3, of at most nine digits, not '" + value + "'");
        }
        return Integer.parseInt(value);
    }
}

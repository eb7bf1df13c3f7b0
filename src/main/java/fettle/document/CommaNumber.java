package fettle.document;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A number that somebody wrote with commas, and what it can mean. A comma before exactly three figures may part thousands as well as decimals: which of the two it was,
 * only the one who wrote it knows.
 *
 * @param thousands the number without its commas, where they can part thousands
 * @param decimal the number with a point in place of its comma, where there is one alone
 */
record CommaNumber(String written, Optional<String> thousands, Optional<String> decimal) {

    private static final Pattern ANY = Pattern.compile("-?\\d{1,30}(?:,\\d{1,30}){1,12}(?:\\.\\d{1,30})?");
    private static final Pattern GROUPED = Pattern.compile("-?[1-9]\\d{0,2}(?:,\\d{3})+(?:\\.\\d+)?");
    private static final Pattern ONE_COMMA = Pattern.compile("-?\\d{1,30},\\d{1,30}");

    /** A text that is such a number; empty where it is none, or means nothing. */
    static Optional<CommaNumber> of(String written) {
        boolean grouped = GROUPED.matcher(written).matches();
        boolean decimal = ONE_COMMA.matcher(written).matches();
        return grouped || decimal ? Optional.of(new CommaNumber(written, Optional.of(written.replace(",", "")).filter(unused -> grouped),
                Optional.of(written.replace(',', '.')).filter(unused -> decimal))) : Optional.empty();
    }

    /** Such a number that begins at an offset of a text. */
    static Optional<CommaNumber> at(String text, int offset) {
        return begun(ANY, text, offset).or(() -> begun(ONE_COMMA, text, offset));
    }

    private static Optional<CommaNumber> begun(Pattern pattern, String text, int offset) {
        Matcher matcher = pattern.matcher(text).region(offset, text.length());
        return matcher.lookingAt() ? of(matcher.group()) : Optional.empty();
    }

    /** The same for a whole number, which has no decimals. */
    Optional<CommaNumber> whole() {
        return thousands.filter(figures -> figures.indexOf('.') < 0).map(figures -> new CommaNumber(written, thousands, Optional.empty()));
    }

    /** What it can mean, in words that follow "write". */
    String readings() {
        return thousands.isEmpty() || decimal.isEmpty() ? thousands.or(() -> decimal).orElseThrow()
                : thousands.get() + " for thousands, or " + decimal.get() + " for a decimal";
    }
}

package fettle.view;

import fettle.catalog.Attribute;
import fettle.space.Exact;
import fettle.space.Fraction;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.Optional;
import java.util.regex.Pattern;

/** Writes numbers for people. */
final class Figures {

    private static final MathContext READABLE = new MathContext(4, RoundingMode.HALF_UP);

    private static final Pattern ONE = Pattern.compile("[+-]?1");

    /** A plain English plural, such as "points"; not "glass", "radius", "axis" or "lens", nor what takes "-es". */
    private static final Pattern SEVERAL = Pattern.compile("(?!.*(?:[sui]|en|[cs]he|xe)s$)[a-z]{3,}s");

    private Figures() {}

    /** Exact where a decimal ends; else to four digits, and said to be about that. */
    static String of(Fraction value) {
        return value.decimal().map(Exact::text).orElseGet(() -> "about " + Exact.text(decimal(value, READABLE)));
    }

    /** With its sign, for what is added. */
    static String signed(BigDecimal value) {
        return (value.signum() > 0 ? "+" : "") + Exact.text(value);
    }

    /** Rounded half up to so many places. */
    static String rounded(BigDecimal value, int places) {
        return value.setScale(places, RoundingMode.HALF_UP).toPlainString();
    }

    /** Rounded half up to the attribute's shown places, or to more where that would leave nothing of a value that is not zero. */
    static String rounded(Fraction value, int places) {
        int enough = places;
        BigDecimal rounded = rounded(value, enough, RoundingMode.HALF_UP);
        while (rounded.signum() == 0 && value.signum() != 0) {
            rounded = rounded(value, ++enough, RoundingMode.HALF_UP);
        }
        return rounded.toPlainString();
    }

    private static BigDecimal rounded(Fraction value, int places, RoundingMode mode) {
        return new BigDecimal(value.numerator()).divide(new BigDecimal(value.denominator()), places, mode);
    }

    private static BigDecimal decimal(Fraction value, MathContext precision) {
        return new BigDecimal(value.numerator()).divide(new BigDecimal(value.denominator()), precision);
    }

    /** An amount of money, exactly: thousands apart, two places or more where it is not whole. */
    static String money(BigDecimal amount) {
        int places = amount.stripTrailingZeros().scale();
        String digits = rounded(amount.abs(), places <= 0 ? 0 : Math.max(2, places));
        int point = digits.indexOf('.') < 0 ? digits.length() : digits.indexOf('.');
        StringBuilder grouped = new StringBuilder(digits);
        for (int i = point - 3; i > 0; i -= 3) {
            grouped.insert(i, ',');
        }
        return (amount.signum() < 0 ? "-" : "") + grouped;
    }

    /** Whether parts state the attribute in percent, whatever its total is counted in. */
    static boolean inPercent(Attribute attribute) {
        return attribute.combine() == Attribute.Combine.PERCENT || attribute.combine() == Attribute.Combine.PRODUCT;
    }

    /** Whether what parts state is added to something, so that its sign is worth telling. */
    static boolean addedUp(Attribute attribute) {
        return inPercent(attribute) || attribute.combine() == Attribute.Combine.SUM;
    }

    /** A number with the attribute's unit. */
    static String withUnit(String number, Optional<Attribute> attribute) {
        return withUnit(number, attribute.map(Attribute::unit).orElse(""));
    }

    /** A number with a unit. */
    static String withUnit(String number, String unit) {
        return unit.isEmpty() ? number : number + " " + unit(number, unit);
    }

    /** A unit as it stands behind a number; one that begins with a digit is one that is multiplied, and of one thing there is only one. */
    static String unit(String number, String unit) {
        if (ONE.matcher(number).matches() && SEVERAL.matcher(unit).matches()) {
            return unit.substring(0, unit.length() - 1);
        }
        return !unit.isEmpty() && Character.isDigit(unit.charAt(0)) ? "x " + unit : unit;
    }
}

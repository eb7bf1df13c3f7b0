package fettle.view;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;

/**
 * A count of any size, for people: its exact digits, and its size at a glance where they are many.
 *
 * @param groups its digits, three by three from the right
 * @param about its size as a power of ten; empty where the digits are readable by themselves
 */
record BigCount(List<String> groups, String about) {

    /** Digits that people take in without help. */
    private static final int READABLE = 7;

    /** Groups of three digits in a line. */
    private static final int GROUPS_IN_A_LINE = (Sheet.WIDTH - Sheet.GUTTER) / 4;

    private static final MathContext TWO_DIGITS = new MathContext(2, RoundingMode.HALF_UP);

    BigCount {
        groups = List.copyOf(groups);
    }

    static BigCount of(BigInteger count) {
        String digits = count.toString();
        List<String> groups = new ArrayList<>();
        for (int end = digits.length(); end > 0; end -= 3) {
            groups.add(0, digits.substring(Math.max(0, end - 3), end));
        }
        return new BigCount(groups, digits.length() <= READABLE ? "" : about(count));
    }

    private static String about(BigInteger count) {
        BigDecimal rounded = new BigDecimal(count).round(TWO_DIGITS);
        int power = rounded.precision() - rounded.scale() - 1;
        return "≈ " + rounded.scaleByPowerOfTen(-power).setScale(1, RoundingMode.UNNECESSARY).toPlainString() + " × 10^" + power;
    }

    /** Writes it with the noun that it counts. */
    void write(Sheet sheet, String word, String one, String several) {
        boolean single = groups.size() == 1 && groups.get(0).equals("1");
        String counted = " " + (single ? one : several);
        if (about.isEmpty()) {
            sheet.entry(Span.faint(word), Span.strong(String.join(",", groups)), Span.plain(counted));
        } else if (groups.size() < GROUPS_IN_A_LINE / 2) {
            sheet.entry(Span.faint(word), Span.strong(String.join(",", groups)), Span.plain(counted + ", " + about));
        } else {
            sheet.entry(Span.faint(word), Span.strong(about), Span.plain(counted + ", exactly"));
            for (int i = 0; i < groups.size(); i += GROUPS_IN_A_LINE) {
                boolean last = i + GROUPS_IN_A_LINE >= groups.size();
                sheet.more(0, Span.plain(String.join(",", groups.subList(i, last ? groups.size() : i + GROUPS_IN_A_LINE)) + (last ? "" : ",")));
            }
        }
    }
}

package fettle.view;

import static org.junit.jupiter.api.Assertions.assertEquals;

import fettle.space.Fraction;
import java.math.BigDecimal;
import java.math.BigInteger;
import org.junit.jupiter.api.Test;

class FiguresTest {

    private static Fraction fraction(long above, long below) {
        return new Fraction(BigInteger.valueOf(above), BigInteger.valueOf(below));
    }

    @Test
    void totals_are_rounded_half_up() {
        assertEquals("3", Figures.rounded(new BigDecimal("2.5"), 0));
        assertEquals("-3", Figures.rounded(new BigDecimal("-2.5"), 0));
        assertEquals("2.50", Figures.rounded(new BigDecimal("2.495"), 2));
        assertEquals("2.00", Figures.rounded(new BigDecimal("2"), 2));
    }

    @Test
    void a_small_margin_is_never_rounded_away() {
        assertEquals("0.001", Figures.rounded(fraction(1, 1000), 0));
        assertEquals("0.0003", Figures.rounded(fraction(1, 3000), 2));
        assertEquals("0.33", Figures.rounded(fraction(1, 3), 2));
        assertEquals("0.00", Figures.rounded(Fraction.ZERO, 2));
    }

    @Test
    void money_is_grouped_by_thousands() {
        assertEquals("0", Figures.money(BigDecimal.ZERO));
        assertEquals("999", Figures.money(new BigDecimal("999.00")));
        assertEquals("1,000", Figures.money(new BigDecimal("1E3")));
        assertEquals("1,234,567.50", Figures.money(new BigDecimal("1234567.5")));
        assertEquals("-12,000", Figures.money(new BigDecimal("-12000")));
    }

    @Test
    void a_unit_that_begins_with_a_digit_is_multiplied() {
        assertEquals("3 x 10 m", Figures.withUnit("3", "10 m"));
        assertEquals("3 kg", Figures.withUnit("3", "kg"));
        assertEquals("3", Figures.withUnit("3", ""));
    }

    @Test
    void of_one_thing_there_is_only_one() {
        assertEquals("+1 point", Figures.withUnit("+1", "points"));
        assertEquals("-1 bell", Figures.withUnit("-1", "bells"));
        assertEquals("1 kg", Figures.withUnit("1", "kg"));
        assertEquals("1 lens", Figures.withUnit("1", "lens"));
        assertEquals("1 inches", Figures.withUnit("1", "inches"));
        assertEquals("1.0 points", Figures.withUnit("1.0", "points"));
        assertEquals("11 points", Figures.withUnit("11", "points"));
    }
}

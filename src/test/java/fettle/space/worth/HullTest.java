package fettle.space.worth;

import static org.junit.jupiter.api.Assertions.assertEquals;

import fettle.space.Fraction;
import java.math.BigDecimal;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.api.Test;

/** Strong and extended dominance, by a published table, by hand and by definition. */
class HullTest {

    private record Figure(String name, BigDecimal cost, BigDecimal benefit) implements Hull.Point {
        Figure(String name, String cost, String benefit) {
            this(name, new BigDecimal(cost), new BigDecimal(benefit));
        }
    }

    /**
     * Paltiel et al., Expanded HIV screening in the United States, Annals of Internal Medicine 145 (2006) 797–806, Table 4, high-risk population,
     * patient-level benefit, as restated in the DAMPACK package's introduction to cost-effectiveness analysis.
     */
    @Test
    void a_published_table_has_its_published_steps() {
        Figure statusQuo = new Figure("status quo", "26000", "277.25");
        Figure once = new Figure("one time", "27000", "277.57");
        Figure five = new Figure("every 5 years", "28020", "277.78");
        Figure three = new Figure("every 3 years", "28440", "277.83");
        Figure annual = new Figure("annual", "29440", "277.76");
        Hull<Figure> hull = new Hull<>(List.of(annual, three, statusQuo, five, once));
        assertEquals(List.of(statusQuo, once, five, three), hull.rungs());
        assertEquals(Standing.DOMINATED, hull.standing(annual));
        assertEquals("3125", step(statusQuo, once));
        assertEquals("34000/7", step(once, five));
        assertEquals("8400", step(five, three));
    }

    /**
     * By hand: from (0, 0) to (10, 10) each point costs 1. The middle one at cost 6 brings 5, where the line brings 6, so it lies between; the one at
     * cost 5 with benefit 5 lies on the line.
     */
    @Test
    void a_point_below_the_line_is_between_and_one_on_it_a_rung() {
        Figure nothing = new Figure("nothing", "0", "0");
        Figure on = new Figure("on", "5", "5");
        Figure below = new Figure("below", "6", "5.5");
        Figure good = new Figure("good", "10", "10");
        Figure twin = new Figure("twin", "10", "10.0");
        Hull<Figure> hull = new Hull<>(List.of(good, nothing, below, on, twin));
        assertEquals(List.of(nothing, on, good), hull.rungs());
        assertEquals(Standing.BETWEEN, hull.standing(below));
        assertEquals(Standing.RUNG, hull.standing(twin));
    }

    @Property
    void standings_follow_the_definition(@ForAll("figures") List<Figure> figures) {
        Hull<Figure> hull = new Hull<>(figures);
        for (Figure figure : figures) {
            assertEquals(defined(figures, figure), hull.standing(figure), figure::toString);
        }
    }

    @Provide
    Arbitrary<List<Figure>> figures() {
        Arbitrary<BigDecimal> small = Arbitraries.integers().between(0, 8).map(BigDecimal::valueOf);
        return Combinators.combine(small, small).as((cost, benefit) -> new Figure("", cost, benefit)).list().ofMinSize(1).ofMaxSize(9);
    }

    private static Standing defined(List<Figure> all, Figure figure) {
        if (all.stream().anyMatch(other -> other.cost.compareTo(figure.cost) <= 0 && other.benefit.compareTo(figure.benefit) >= 0
                && (other.cost.compareTo(figure.cost) != 0 || other.benefit.compareTo(figure.benefit) != 0))) {
            return Standing.DOMINATED;
        }
        for (Figure low : all) {
            for (Figure high : all) {
                if (low.cost.compareTo(figure.cost) < 0 && high.cost.compareTo(figure.cost) > 0) {
                    Fraction share = Fraction.of(figure.cost.subtract(low.cost)).over(Fraction.of(high.cost.subtract(low.cost)));
                    Fraction mixed = Fraction.of(low.benefit).plus(Fraction.of(high.benefit.subtract(low.benefit)).times(share));
                    if (mixed.compareTo(Fraction.of(figure.benefit)) > 0) {
                        return Standing.BETWEEN;
                    }
                }
            }
        }
        return Standing.RUNG;
    }

    private static String step(Figure from, Figure to) {
        return Fraction.of(to.cost.subtract(from.cost)).over(Fraction.of(to.benefit.subtract(from.benefit))).toString();
    }
}

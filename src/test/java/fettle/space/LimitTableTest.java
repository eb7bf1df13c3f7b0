package fettle.space;

import static org.junit.jupiter.api.Assertions.assertEquals;

import fettle.catalog.Limit;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.apache.commons.math3.analysis.interpolation.LinearInterpolator;
import org.apache.commons.math3.analysis.polynomials.PolynomialSplineFunction;
import org.junit.jupiter.api.Test;

/** What a limit's table says between its points, at them and beyond them, against another library's interpolation. */
final class LimitTableTest {

    /** The other library reckons in binary fractions. */
    private static final double NEAR = 1e-6;

    @Property(tries = 1_000)
    void a_table_says_between_its_points_what_another_library_interpolates(
            @ForAll("tables") List<Limit.Point> points, @ForAll("between") BigDecimal share) {
        BigDecimal first = points.get(0).x();
        BigDecimal x = first.add(points.get(points.size() - 1).x().subtract(first).multiply(share));
        assertEquals(interpolated(points).value(x.doubleValue()), approximate(LimitMargin.at(points, x)), NEAR);
    }

    @Property(tries = 300)
    void a_table_is_flat_beyond_its_ends_and_exact_at_its_points(@ForAll("tables") List<Limit.Point> points) {
        Limit.Point first = points.get(0);
        Limit.Point last = points.get(points.size() - 1);
        assertEquals(Fraction.of(first.y()), LimitMargin.at(points, first.x().subtract(BigDecimal.TEN)));
        assertEquals(Fraction.of(last.y()), LimitMargin.at(points, last.x().add(BigDecimal.TEN)));
        points.forEach(point -> assertEquals(Fraction.of(point.y()), LimitMargin.at(points, point.x())));
    }

    @Test
    void a_third_of_the_way_is_exactly_a_third() {
        List<Limit.Point> points = List.of(new Limit.Point(BigDecimal.ZERO, BigDecimal.ZERO), new Limit.Point(new BigDecimal("3"), BigDecimal.ONE));
        assertEquals(Fraction.of(BigDecimal.ONE).over(Fraction.of(new BigDecimal("3"))), LimitMargin.at(points, BigDecimal.ONE));
    }

    private static double approximate(Fraction exact) {
        return new BigDecimal(exact.numerator()).divide(new BigDecimal(exact.denominator()), MathContext.DECIMAL128).doubleValue();
    }

    private static PolynomialSplineFunction interpolated(List<Limit.Point> points) {
        return new LinearInterpolator().interpolate(
                points.stream().mapToDouble(point -> point.x().doubleValue()).toArray(), points.stream().mapToDouble(point -> point.y().doubleValue()).toArray());
    }

    @Provide
    Arbitrary<List<Limit.Point>> tables() {
        Arbitrary<BigDecimal> step = Arbitraries.bigDecimals().between(new BigDecimal("0.1"), new BigDecimal("40")).ofScale(1);
        Arbitrary<BigDecimal> height = Arbitraries.bigDecimals().between(new BigDecimal("-500"), new BigDecimal("500")).ofScale(2);
        return step.list().ofMinSize(2).ofMaxSize(8).flatMap(steps -> height.list().ofSize(steps.size()).map(heights -> {
            List<Limit.Point> points = new ArrayList<>();
            BigDecimal x = new BigDecimal("-60");
            for (int i = 0; i < steps.size(); i++) {
                x = x.add(steps.get(i));
                points.add(new Limit.Point(x, heights.get(i)));
            }
            return List.copyOf(points);
        }));
    }

    @Provide
    Arbitrary<BigDecimal> between() {
        return Arbitraries.bigDecimals().between(BigDecimal.ZERO, BigDecimal.ONE).ofScale(4);
    }
}

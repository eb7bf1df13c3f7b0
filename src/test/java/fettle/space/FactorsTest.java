package fettle.space;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.math.BigDecimal;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;

class FactorsTest {

    private final Factors factors = new Factors();

    @Property(tries = 2000)
    void two_products_compare_as_all_their_digits_do(@ForAll("lists") List<BigDecimal> one, @ForAll("lists") List<BigDecimal> other) {
        int a = product(one);
        int b = product(other);
        BigDecimal exactly = exact(one);
        assertEquals(0, factors.value(a).compareTo(exactly));
        assertEquals(exactly.signum() >= 0, factors.positive(a));
        assertEquals(0, factors.value(factors.lesser(a, b)).compareTo(exactly.min(exact(other))));
        assertEquals(0, factors.value(factors.greater(a, b)).compareTo(exactly.max(exact(other))));
    }

    @Property(tries = 500)
    void a_difference_in_the_last_of_many_digits_is_seen(@ForAll("lists") List<BigDecimal> some) {
        BigDecimal hair = new BigDecimal("1.0000000000000000000000000001");
        int plain = product(some);
        int more = factors.times(plain, factors.number(hair));
        assertEquals(factors.value(plain).max(factors.value(plain).multiply(hair)), factors.value(factors.greater(plain, more)));
    }

    private int product(List<BigDecimal> of) {
        int product = Factors.ONE;
        for (BigDecimal factor : of) {
            product = factors.times(product, factors.number(factor));
        }
        return product;
    }

    private static BigDecimal exact(List<BigDecimal> of) {
        return of.stream().reduce(BigDecimal.ONE, BigDecimal::multiply);
    }

    /** Factors as catalogs have them, and some far from any that are written. */
    @Provide
    Arbitrary<List<BigDecimal>> lists() {
        return Arbitraries.of("0.9", "1.1", "0.99", "1.01", "2", "0.5", "-1", "-0.7", "0", "1E-200", "1E200", "3E-305", "1E305", "1E-400")
                .map(BigDecimal::new).list().ofMaxSize(12);
    }
}

package fettle.space;

import java.math.BigDecimal;

/** The least and greatest product of the parts' factors, by their numbers: the least in the upper half of a long, the greatest in the lower. */
final class ProductRange implements Algebra<Long> {

    private final Factors factors = new Factors();
    private final Long[] byPart;
    private final Long nothing = pair(Factors.ONE, Factors.ONE);

    /**
     * Products over these factors.
     *
     * @param byPart by part; empty-handed ({@code null}) where it brings none
     */
    ProductRange(BigDecimal[] byPart) {
        this.byPart = new Long[byPart.length];
        for (int p = 0; p < byPart.length; p++) {
            int factor = byPart[p] == null ? Factors.ONE : factors.number(byPart[p]);
            this.byPart[p] = factor == Factors.ONE ? nothing : pair(factor, factor);
        }
    }

    private static Long pair(int least, int greatest) {
        return (long) least << 32 | greatest;
    }

    private static int least(Long range) {
        return (int) (range >>> 32);
    }

    private static int greatest(Long range) {
        return (int) (long) range;
    }

    Range range(Long products) {
        return new Range(factors.value(least(products)), factors.value(greatest(products)));
    }

    @Override
    public Long one() {
        return nothing;
    }

    @Override
    public Long part(int part) {
        return byPart[part];
    }

    /** The extremes of a product are among the products of the extremes. */
    @Override
    public Long both(Long one, Long other) {
        if (one.equals(nothing)) {
            return other;
        }
        if (other.equals(nothing)) {
            return one;
        }
        int a = factors.times(least(one), least(other));
        if (factors.positive(least(one)) && factors.positive(least(other))) {
            return pair(a, least(one) == greatest(one) && least(other) == greatest(other) ? a : factors.times(greatest(one), greatest(other)));
        }
        int b = factors.times(least(one), greatest(other));
        int c = factors.times(greatest(one), least(other));
        int d = factors.times(greatest(one), greatest(other));
        return pair(factors.lesser(factors.lesser(a, b), factors.lesser(c, d)), factors.greater(factors.greater(a, b), factors.greater(c, d)));
    }

    @Override
    public Long either(Long one, Long other) {
        return one.equals(other) ? one : pair(factors.lesser(least(one), least(other)), factors.greater(greatest(one), greatest(other)));
    }
}

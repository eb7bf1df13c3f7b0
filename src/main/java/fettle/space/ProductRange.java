package fettle.space;

import java.math.BigDecimal;

/** The least and greatest product of the parts' factors, by the numbers that {@link Factors} gives them. */
final class ProductRange extends RangeSweep {

    private final Factors factors = new Factors();
    private final int[] byPart;

    /**
     * Products over these factors, for the roots of a sweep.
     *
     * @param figures by part; empty-handed ({@code null}) where it brings none
     */
    ProductRange(Circuit circuit, BigDecimal[] figures, Sweep sweep) {
        super(circuit, sweep);
        this.byPart = new int[figures.length];
        for (int p = 0; p < figures.length; p++) {
            byPart[p] = figures[p] == null ? Factors.ONE : factors.number(figures[p]);
        }
        run();
    }

    /** The products of a root of the sweep. */
    Range of(int root) {
        return new Range(factors.value((int) least[place(root)]), factors.value((int) greatest[place(root)]));
    }

    @Override
    void nothing(int at) {
        set(at, Factors.ONE, Factors.ONE);
    }

    @Override
    void part(int at, int part, int on) {
        times(at, byPart[part], byPart[part], (int) least[on], (int) greatest[on]);
    }

    @Override
    void both(int at, int one, int other) {
        times(at, (int) least[one], (int) greatest[one], (int) least[other], (int) greatest[other]);
    }

    @Override
    void several(int at, int of, int copies) {
        copy(at, of);
        for (int i = 1; i < copies; i++) {
            both(at, at, of);
        }
    }

    /** The extremes of a product are among the products of the extremes. */
    private void times(int at, int low, int high, int otherLow, int otherHigh) {
        int a = factors.times(low, otherLow);
        if (factors.positive(low) && factors.positive(otherLow)) {
            set(at, a, low == high && otherLow == otherHigh ? a : factors.times(high, otherHigh));
        } else {
            int b = factors.times(low, otherHigh);
            int c = factors.times(high, otherLow);
            int d = factors.times(high, otherHigh);
            set(at, factors.lesser(factors.lesser(a, b), factors.lesser(c, d)), factors.greater(factors.greater(a, b), factors.greater(c, d)));
        }
    }

    @Override
    void either(int at, int other) {
        set(at, factors.lesser((int) least[at], (int) least[other]), factors.greater((int) greatest[at], (int) greatest[other]));
    }
}

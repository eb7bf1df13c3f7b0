package fettle.space;

import java.math.BigDecimal;
import java.util.Optional;

/**
 * The least and greatest sums of what the parts bring, worked out in whole numbers of the smallest decimal place that occurs. Exact like {@link SumRange} and
 * much faster; gives up where the numbers could grow too large for it.
 */
final class LongRanges extends RangeSweep {

    private final int scale;
    private final long[] figures;

    private LongRanges(Circuit circuit, Sweep sweep, long[] figures, int scale) {
        super(circuit, sweep);
        this.figures = figures;
        this.scale = scale;
    }

    /**
     * Works the sums out for the roots of a sweep.
     *
     * @param byPart by part; empty-handed ({@code null}) where it brings nothing
     * @return empty where a figure or sum has too many digits
     */
    static Optional<LongRanges> of(Circuit circuit, BigDecimal[] byPart, Sweep sweep) {
        int scale = 0;
        for (BigDecimal figure : byPart) {
            scale = figure == null ? scale : Math.max(scale, figure.scale());
        }
        try {
            long[] figures = new long[byPart.length];
            for (int part = 0; part < figures.length; part++) {
                figures[part] = byPart[part] == null ? 0 : byPart[part].setScale(scale).unscaledValue().longValueExact();
            }
            LongRanges ranges = new LongRanges(circuit, sweep, figures, scale);
            ranges.run();
            return Optional.of(ranges);
        } catch (ArithmeticException tooManyDigits) {
            return Optional.empty();
        }
    }

    @Override
    void nothing(int at) {
        set(at, 0, 0);
    }

    @Override
    void part(int at, int part, int on) {
        set(at, Math.addExact(figures[part], least[on]), Math.addExact(figures[part], greatest[on]));
    }

    @Override
    void both(int at, int one, int other) {
        set(at, Math.addExact(least[one], least[other]), Math.addExact(greatest[one], greatest[other]));
    }

    @Override
    void several(int at, int of, int copies) {
        set(at, Math.multiplyExact(least[of], (long) copies), Math.multiplyExact(greatest[of], (long) copies));
    }

    /** The sums of a root of the sweep. */
    Range of(int root) {
        int at = place(root);
        return new Range(BigDecimal.valueOf(least[at], scale), BigDecimal.valueOf(greatest[at], scale));
    }
}

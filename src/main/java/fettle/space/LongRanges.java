package fettle.space;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.util.BitSet;
import java.util.Optional;

/**
 * The least and greatest sums of what the parts bring, worked out in whole numbers of the smallest decimal place that occurs. Exact like {@link SumRange} and
 * much faster; gives up where the numbers could grow too large for it.
 */
final class LongRanges {

    private final int scale;
    private final Sweep sweep;
    private final long[] least;
    private final long[] greatest;

    private LongRanges(int scale, Sweep sweep) {
        this.scale = scale;
        this.sweep = sweep;
        this.least = new long[sweep.places()];
        this.greatest = new long[sweep.places()];
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
                figures[part] = byPart[part] == null ? 0 : longOf(byPart[part].setScale(scale).unscaledValue());
            }
            LongRanges ranges = new LongRanges(scale, sweep);
            BitSet nodes = sweep.nodes();
            for (int node = nodes.nextSetBit(0); node >= 0; node = nodes.nextSetBit(node + 1)) {
                ranges.work(circuit, figures, node);
            }
            return Optional.of(ranges);
        } catch (ArithmeticException tooManyDigits) {
            return Optional.empty();
        }
    }

    private static long longOf(BigInteger number) {
        return number.longValueExact();
    }

    private void work(Circuit circuit, long[] figures, int node) {
        int first = circuit.first(node);
        int second = circuit.second(node);
        int at = sweep.place(node);
        switch (circuit.kind(node)) {
            case ONE -> set(at, 0, 0);
            case PART -> {
                int on = sweep.place(second);
                set(at, Math.addExact(figures[first], least[on]), Math.addExact(figures[first], greatest[on]));
            }
            case SLOT -> {
                int in = sweep.place(second);
                set(at, least[in], greatest[in]);
            }
            case BOTH -> {
                int one = sweep.place(first);
                int other = sweep.place(second);
                set(at, Math.addExact(least[one], least[other]), Math.addExact(greatest[one], greatest[other]));
            }
            case SEVERAL -> {
                int of = sweep.place(first);
                set(at, Math.multiplyExact(least[of], (long) second), Math.multiplyExact(greatest[of], (long) second));
            }
            case EITHER -> {
                long low = Long.MAX_VALUE;
                long high = Long.MIN_VALUE;
                for (int i = 0; i < second; i++) {
                    int alternative = sweep.place(circuit.alternative(node, i));
                    low = Math.min(low, least[alternative]);
                    high = Math.max(high, greatest[alternative]);
                }
                set(at, low, high);
            }
        }
    }

    private void set(int place, long low, long high) {
        least[place] = low;
        greatest[place] = high;
    }

    /** The sums of a root of the sweep. */
    Range of(int root) {
        int at = sweep.place(root);
        return new Range(BigDecimal.valueOf(least[at], scale), BigDecimal.valueOf(greatest[at], scale));
    }
}

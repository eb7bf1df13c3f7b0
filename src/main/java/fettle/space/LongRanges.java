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
    private final long[] least;
    private final long[] greatest;

    private LongRanges(int scale, int nodes) {
        this.scale = scale;
        this.least = new long[nodes];
        this.greatest = new long[nodes];
    }

    /**
     * Works the sums out for some nodes and all that they are made of.
     *
     * @param byPart by part; empty-handed ({@code null}) where it brings nothing
     * @param nodes those to work out, closed under what they are made of
     * @return empty where a figure or sum has too many digits
     */
    static Optional<LongRanges> of(Circuit circuit, BigDecimal[] byPart, BitSet nodes) {
        int scale = 0;
        for (BigDecimal figure : byPart) {
            scale = figure == null ? scale : Math.max(scale, figure.scale());
        }
        try {
            long[] figures = new long[byPart.length];
            for (int part = 0; part < figures.length; part++) {
                figures[part] = byPart[part] == null ? 0 : longOf(byPart[part].setScale(scale).unscaledValue());
            }
            LongRanges ranges = new LongRanges(scale, nodes.length());
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
        switch (circuit.kind(node)) {
            case ONE -> { }
            case PART -> {
                least[node] = Math.addExact(figures[first], least[second]);
                greatest[node] = Math.addExact(figures[first], greatest[second]);
            }
            case SLOT -> {
                least[node] = least[second];
                greatest[node] = greatest[second];
            }
            case BOTH -> {
                least[node] = Math.addExact(least[first], least[second]);
                greatest[node] = Math.addExact(greatest[first], greatest[second]);
            }
            case SEVERAL -> {
                least[node] = Math.multiplyExact(least[first], (long) second);
                greatest[node] = Math.multiplyExact(greatest[first], (long) second);
            }
            case EITHER -> {
                long low = Long.MAX_VALUE;
                long high = Long.MIN_VALUE;
                for (int i = 0; i < second; i++) {
                    int alternative = circuit.alternative(node, i);
                    low = Math.min(low, least[alternative]);
                    high = Math.max(high, greatest[alternative]);
                }
                least[node] = low;
                greatest[node] = high;
            }
        }
    }

    Range of(int node) {
        return new Range(BigDecimal.valueOf(least[node], scale), BigDecimal.valueOf(greatest[node], scale));
    }
}

package fettle.space;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.Objects;
import java.util.Optional;

/**
 * The least and greatest maximum (or, turned over, minimum) of what the parts bring, by the rank of each figure among all that occur. Assemblies that bring no
 * figure have no peak, and are kept in mind apart.
 */
final class PeakRange extends RangeSweep {

    /** The least and greatest rank where no assembly brings a figure. */
    private static final long NO_LEAST = Long.MAX_VALUE;
    private static final long NO_GREATEST = -1;

    private final BigDecimal[] ranked;
    private final boolean lowest;
    /** By part; {@link #NO_GREATEST} where it brings no figure. */
    private final int[] ranks;
    /** By place, whether one of the assemblies brings no figure. */
    private final boolean[] bare;

    /**
     * Peaks over these figures, for the roots of a sweep.
     *
     * @param figures by part; empty-handed ({@code null}) where it brings nothing
     * @param lowest whether the minimum is meant, not the maximum
     */
    PeakRange(Circuit circuit, BigDecimal[] figures, boolean lowest, Sweep sweep) {
        super(circuit, sweep);
        this.lowest = lowest;
        this.ranked = Arrays.stream(figures).filter(Objects::nonNull).sorted(this::compare).toArray(BigDecimal[]::new);
        this.ranks = Arrays.stream(figures).mapToInt(figure -> figure == null ? (int) NO_GREATEST : Arrays.binarySearch(ranked, figure, this::compare)).toArray();
        this.bare = new boolean[sweep.places()];
        run();
    }

    /** Such that the peak comes last. */
    private int compare(BigDecimal one, BigDecimal other) {
        return lowest ? other.compareTo(one) : one.compareTo(other);
    }

    /**
     * The peaks of a root of the sweep.
     *
     * @param base what is there besides, in every build
     * @return empty where no build has a figure
     */
    Optional<Range> of(int root, Optional<BigDecimal> base) {
        int at = place(root);
        Optional<Range> found = least[at] == NO_LEAST ? Optional.empty() : Optional.of(Range.between(ranked[(int) least[at]], ranked[(int) greatest[at]]));
        return base.isEmpty() ? found : found.map(range -> {
            Range peaks = Range.between(peak(range.least(), base.get()), peak(range.greatest(), base.get()));
            return bare[at] ? peaks.span(Range.at(base.get())) : peaks;
        }).or(() -> base.map(Range::at));
    }

    private BigDecimal peak(BigDecimal one, BigDecimal other) {
        return compare(one, other) >= 0 ? one : other;
    }

    @Override
    void nothing(int at) {
        set(at, NO_LEAST, NO_GREATEST);
        bare[at] = true;
    }

    @Override
    void part(int at, int part, int on) {
        if (ranks[part] == NO_GREATEST) {
            copy(at, on);
        } else {
            set(at, bare[on] ? ranks[part] : Math.max(ranks[part], least[on]), Math.max(ranks[part], greatest[on]));
            bare[at] = false;
        }
    }

    @Override
    void both(int at, int one, int other) {
        long low = Math.max(least[one], least[other]);
        low = bare[one] ? Math.min(low, least[other]) : low;
        low = bare[other] ? Math.min(low, least[one]) : low;
        // One that has no figure is bare.
        set(at, low, Math.max(greatest[one], greatest[other]));
        bare[at] = bare[one] && bare[other];
    }

    /** The peak of any number of one set is one of its peaks. */
    @Override
    void several(int at, int of, int copies) {
        copy(at, of);
    }

    @Override
    void copy(int at, int other) {
        super.copy(at, other);
        bare[at] = bare[other];
    }

    @Override
    void either(int at, int other) {
        super.either(at, other);
        bare[at] |= bare[other];
    }
}

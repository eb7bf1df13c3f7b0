package fettle.space;

import java.math.BigDecimal;
import java.util.Optional;

/** The least and greatest maximum (or, turned over, minimum) of what the parts bring, and whether some bring nothing at all. */
final class PeakRange implements Algebra<PeakRange.Peaks> {

    /**
     * Peaks of a set of assemblies.
     *
     * @param valueless whether one of them brings no figure
     * @param range over those that bring one; empty where none does
     */
    record Peaks(boolean valueless, Optional<Range> range) {
        private static final Peaks NOTHING = new Peaks(true, Optional.empty());
    }

    private final Peaks[] byPart;
    private final boolean lowest;

    /**
     * Peaks over these figures.
     *
     * @param byPart by part; empty-handed ({@code null}) where it brings nothing
     * @param lowest whether the minimum is meant, not the maximum
     */
    PeakRange(BigDecimal[] byPart, boolean lowest) {
        this.lowest = lowest;
        this.byPart = new Peaks[byPart.length];
        for (int p = 0; p < byPart.length; p++) {
            this.byPart[p] = byPart[p] == null ? Peaks.NOTHING : at(byPart[p]);
        }
    }

    static Peaks at(BigDecimal value) {
        return new Peaks(false, Optional.of(Range.at(value)));
    }

    @Override
    public Peaks one() {
        return Peaks.NOTHING;
    }

    @Override
    public Peaks part(int part) {
        return byPart[part];
    }

    @Override
    public Peaks both(Peaks one, Peaks other) {
        if (one == Peaks.NOTHING) {
            return other;
        }
        if (other == Peaks.NOTHING) {
            return one;
        }
        Optional<Range> range = one.range.isPresent() && other.range.isPresent() ? Optional.of(peak(one.range.get(), other.range.get())) : Optional.empty();
        if (other.valueless) {
            range = span(range, one.range);
        }
        if (one.valueless) {
            range = span(range, other.range);
        }
        return new Peaks(one.valueless && other.valueless, range);
    }

    private Range peak(Range one, Range other) {
        return lowest
                ? new Range(one.least().min(other.least()), one.greatest().min(other.greatest()))
                : new Range(one.least().max(other.least()), one.greatest().max(other.greatest()));
    }

    @Override
    public Peaks either(Peaks one, Peaks other) {
        return one == other ? one : new Peaks(one.valueless || other.valueless, span(one.range, other.range));
    }

    private static Optional<Range> span(Optional<Range> one, Optional<Range> other) {
        return one.isPresent() && other.isPresent() ? Optional.of(one.get().span(other.get())) : one.or(() -> other);
    }
}

package fettle.space;

import java.math.BigDecimal;

/** The least and greatest sum of what the parts bring. */
final class SumRange implements Algebra<Range> {

    private static final Range NOTHING = Range.at(BigDecimal.ZERO);

    private final Range[] byPart;

    /**
     * Sums over these figures.
     *
     * @param byPart by part; empty-handed ({@code null}) where it brings nothing
     */
    SumRange(BigDecimal[] byPart) {
        this.byPart = new Range[byPart.length];
        for (int p = 0; p < byPart.length; p++) {
            this.byPart[p] = byPart[p] == null ? NOTHING : Range.at(byPart[p]);
        }
    }

    @Override
    public Range one() {
        return NOTHING;
    }

    @Override
    public Range part(int part) {
        return byPart[part];
    }

    @Override
    public Range both(Range one, Range other) {
        return one == NOTHING ? other : other == NOTHING ? one : one.plus(other);
    }

    @Override
    public Range either(Range one, Range other) {
        return one == other ? one : one.span(other);
    }
}

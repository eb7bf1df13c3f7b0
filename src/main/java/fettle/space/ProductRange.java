package fettle.space;

import java.math.BigDecimal;

/** The least and greatest product of the parts' factors. */
final class ProductRange implements Algebra<Range> {

    private static final Range NOTHING = Range.at(BigDecimal.ONE);

    private final Range[] byPart;

    /**
     * Products over these factors.
     *
     * @param byPart by part; empty-handed ({@code null}) where it brings none
     */
    ProductRange(BigDecimal[] byPart) {
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
        return one == NOTHING ? other : other == NOTHING ? one : one.times(other);
    }

    @Override
    public Range either(Range one, Range other) {
        return one == other ? one : one.span(other);
    }
}

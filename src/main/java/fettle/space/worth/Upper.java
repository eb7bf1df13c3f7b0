package fettle.space.worth;

/** The best that any of some choices brings in each column, of which one after the other is taken in. */
final class Upper {

    private final Measure measure;
    private Yield best;
    /** Whether it was made here, so that it may be changed. */
    private boolean made;

    Upper(Measure measure) {
        this.measure = measure;
    }

    /** Takes in one more. */
    void take(Yield other) {
        Yield before = best;
        best = before == null ? other : measure.best(before, other, made);
        made = best != other && (made || best != before);
    }

    /** The best of all that were taken in; empty-handed ({@code null}) where none were. Nothing may be taken in after that. */
    Yield best() {
        return best;
    }
}

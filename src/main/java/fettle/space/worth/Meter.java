package fettle.space.worth;

import java.util.Optional;

/** Counts the steps of one decision, and breaks it off when there are too many. */
final class Meter {

    /** Thrown when the steps are used up; caught where the decision is reported as undecided. */
    static final class Spent extends RuntimeException {
        private static final long serialVersionUID = 1L;

        Spent() {
            super("the steps allowed for one decision are used up", null, false, false);
        }
    }

    /** Counts the same steps for all of which this is a part; {@code null} where nothing does, since steps are counted too often to ask in any other way. */
    private Meter whole;
    private long most;
    private long spent;

    Meter(long most) {
        this(most, Optional.empty());
    }

    /**
     * A meter.
     *
     * @param whole counts the same steps for all of which this is a part, and breaks off likewise
     */
    Meter(long most, Optional<Meter> whole) {
        this.whole = whole.orElse(null);
        this.most = most;
    }

    long most() {
        return most;
    }

    void spend(long steps) {
        spent += steps;
        if (whole != null) {
            whole.spend(steps);
        }
        if (spent > most) {
            throw new Spent();
        }
    }

    /** Whether all decisions together have used up their steps. */
    boolean spentWhole() {
        return whole != null && (whole.whole == null ? whole.spent > whole.most : whole.spentWhole());
    }

    /** Allows so many steps beside those that are spent. */
    void allowMore(long steps) {
        most = spent + steps;
    }

    /** Starts over, with so many steps, which are not counted elsewhere. */
    void allow(long steps) {
        start(steps, null);
    }

    /** Starts over, with so many steps, which another meter counts too. */
    void allow(long steps, Meter whole) {
        start(steps, whole);
    }

    private void start(long steps, Meter countedBy) {
        most = steps;
        spent = 0;
        whole = countedBy;
    }
}

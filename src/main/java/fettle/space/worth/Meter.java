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

    private Optional<Meter> whole;
    private long most;
    private long spent;

    Meter(long most) {
        this(most, Optional.empty());
    }

    /**
     * A meter.
     *
     * @param whole counts the same steps for all decisions together, and breaks off likewise
     */
    Meter(long most, Optional<Meter> whole) {
        this.whole = whole;
        this.most = most;
    }

    long most() {
        return most;
    }

    void spend(long steps) {
        spent += steps;
        whole.ifPresent(all -> all.spent += steps);
        if (spent > most || spentWhole()) {
            throw new Spent();
        }
    }

    /** Whether all decisions together have used up their steps. */
    boolean spentWhole() {
        return whole.isPresent() && whole.get().spent > whole.get().most;
    }

    /** Starts over, with so many steps, which are not counted elsewhere. */
    void allow(long steps) {
        allow(steps, Optional.empty());
    }

    /** Starts over, with so many steps, which another meter counts too. */
    void allow(long steps, Meter whole) {
        allow(steps, Optional.of(whole));
    }

    private void allow(long steps, Optional<Meter> countedBy) {
        most = steps;
        spent = 0;
        whole = countedBy;
    }
}

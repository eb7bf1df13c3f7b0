package fettle.space.worth;

/** Counts the steps of one decision, and breaks it off when there are too many. */
final class Meter {

    /** Thrown when the steps are used up; caught where the decision is reported as undecided. */
    static final class Spent extends RuntimeException {
        private static final long serialVersionUID = 1L;

        Spent() {
            super("the steps allowed for one decision are used up", null, false, false);
        }
    }

    private long most;
    private long spent;

    Meter(long most) {
        this.most = most;
    }

    long most() {
        return most;
    }

    void spend(long steps) {
        spent += steps;
        if (spent > most) {
            throw new Spent();
        }
    }

    /** Starts over, with so many steps. */
    void allow(long steps) {
        most = steps;
        spent = 0;
    }
}

package fettle.space;

import java.util.Arrays;

/** What of a relation's states still matters to the rest of a build: each state's stand-in, the first of those that nothing left tells apart. */
final class Quotient {

    /** Stands in for states that break the relation whatever else is placed. */
    static final int HOPELESS = -1;

    /** Stands in for states that cannot come about. */
    static final int NEVER = -2;

    private final int[] standIns;

    Quotient(int[] standIns) {
        this.standIns = standIns;
    }

    int of(int state) {
        return standIns[state];
    }

    /** Whether a build must hold something here for the relation to be kept. */
    boolean demands() {
        return standIns[0] == HOPELESS;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Quotient quotient && Arrays.equals(standIns, quotient.standIns);
    }

    @Override
    public int hashCode() {
        return Arrays.hashCode(standIns);
    }
}

package fettle.space;

/** Breaks off work that outgrew its bound; becomes an {@link Undecided} before it leaves the room. */
final class TooLarge extends RuntimeException {

    private static final long serialVersionUID = 1L;

    /** What outgrew its bound. */
    enum What { RELATION, WORK, STATES, ENDLESS }

    private final What what;
    private final long bound;
    private String at = "";

    TooLarge(What what, long bound) {
        super(what.toString(), null, false, false);
        this.what = what;
        this.bound = bound;
    }

    TooLarge at(String place) {
        at = place;
        return this;
    }

    What what() {
        return what;
    }

    long bound() {
        return bound;
    }

    String at() {
        return at;
    }
}

package fettle.space.best;

/** Breaks off a search whose size is out of bounds; becomes an undecided outcome before it leaves the package. */
final class TooMany extends RuntimeException {

    private static final long serialVersionUID = 1L;

    private final String at;
    private final long bound;

    TooMany(String at, long bound) {
        super("too many at " + at, null, false, false);
        this.at = at;
        this.bound = bound;
    }

    String at() {
        return at;
    }

    long bound() {
        return bound;
    }
}

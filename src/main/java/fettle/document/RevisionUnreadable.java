package fettle.document;

/** Thrown where a revision that somebody named cannot be read; the message tells a person why, and what to do. */
public final class RevisionUnreadable extends RuntimeException {
    private static final long serialVersionUID = 1L;

    RevisionUnreadable(String message) {
        super(message);
    }
}

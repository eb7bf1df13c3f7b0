package fettle.command;

/** Thrown where there is nothing that could be checked; the message tells a person why, and what to do. */
final class NotChecked extends RuntimeException {

    private static final long serialVersionUID = 1L;

    NotChecked(String message) {
        super(message);
    }
}

package fettle.document;

/** Says that reading a document cannot go on; the problem is reported already. */
final class StopReading extends Exception {
    private static final long serialVersionUID = 1L;

    StopReading() {
        super(null, null, false, false);
    }
}

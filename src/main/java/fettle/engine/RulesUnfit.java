package fettle.engine;

/**
 * Thrown when the program was packaged with no rules, or with other rules than its index names.
 *
 * <p>A fault in the program itself: whoever looked with no rules must not report that all is well.
 */
public final class RulesUnfit extends IllegalStateException {
    private static final long serialVersionUID = 1L;

    RulesUnfit(String message) {
        super(message);
    }

    RulesUnfit(String message, Throwable cause) {
        super(message, cause);
    }
}

package fettle.engine;

/**
 * Thrown when a rule breaks off while it runs.
 *
 * <p>The message names the rule; the cause is what it threw.
 */
public final class RuleFault extends RuntimeException {
    private static final long serialVersionUID = 1L;

    private final boolean given;

    private RuleFault(String what, boolean given, Throwable cause) {
        super(what, cause);
        this.given = given;
    }

    /**
     * A DRL rule that broke off.
     *
     * @param given whether the user named it, rather than the program bringing it
     */
    static RuleFault of(String rule, boolean given, Throwable cause) {
        return brokenOff("The rule " + rule, given, cause);
    }

    /** One of the rules that the user named, where it isn't known which. */
    static RuleFault ofOneGiven(Throwable cause) {
        return brokenOff("A rule of those given", true, cause);
    }

    /** A rule that fired last when rules were stopped, since they seem to have no end: why that is. */
    static RuleFault endless(String rule, boolean given, String so) {
        return new RuleFault("The rule " + rule + " seems to have no end: " + so, given, null);
    }

    private static RuleFault brokenOff(String what, boolean given, Throwable cause) {
        return new RuleFault(what + " broke off: " + told(cause), given, cause);
    }

    private static String told(Throwable cause) {
        String kind = cause.getClass().getSimpleName();
        return cause.getMessage() == null ? kind : kind + ", " + cause.getMessage() + (cause.getCause() == null ? "" : ", " + cause.getCause().getMessage());
    }

    /** Whether the user named the rule, rather than the program bringing it. */
    public boolean given() {
        return given;
    }
}

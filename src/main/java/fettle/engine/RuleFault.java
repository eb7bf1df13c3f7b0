/** Thrown when a rule breaks off while it runs. */
package fettle.engine;

/** The message names the rule; the cause is what it threw. */
public final class RuleFault extends RuntimeException {
    private static final long serialVersionUID = 1L;

    private final String rule;

    RuleFault(String rule, Throwable cause) {
        super("The rule " + rule + " broke off: " + cause.getMessage(), cause);
        this.rule = rule;
    }

    /** The DRL rule that was running. */
    public String rule() {
        return rule;
    }
}

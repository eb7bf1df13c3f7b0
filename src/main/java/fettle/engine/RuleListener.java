/** Lets a global learn which rule is calling it. */
package fettle.engine;

/**
 * A global that implements this is told the name of each rule just before the rule's consequence runs, so that no
 * consequence has to state its own name.
 */
public interface RuleListener {
    /** The DRL rule called {@code rule} is about to call its globals. */
    void aboutToRun(String rule);
}

/** Where the program starts. */
package fettle.command;

import fettle.engine.RuleIndex;

/** Tells how many rules the program has. */
public final class Main {
    private Main() {
    }

    /** Prints one line. */
    public static void main(String[] arguments) {
        System.out.println("Fettle has " + RuleIndex.builtIn().rules().size() + " rules.");
    }
}

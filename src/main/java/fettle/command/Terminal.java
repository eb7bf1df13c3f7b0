package fettle.command;

import java.io.Console;
import java.lang.invoke.MethodHandles;
import java.lang.invoke.MethodType;
import java.util.Map;

/** Tells whether standard output is a terminal that shows colours. */
final class Terminal {

    private Terminal() {}

    static boolean shown() {
        Map<String, String> environment = System.getenv();
        boolean refused = !environment.getOrDefault("NO_COLOR", "").isEmpty() || "dumb".equals(environment.get("TERM"));
        boolean capable = !System.getProperty("os.name", "").startsWith("Windows") || environment.containsKey("WT_SESSION") || environment.containsKey("TERM");
        return !refused && capable && attached();
    }

    /** Up to Java 21 there is a console only on a terminal; later ones must be asked, by a method that 17 does not have. */
    private static boolean attached() {
        Console console = System.console();
        if (console == null || Runtime.version().feature() < 22) {
            return console != null;
        }
        try {
            return (boolean) MethodHandles.publicLookup().findVirtual(Console.class, "isTerminal", MethodType.methodType(boolean.class)).invoke(console);
        } catch (Throwable unknown) {
            return false;
        }
    }
}

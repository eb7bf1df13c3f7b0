package fettle.command;

import java.io.Console;
import java.lang.invoke.MethodHandles;
import java.lang.invoke.MethodType;
import java.util.Map;

/** Tells whether a terminal is attached, and whether it shows colours. */
final class Terminal {

    private Terminal() {}

    static boolean shown() {
        Map<String, String> environment = System.getenv();
        boolean refused = !environment.getOrDefault("NO_COLOR", "").isEmpty() || dumb();
        boolean capable = !System.getProperty("os.name", "").startsWith("Windows") || environment.containsKey("WT_SESSION") || environment.containsKey("TERM");
        return !refused && capable && attached();
    }

    /** Whether someone waits at a terminal on which a line can be written over. */
    static boolean attended() {
        return !dumb() && attached();
    }

    private static boolean dumb() {
        return "dumb".equals(System.getenv("TERM"));
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

package fettle.command;

import fettle.engine.RuleFault;
import fettle.engine.RulesUnfit;

/** Tells a fault of the program in one sentence that a report can quote. */
final class Fault {

    private static final String REPORT = "Please report this with the command and the files that show it: it is a fault in Fettle, not in your catalog.";
    private static final long GIBIBYTE = 1L << 30;

    private Fault() {}

    static String told(Throwable fault) {
        if (fault instanceof OutOfMemoryError) {
            return "The memory did not suffice; give more with FETTLE_JAVA_OPTIONS=-Xmx" + enough(Runtime.getRuntime().maxMemory()) + "g, or check fewer files at a time.";
        }
        String what = fault instanceof RuleFault || fault instanceof RulesUnfit
                ? fault.getMessage()
                : "Something went wrong that should not: " + fault.getClass().getSimpleName() + (fault.getMessage() == null ? "" : ", " + fault.getMessage()) + ",";
        return what + place(fault) + ". " + REPORT;
    }

    /** Twice what was too little, in gibibytes. */
    static long enough(long tooFew) {
        return Math.max(2, (2 * tooFew + GIBIBYTE - 1) / GIBIBYTE);
    }

    private static String place(Throwable fault) {
        for (StackTraceElement element : fault.getStackTrace()) {
            if (element.getClassName().startsWith("fettle.")) {
                return " in " + element.getClassName().substring("fettle.".length()) + " at line " + element.getLineNumber();
            }
        }
        return "";
    }
}

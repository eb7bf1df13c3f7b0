package fettle.command;

import java.io.InputStream;
import java.io.PrintStream;

/**
 * What a command reads and writes.
 *
 * @param terminal whether {@code out} is a terminal that shows colours
 * @param progress where to say what is being done
 */
record Streams(InputStream in, PrintStream out, PrintStream err, boolean terminal, Progress progress) {

    /** Streams at which nobody waits. */
    Streams(InputStream in, PrintStream out, PrintStream err, boolean terminal) {
        this(in, out, err, terminal, new Progress(err, () -> 0, false));
    }
}

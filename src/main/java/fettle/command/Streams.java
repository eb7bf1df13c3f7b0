package fettle.command;

import java.io.InputStream;
import java.io.PrintStream;

/**
 * What a command reads and writes.
 *
 * @param terminal whether {@code out} is a terminal that shows colours
 */
record Streams(InputStream in, PrintStream out, PrintStream err, boolean terminal) {}

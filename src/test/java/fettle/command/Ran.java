package fettle.command;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.InputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;

/** The program as run once, inside this process. */
public record Ran(int exit, String out, String err) {

    /** Runs it with nothing on standard input. */
    public static Ran fettle(String... arguments) {
        return with(InputStream.nullInputStream(), false, arguments);
    }

    /** Runs it with a text on standard input. */
    public static Ran reading(String input, String... arguments) {
        return with(new ByteArrayInputStream(input.getBytes(StandardCharsets.UTF_8)), false, arguments);
    }

    static Ran with(InputStream in, boolean terminal, String... arguments) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        int exit = Main.run(
                arguments,
                new Streams(in, new PrintStream(out, false, StandardCharsets.UTF_8), new PrintStream(err, false, StandardCharsets.UTF_8), terminal));
        return new Ran(exit, out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8));
    }
}

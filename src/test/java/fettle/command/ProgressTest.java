package fettle.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fettle.view.Shown;
import java.io.ByteArrayOutputStream;
import java.io.InputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.Test;

/** What someone who waits is told, by a clock that is set by hand. */
class ProgressTest {

    private final AtomicLong clock = new AtomicLong(5_000);
    private final ByteArrayOutputStream err = new ByteArrayOutputStream();
    private final PrintStream stream = new PrintStream(err, true, StandardCharsets.UTF_8);

    private Progress progress(boolean shown) {
        return new Progress(stream, clock::get, shown);
    }

    private String told() {
        return err.toString(StandardCharsets.UTF_8);
    }

    @Test
    void at_a_terminal_it_tells_what_is_done_from_two_seconds_on_and_wipes_it_in_the_end() {
        Progress progress = progress(true);
        progress.doing("judging the catalog");
        clock.addAndGet(Progress.PATIENCE - 1);
        assertTrue(progress.tell());
        assertEquals("", told());
        clock.addAndGet(1);
        progress.tell();
        assertEquals("\rfettle is judging the catalog, 2 s", told());
        err.reset();
        progress.doing("writing");
        clock.addAndGet(10_000);
        progress.tell();
        assertEquals("\rfettle is writing, 12 s" + " ".repeat("judging the catalog".length() - "writing".length() - 1), told());
        err.reset();
        progress.end();
        assertEquals("\r" + " ".repeat("fettle is writing, 12 s".length()) + "\r", told());
        err.reset();
        clock.addAndGet(10_000);
        assertFalse(progress.tell());
        assertEquals("", told());
    }

    @Test
    void elsewhere_it_tells_nothing() {
        Progress progress = progress(false);
        clock.addAndGet(60_000);
        assertTrue(progress.tell());
        progress.end();
        assertEquals("", told());
    }

    @Test
    void the_option_has_it_told_where_nobody_seems_to_wait() {
        // The clock jumps whenever it is asked, and whoever reads the build asks in between.
        Progress progress = new Progress(stream, () -> clock.addAndGet(10_000), false);
        InputStream asking = new InputStream() {
            @Override
            public int read() {
                progress.tell();
                return -1;
            }
        };
        Streams streams = new Streams(asking, new PrintStream(new ByteArrayOutputStream(), false, StandardCharsets.UTF_8), stream, false, progress);
        Main.run(new String[] {"validate", Shown.FOLDER.resolve("plain").toString(), "-", "--progress"}, streams);
        assertTrue(told().startsWith("\rfettle is reading, 10 s"), told());
        assertTrue(told().contains("\r" + " ".repeat("fettle is reading, 10 s".length()) + "\r"), told());
    }

    @Test
    void work_that_is_over_at_once_is_not_told_and_output_is_never_mixed_with_it() {
        Progress progress = progress(true);
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        Streams streams = new Streams(InputStream.nullInputStream(), new PrintStream(out, false, StandardCharsets.UTF_8), stream, true, progress);
        assertEquals(0, Main.run(new String[] {"lint", Shown.FOLDER.resolve("plain").toString(), "--color", "never"}, streams));
        clock.addAndGet(60_000);
        assertFalse(progress.tell());
        assertEquals("", told());
        assertEquals(Ran.fettle("lint", Shown.FOLDER.resolve("plain").toString()).out(), out.toString(StandardCharsets.UTF_8));
    }
}

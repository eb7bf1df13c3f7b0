package fettle.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fettle.view.Shown;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.PipedInputStream;
import java.io.PipedOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** A watch over a catalog that is saved again and again. */
@Timeout(120)
class WatchTest {

    private static final String PLAIN = "plain, patch 1.0: ";

    @TempDir
    private Path folder;

    private Path file;
    private String sound;
    private BufferedReader told;
    private Thread watching;
    private BufferedReader warned;
    private final CompletableFuture<Integer> exit = new CompletableFuture<>();

    @BeforeEach
    void lay_a_catalog_out() throws IOException {
        sound = Files.readString(Shown.FOLDER.resolve("plain/catalog.yaml"));
        file = Files.writeString(folder.resolve("catalog.yaml"), sound);
    }

    private void watch(String... more) throws IOException {
        PipedOutputStream toOut = new PipedOutputStream();
        PipedOutputStream toErr = new PipedOutputStream();
        told = reader(toOut);
        warned = reader(toErr);
        PrintStream out = new PrintStream(toOut, false, StandardCharsets.UTF_8);
        PrintStream err = new PrintStream(toErr, true, StandardCharsets.UTF_8);
        List<String> arguments = new ArrayList<>(List.of("watch", folder.toString()));
        arguments.addAll(List.of(more));
        watching = new Thread(() -> exit.complete(Main.run(
                arguments.toArray(String[]::new),
                new Streams(InputStream.nullInputStream(), out, err, false))));
        watching.start();
    }

    private static BufferedReader reader(PipedOutputStream from) throws IOException {
        return new BufferedReader(new InputStreamReader(new PipedInputStream(from, 1 << 16), StandardCharsets.UTF_8));
    }

    @AfterEach
    void end_it() throws InterruptedException {
        if (watching != null) {
            watching.interrupt();
            watching.join();
        }
    }

    /** All that is told up to the line that sums up. */
    private String toTheSummary() throws IOException {
        StringBuilder text = new StringBuilder();
        String line = told.readLine();
        while (!line.startsWith(PLAIN)) {
            text.append(line).append('\n');
            line = told.readLine();
        }
        return text.append(line).append('\n').toString();
    }

    @Test
    void first_it_tells_what_lint_tells() throws IOException {
        watch();
        assertEquals(Ran.fettle("lint", folder.toString()).out(), toTheSummary());
    }

    @Test
    void a_save_tells_what_is_new_and_the_next_what_is_gone() throws Exception {
        watch();
        toTheSummary();
        Files.writeString(file, sound + "zones:\n  - id: shelf\n    lable: Shelf\n");
        String broken = toTheSummary();
        assertTrue(broken.startsWith("saved " + file + "\n  error  "), broken);
        assertTrue(broken.contains("(schema-mismatch)") && broken.contains("catalog.yaml:" + (sound.lines().count() + 3) + ":5"), broken);
        assertTrue(broken.contains(" new, 0 gone."), broken);
        Files.writeString(file, sound);
        String mended = toTheSummary();
        assertTrue(mended.contains("   gone  ") && mended.contains("(schema-mismatch)"), mended);
        assertTrue(mended.endsWith(PLAIN + "no findings. 0 new, " + mended.lines().filter(line -> line.startsWith("   gone  ")).count() + " gone.\n"), mended);
    }

    @Test
    void findings_that_only_moved_are_not_told_again() throws Exception {
        Files.writeString(file, sound + "zones:\n  - id: shelf\n    lable: Shelf\n");
        watch();
        toTheSummary();
        Files.writeString(file, "# A line more.\n" + sound + "zones:\n  - id: shelf\n    lable: Shelf\n");
        String moved = toTheSummary();
        assertTrue(moved.endsWith(" 0 new, 0 gone.\n"), moved);
        assertEquals(2, moved.lines().count(), moved);
    }

    @Test
    void a_document_that_is_added_and_a_build_that_is_saved_are_seen() throws Exception {
        Path builds = Files.createDirectory(folder.resolve("builds"));
        Files.writeString(builds.resolve("one.yaml"), "build: { id: one, platform: bench, parts: {} }\n");
        watch("--builds", builds.toString());
        assertTrue(toTheSummary().contains(PLAIN + "1 build, valid"));
        Files.writeString(builds.resolve("one.yaml"), "build: { id: one, platform: bench, parts: { nowhere: knob } }\n");
        String wrong = toTheSummary();
        assertTrue(wrong.contains("(no-such-slot)") && wrong.contains(PLAIN + "1 build, not valid"), wrong);
        Files.writeString(folder.resolve("more.yaml"), "parts: [ {");
        assertTrue(toTheSummary().contains("(unreadable-document)"));
    }

    @Test
    void a_document_that_is_deleted_is_not_said_to_be_saved() throws Exception {
        Path more = Files.writeString(folder.resolve("more.yaml"), "zones: [{ id: shelf }]\n");
        watch();
        toTheSummary();
        Files.delete(more);
        assertTrue(toTheSummary().startsWith("deleted " + more + "\n"));
        Files.move(file, folder.resolve("moved.yaml"));
        assertTrue(toTheSummary().replaceAll("\\s+", " ").startsWith("saved " + folder.resolve("moved.yaml") + ", deleted " + file + " "));
    }

    @Test
    void a_folder_that_goes_and_comes_back_ends_nothing() throws Exception {
        watch();
        toTheSummary();
        Files.delete(file);
        while (!warned.readLine().contains("no document is in this folder")) {
            // What stands before it is of no matter here.
        }
        Files.writeString(file, sound);
        assertTrue(toTheSummary().endsWith("no findings. 0 new, 0 gone.\n"));
    }

    @Test
    void it_ends_when_it_is_told_to() throws Exception {
        watch();
        toTheSummary();
        watching.interrupt();
        assertEquals(0, exit.get());
        String said = warned.readLine();
        assertTrue(said.contains("Ctrl-C ends it"), said);
    }

    @Test
    void what_cannot_be_watched_ends_with_2() {
        Ran none = Ran.fettle("watch", folder.resolve("none").toString());
        assertEquals(2, none.exit());
        assertTrue(none.err().contains("there is no catalog at"), none.err());
        Ran input = Ran.fettle("watch", folder.toString(), "--builds", "-");
        assertEquals(2, input.exit());
        assertTrue(input.err().contains("standard input is never saved again"), input.err());
    }
}

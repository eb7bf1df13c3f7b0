package fettle.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fettle.view.Shown;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;

/** The packaged program in real pipes. */
class PipeIT {

    private static final Path PROGRAM = Path.of("target/fettle/bin/fettle").toAbsolutePath();

    private record Piped(String out, String err, int exit) {}

    private static Piped shell(String command) throws IOException, InterruptedException {
        Process process = new ProcessBuilder("sh", "-c", command).start();
        process.getOutputStream().close();
        String out = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        String err = new String(process.getErrorStream().readAllBytes(), StandardCharsets.UTF_8);
        boolean ended = process.waitFor(2, TimeUnit.MINUTES);
        return new Piped(out, err, ended ? process.exitValue() : -1);
    }

    @Test
    void a_reader_that_takes_one_line_and_goes_hears_no_complaint() throws Exception {
        assertEquals(new Piped("build\n", "", 0), shell("'" + PROGRAM + "' validate catalog/marrowdyke catalog/marrowdyke/builds | head -n 1 | cut -c3-7"));
    }

    @Test
    void a_reader_that_takes_nothing_hears_no_complaint() throws Exception {
        assertEquals(new Piped("", "", 0), shell("'" + PROGRAM + "' validate catalog/marrowdyke catalog/marrowdyke/builds --format json | true"));
    }

    @Test
    void output_that_could_not_be_written_is_told_and_ends_with_2() throws Exception {
        assertEquals(new Piped("", "fettle: cannot write to standard output: No space left on device\n", 2), shell("'" + PROGRAM + "' rules > /dev/full"));
    }

    @Test
    void a_folder_that_is_gone_is_told_and_ends_with_2() throws Exception {
        // The shell itself may complain too, before the program's first line.
        Piped piped = shell("mkdir -p target/gone && cd target/gone && rmdir ../gone && '" + PROGRAM + "' rules");
        assertEquals(2, piped.exit(), piped.err());
        assertTrue(piped.err().endsWith("fettle: the current folder is gone; change to one that is there.\n"), piped.err());
    }

    @Test
    void names_of_files_are_taken_as_they_are_where_the_locale_knows_only_ascii() throws Exception {
        Piped piped = shell("LC_ALL=C '" + PROGRAM + "' lint 'target/n\u00f6 cat\u00e4log'");
        assertEquals(new Piped("", "fettle lint: there is no catalog at target/n\u00f6 cat\u00e4log; name the directory that holds its documents\n", 2), piped);
    }

    @Test
    void a_build_comes_down_a_pipe_and_the_exit_code_comes_back() throws Exception {
        String tidemill = Shown.FOLDER.resolve("tidemill").toString();
        Piped piped = shell("echo 'build: { id: piped, platform: anvil, parts: {} }' | '" + PROGRAM + "' validate " + tidemill + " - --quiet | grep -c missing-required; exit 0");
        assertEquals(new Piped("1\n", "", 0), piped);
        assertEquals(1, shell("echo 'build: { id: piped, platform: anvil, parts: {} }' | '" + PROGRAM + "' validate " + tidemill + " - > /dev/null").exit());
    }

    @Test
    void an_editor_starts_the_language_server_and_is_answered() throws Exception {
        String greeting = "{\"jsonrpc\":\"2.0\",\"id\":1,\"method\":\"initialize\",\"params\":{\"capabilities\":{}}}";
        String leave = "{\"jsonrpc\":\"2.0\",\"id\":2,\"method\":\"shutdown\"}";
        String exit = "{\"jsonrpc\":\"2.0\",\"method\":\"exit\"}";
        StringBuilder sent = new StringBuilder();
        for (String message : new String[] {greeting, leave, exit}) {
            sent.append("Content-Length: ").append(message.length()).append("\r\n\r\n").append(message);
        }
        Process process = new ProcessBuilder(PROGRAM.toString(), "language-server").start();
        process.getOutputStream().write(sent.toString().getBytes(StandardCharsets.UTF_8));
        process.getOutputStream().flush();
        String out = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        String err = new String(process.getErrorStream().readAllBytes(), StandardCharsets.UTF_8);
        assertEquals(0, process.waitFor(), err);
        assertEquals("", err);
        assertEquals(2, out.split("Content-Length: ", -1).length - 1, out);
        assertEquals(true, out.contains("\"hoverProvider\":true"), out);
    }
}

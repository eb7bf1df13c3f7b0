package fettle.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Every command has help, and what its help shows can be done as it stands. */
class HelpTest {

    /** Examples that are not run here, each for its reason. */
    private static final Set<String> ELSEWHERE = Set.of(
            "watch", // never ends by itself
            "language-server", // waits for an editor
            "start"); // StartTest runs it where it may write

    @TempDir
    private Path folder;

    private static List<String> commands() {
        return Pattern.compile("(?m)^  ([a-z-]+)  +[A-Z]").matcher(Ran.fettle("--help").out()).results().map((MatchResult found) -> found.group(1)).toList();
    }

    private static List<String> examples(String command) {
        String help = Ran.fettle(command, "--help").out();
        assertTrue(help.contains("\nfor example:\n"), help);
        String shown = help.substring(help.indexOf("\nfor example:\n") + "\nfor example:\n".length());
        return shown.replaceAll(" \\\\\n +", " ").lines().map(String::strip).toList();
    }

    @Test
    void every_command_tells_what_it_is_for_with_an_example_that_fits_the_line() {
        List<String> commands = commands();
        assertTrue(commands.size() >= 13, commands.toString());
        for (String command : commands) {
            Ran help = Ran.fettle(command, "--help");
            assertEquals(0, help.exit());
            assertTrue(help.out().startsWith("usage: fettle " + command), help.out());
            assertEquals(List.of(), help.out().lines().filter(line -> line.length() > Options.WIDTH).toList());
            assertTrue(examples(command).stream().anyMatch(example -> example.contains("fettle " + command)), help.out());
        }
    }

    @Test
    void the_examples_on_the_demo_can_be_run() {
        List<String> ran = new ArrayList<>();
        for (String command : commands()) {
            for (String example : examples(command)) {
                // Another revision is there only in a clone with its history.
                if (example.startsWith("fettle ") && !ELSEWHERE.contains(command) && !example.contains("HEAD~1")) {
                    String[] words = example.replace("-o ", "-o " + folder + "/").substring("fettle ".length()).split(" ");
                    Ran one = Ran.fettle(words);
                    assertTrue(one.exit() == ExitCode.FINE || one.exit() == ExitCode.FINDINGS, example + "\n" + one.err());
                    assertEquals("", one.err(), example);
                    ran.add(example);
                }
            }
        }
        assertTrue(ran.size() >= 15, ran.toString());
    }
}

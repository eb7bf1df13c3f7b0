package fettle.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** Both scripts start the program alike. */
class LaunchersTest {

    private static String shell;
    private static String windows;

    static {
        try {
            shell = Files.readString(Path.of("src/launcher/fettle"));
            windows = Files.readString(Path.of("src/launcher/fettle.cmd"));
        } catch (IOException broken) {
            throw new java.io.UncheckedIOException(broken);
        }
    }

    private static Set<String> words(String pattern, String text, String between) {
        return Pattern.compile(pattern).matcher(text).results().flatMap(found -> Pattern.compile(between).splitAsStream(found.group(1)))
                .filter(word -> !word.isBlank()).collect(Collectors.toCollection(TreeSet::new));
    }

    @Test
    void the_same_commands_are_spared_the_slower_compiler() {
        Set<String> spared = words("(?m)^  ([a-z|'-]+)\\) compiler=-XX:TieredStopAtLevel=1", shell, "\\||''");
        assertTrue(spared.contains("lint"), shell);
        assertEquals(spared, words("for %%C in \\(([^)]*)\\)", windows, " "));
        assertTrue(windows.contains("if \"%~1\"==\"\" set \"FETTLE_COMPILER=-XX:TieredStopAtLevel=1\""), windows);
    }

    @Test
    void the_same_flags_are_given() {
        Set<String> flags = words("(-X[^ \"$]*)", shell.substring(shell.indexOf("exec ")), " ");
        assertTrue(flags.size() >= 5, flags.toString());
        assertEquals(flags, words("(-X[^ \"%]*)", windows.substring(windows.indexOf("\"%FETTLE_JAVA%\"")), " "));
    }
}

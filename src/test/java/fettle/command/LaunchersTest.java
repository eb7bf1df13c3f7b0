package fettle.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
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

    /** What each command is given by a script, by its name; that of a call without any is none, and a star stands for the others. */
    private static Map<String, Set<String>> sizes(String text, String names, String variable, String... cases) {
        Map<String, String> values = new TreeMap<>();
        Pattern.compile(names).matcher(text).results().forEach(found -> values.put(found.group(1).toLowerCase(Locale.ROOT), found.group(2)));
        Map<String, Set<String>> sizes = new TreeMap<>();
        for (String each : cases) {
            Pattern.compile(each).matcher(text).results().forEach(found -> {
                String flags = Pattern.compile(variable).matcher(found.group(2)).replaceAll(name -> values.get(name.group(1).toLowerCase(Locale.ROOT)));
                Pattern.compile("[| ]").splitAsStream(found.group(1).replaceFirst("''|^$", "none").replace("SIZES", "*")).forEach(command -> sizes.put(command, Set.of(flags.split(" "))));
            });
        }
        return sizes;
    }

    @Test
    void each_command_is_given_the_same_compiler_and_memory() {
        Map<String, Set<String>> given = sizes(shell, "(?m)^(\\w+)=\"?(-X[^\"\n]*)", "\\$(\\w+)", "(?m)^  ([a-z|'*-]+)\\) sizes=\"?([^\";]*[^\"; ])");
        assertTrue(given.keySet().containsAll(Set.of("lint", "validate", "none", "*")), given.toString());
        assertEquals(given, sizes(windows, "set \"FETTLE_(\\w+)=(-X[^\"]*)\"", "%FETTLE_(\\w+)%", "(?m)^set \"FETTLE_(SIZES)=([^\"]*)\"",
                "(?m)^if \"%~1\"==()\"\" set \"FETTLE_SIZES=([^\"]*)\"", "for %%C in \\(([^)]*)\\) do .* set \"FETTLE_SIZES=([^\"]*)\""));
    }

    @Test
    void the_same_flags_are_given() {
        Set<String> flags = words("(-X[^ \"$]*)", shell.substring(shell.indexOf("flags=")), " ");
        assertTrue(flags.size() >= 5, flags.toString());
        assertEquals(flags, words("(-X[^ \"%]*)", windows.substring(windows.indexOf("FETTLE_FLAGS=")), " "));
        Set<String> collector = words("(?m)^collector=(\\S+)$", shell, " ");
        assertEquals(Set.of("-XX:+UseSerialGC"), collector);
        assertEquals(collector, words("FETTLE_COLLECTOR=([^\"]*)\"", windows, " "));
    }
}

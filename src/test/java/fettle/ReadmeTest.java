package fettle;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fettle.command.Ran;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** What the README shows is what the program says. */
class ReadmeTest {

    private static final Path README = Path.of("README.md");
    private static final Pattern EXAMPLE = Pattern.compile("```console\n\\$ fettle (.*)\n([^`]*(?:`[^`]+`[^`]*)*)```\n");

    /** With {@code -Dfettle.rewrite=true} the README is written anew and the test fails, so that the change is looked at. */
    @Test
    void its_examples_are_what_the_program_says() throws IOException {
        String text = Files.readString(README, StandardCharsets.UTF_8);
        Matcher example = EXAMPLE.matcher(text);
        StringBuilder fresh = new StringBuilder();
        int examples = 0;
        while (example.find()) {
            Ran ran = Ran.fettle(example.group(1).split(" "));
            assertEquals("", ran.err());
            example.appendReplacement(fresh, Matcher.quoteReplacement("```console\n$ fettle " + example.group(1) + "\n" + ran.out() + "```\n"));
            examples++;
        }
        example.appendTail(fresh);
        if (Boolean.getBoolean("fettle.rewrite") && !text.contentEquals(fresh)) {
            Files.writeString(README, fresh, StandardCharsets.UTF_8);
        }
        assertTrue(examples >= 1, "the README has no example");
        assertEquals(fresh.toString(), text);
    }

    @Test
    void it_opens_with_the_job_and_the_caution() throws IOException {
        String top = Files.readString(README, StandardCharsets.UTF_8).lines().limit(14).reduce("", (one, line) -> one + line + "\n");
        assertTrue(top.contains("game data") && top.contains("real equipment"), top);
    }

    @Test
    void it_names_every_command_and_no_other() throws IOException {
        Set<String> named = found("\\| `fettle ([a-z-]+)", Files.readString(README, StandardCharsets.UTF_8));
        Set<String> known = found("(?m)^  ([a-z-]+)  +[A-Z]", Ran.fettle("--help").out());
        assertTrue(known.size() >= 4, "only " + known + " were looked at");
        assertEquals(known, named);
    }

    private static Set<String> found(String pattern, String text) {
        return Pattern.compile(pattern).matcher(text).results().map(match -> match.group(1)).collect(Collectors.toCollection(TreeSet::new));
    }
}

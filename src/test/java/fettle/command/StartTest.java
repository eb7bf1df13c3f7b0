package fettle.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.dataformat.yaml.YAMLMapper;

/** What a new user is given: a catalog to start from, and completion in the shell. */
class StartTest {

    @TempDir
    private Path folder;

    private Path started() {
        Path catalog = folder.resolve("mine");
        Ran ran = Ran.fettle("start", catalog.toString());
        assertEquals(0, ran.exit(), ran.err());
        assertTrue(ran.out().contains("fettle lint " + catalog), ran.out());
        return catalog;
    }

    @Test
    void the_starter_lints_clean_but_for_the_finding_that_it_waives() {
        Ran lint = Ran.fettle("lint", started().toString(), "--fail-on", "note", "--format", "json");
        JsonNode read = new JsonMapper().readTree(lint.out());
        assertEquals("{\"error\":0,\"warning\":0,\"note\":0,\"waived\":1}", read.get("summary").toString(), lint.out());
        assertEquals(0, lint.exit());
    }

    @Test
    void its_build_is_valid() {
        Path catalog = started();
        Ran validate = Ran.fettle("validate", catalog.toString(), catalog.resolve("builds").toString());
        assertEquals(0, validate.exit(), validate.out());
        assertTrue(validate.out().contains("1 build, valid"), validate.out());
    }

    @Test
    void it_shows_every_section_of_the_format() throws IOException {
        Set<String> shown = new TreeSet<>();
        try (Stream<Path> files = Files.list(started())) {
            for (Path file : files.filter(Files::isRegularFile).toList()) {
                new YAMLMapper().readTree(Files.readString(file)).propertyNames().forEach(shown::add);
            }
        }
        Set<String> sections = new TreeSet<>(new JsonMapper().readTree(Files.readString(Path.of("schema/catalog.schema.json"))).get("properties").propertyNames());
        sections.remove("$schema");
        sections.remove("label");
        sections.remove("note");
        assertEquals(sections, shown);
    }

    @Test
    void a_folder_in_use_is_refused() throws IOException {
        Files.writeString(folder.resolve("notes.txt"), "mine");
        Ran ran = Ran.fettle("start", folder.toString());
        assertEquals(2, ran.exit());
        assertTrue(ran.err().contains("is not empty"), ran.err());
        try (Stream<Path> held = Files.list(folder)) {
            assertEquals(1, held.count());
        }
        assertTrue(Ran.fettle("start", folder.resolve("notes.txt").toString()).err().contains("is a file"));
    }

    @Test
    void bash_takes_the_completion_and_offers_commands_and_options() throws IOException, InterruptedException {
        Path script = Files.writeString(folder.resolve("completion.sh"), Ran.fettle("completion").out());
        assertEquals("lint ", offered(script, "fettle lin", 1));
        assertTrue(offered(script, "fettle lint --fo", 2).contains("--format"), offered(script, "fettle lint --fo", 2));
    }

    private static String offered(Path script, String line, int word) throws IOException, InterruptedException {
        String said = "source " + script + "; COMP_WORDS=(" + line + "); COMP_CWORD=" + word + "; COMP_LINE='" + line + "'; COMP_POINT=" + line.length()
                + "; _complete_fettle; printf '%s ' \"${COMPREPLY[@]}\"";
        Process bash = new ProcessBuilder("bash", "-c", said).redirectErrorStream(true).start();
        String out = new String(bash.getInputStream().readAllBytes(), java.nio.charset.StandardCharsets.UTF_8);
        assertEquals(0, bash.waitFor(), out);
        return out;
    }
}

package fettle.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A document is called the same however its folder was named, so that waivers and fingerprints hold wherever the program is run. */
class DocumentNameTest {

    @TempDir
    Path folder;

    private Path catalog;

    @BeforeEach
    void a_catalog_with_a_document_that_breaks_the_schema() throws IOException {
        catalog = Files.createDirectories(folder.resolve("tide"));
        Files.writeString(catalog.resolve("head.yaml"), "catalog: { id: quay, patch: \"1.0\", released: 2031-03-01, currency: crown }\ncurrencies: [{ id: crown, rate: 1 }]\n");
        Files.createDirectories(catalog.resolve("words"));
        Files.writeString(catalog.resolve("words/kinds.yaml"), "kinds: [{ id: grip, label: 3 }]\nplatforms: [{ id: punt, label: 4 }]\n");
        Files.writeString(catalog.resolve("words/broken.yaml"), "kinds: [\n");
    }

    private List<Path> spellings() {
        Path here = Path.of("").toAbsolutePath().relativize(catalog);
        return List.of(catalog, here, Path.of(".").resolve(here), catalog.resolve("words/.."), folder.resolve("tide/../tide"));
    }

    private static List<String> found(String pattern, String text) {
        return Pattern.compile(pattern).matcher(text).results().map(MatchResult::group).toList();
    }

    @Test
    void fingerprints_are_the_same() {
        List<String> prints = found("fettleFinding/v1\" : \"[^\"]*", Ran.fettle("lint", catalog.toString(), "--format", "sarif").out());
        assertTrue(prints.size() >= 3, prints.toString());
        for (Path spelling : spellings()) {
            assertEquals(prints, found("fettleFinding/v1\" : \"[^\"]*", Ran.fettle("lint", spelling.toString(), "--format", "sarif").out()), spelling.toString());
        }
    }

    @Test
    void a_waiver_names_the_path_within_the_catalog() throws IOException {
        Files.delete(catalog.resolve("words/broken.yaml"));
        assertEquals(1, Ran.fettle("lint", catalog.toString()).exit());
        Files.writeString(catalog.resolve("waivers.yaml"), "waivers: [{ rule: schema-mismatch, subject: \"document:words/kinds.yaml\", because: It is a number. }]\n");
        for (Path spelling : spellings()) {
            Ran ran = Ran.fettle("lint", spelling.toString());
            assertEquals(0, ran.exit(), () -> spelling + ": " + ran.out());
        }
    }

    @Test
    void the_place_is_where_people_named_it() {
        String text = Ran.fettle("lint", catalog.resolve("words/..").toString()).out();
        assertTrue(text.contains("     at  " + catalog + "/words/../words/kinds.yaml:1:28\n"), text);
    }

    @Test
    void a_build_is_called_by_its_path_from_the_folder_of_builds_on() throws IOException {
        Path builds = Files.createDirectories(catalog.resolve("builds/spring"));
        Path build = Files.writeString(builds.resolve("first.yaml"), "build: { id: first, platform: punt, parts: {}, label: 3 }\n");
        for (Path named : List.of(catalog.resolve("builds"), builds, build, builds.resolve("../spring"))) {
            String json = Ran.fettle("validate", catalog.toString(), named.toString(), "--format", "json").out();
            assertTrue(json.contains("\"subject\" : \"document:builds/spring/first.yaml\""), () -> named + ": " + json);
        }
        Path loose = Files.copy(build, folder.resolve("first.yaml"));
        for (Path named : List.of(folder, loose)) {
            String json = Ran.fettle("validate", catalog.toString(), named.toString(), "--format", "json").out();
            assertTrue(json.contains("\"subject\" : \"document:first.yaml\""), () -> named + ": " + json);
        }
        String piped = Ran.reading(Files.readString(build), "validate", catalog.toString(), "-", "--format", "json").out();
        assertTrue(piped.contains("\"subject\" : \"document:-\""), piped);
    }

    @Test
    void documents_of_one_file_name_are_told_apart() throws IOException {
        Files.writeString(catalog.resolve("kinds.yaml"), Files.readString(catalog.resolve("words/kinds.yaml")).replace("grip", "lamp").replace("punt", "raft"));
        List<String> subjects = found("\"subject\" : \"document:[^\"]*kinds.yaml", Ran.fettle("lint", catalog.toString(), "--format", "json").out());
        assertEquals(4, subjects.size(), subjects.toString());
        assertNotEquals(subjects.get(0), subjects.get(2));
    }
}

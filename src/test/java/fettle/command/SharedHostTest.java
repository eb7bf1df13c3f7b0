package fettle.command;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.ObjectMapper;

/** What is said of a slot on a part that several platforms carry, and that is not the same on all of them. */
class SharedHostTest {

    private static final Path CASE = Path.of("rules/worth/dominated-part/cases/on-one-platform-of-two/catalog.yaml");

    @TempDir
    private Path folder;

    private List<JsonNode> findings(String rule, String catalog) throws IOException {
        Files.writeString(folder.resolve("catalog.yaml"), catalog);
        List<JsonNode> found = new ArrayList<>();
        new ObjectMapper().readTree(Ran.fettle("lint", folder.toString(), "--format", "json").out()).get("findings").forEach(finding -> {
            if (finding.get("rule").asString().equals(rule)) {
                found.add(finding);
            }
        });
        return found;
    }

    @Test
    void the_platforms_are_told_where_the_part_has_its_use_on_another() throws IOException {
        List<JsonNode> found = findings("dominated-part", Files.readString(CASE));
        assertEquals(1, found.size());
        assertEquals("dull-glass is outdone in arm/eye on torch by clear-glass: +0.5 points grip", found.get(0).get("message").asString());
        assertEquals("[\"arm/eye\"]", found.get(0).get("data").get("places").toString());
        assertEquals("{\"arm/eye\":[\"torch\"]}", found.get(0).get("data").get("witnesses").get(0).get("platforms").toString());
    }

    @Test
    void no_platform_is_told_where_it_is_the_same_on_all() throws IOException {
        String catalog = Files.readString(CASE).replace("needs: [[dull-glass]], ", "");
        List<JsonNode> found = findings("never-worth-using", catalog);
        assertEquals(1, found.size());
        assertEquals("dull-glass is never worth using: in arm/eye, clear-glass outdoes it whatever it costs: +0.5 points grip", found.get(0).get("message").asString());
        assertEquals(false, found.get(0).get("data").get("witnesses").get(0).has("platforms"));
    }
}

package fettle.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import fettle.view.Shown;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.TreeSet;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** SARIF output keeps to the schema that OASIS publishes, taken from a package of the registry. */
class SarifOutputTest {

    private static final String TIDEMILL = Shown.FOLDER.resolve("tidemill").toString();
    private static final String HOSTILE = Shown.FOLDER.resolve("hostile").toString();

    @TempDir
    private Path folder;

    private static Schema oasis() throws IOException {
        try (InputStream schema = SarifOutputTest.class.getResourceAsStream("/schema/sarif-schema-2.1.0.json")) {
            return SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_7).getSchema(new String(schema.readAllBytes(), StandardCharsets.UTF_8), InputFormat.JSON);
        }
    }

    private static String sarif(String... arguments) {
        return Ran.fettle(arguments).out();
    }

    private static List<JsonNode> results(String sarif) {
        JsonNode results = new JsonMapper().readTree(sarif).get("runs").get(0).get("results");
        return StreamSupport.stream(results.spliterator(), false).toList();
    }

    @Test
    void every_output_is_valid() throws IOException {
        Schema oasis = oasis();
        assertNotEquals(List.of(), oasis.validate("{ \"version\": \"2.1.0\" }", InputFormat.JSON), "the schema accepts anything");
        for (String sarif : List.of(
                sarif("lint", Shown.FOLDER.resolve("plain").toString(), "--format", "sarif"),
                sarif("lint", HOSTILE, "--format", "sarif"),
                sarif("validate", TIDEMILL, TIDEMILL + "/builds", "--format", "sarif"),
                sarif("compare", "catalog/marrowdyke", "catalog/marrowdyke-next", "--builds", "catalog/marrowdyke-next/builds", "--format", "sarif"))) {
            assertTrue(sarif.endsWith("}\n"), sarif);
            assertEquals(List.of(), oasis.validate(sarif, InputFormat.JSON));
        }
    }

    @Test
    void a_result_tells_its_rule_its_place_and_the_facts_behind_it() {
        String sarif = sarif("validate", TIDEMILL, TIDEMILL + "/builds", "--format", "sarif");
        JsonNode rules = new JsonMapper().readTree(sarif).get("runs").get(0).get("tool").get("driver").get("rules");
        List<JsonNode> results = results(sarif);
        assertTrue(results.size() >= 9, "only " + results.size() + " results were looked at");
        for (JsonNode result : results) {
            assertEquals(result.get("ruleId"), rules.get(result.get("ruleIndex").asInt()).get("id"));
            assertTrue(rules.get(result.get("ruleIndex").asInt()).get("help").get("markdown").asString().startsWith("# " + result.get("ruleId").asString()));
        }
        JsonNode clash = results.stream().filter(result -> result.get("ruleId").asString().equals("zone-clash")).findFirst().orElseThrow();
        JsonNode place = clash.get("locations").get(0);
        assertEquals(TIDEMILL.replace('\\', '/') + "/builds/wrong.yaml", place.get("physicalLocation").get("artifactLocation").get("uri").asString());
        assertEquals(9, place.get("physicalLocation").get("region").get("startLine").asInt());
        assertEquals("build:crowded", place.get("logicalLocations").get(0).get("fullyQualifiedName").asString());
        assertEquals("riser takes the zone over-rail", clash.get("relatedLocations").get(0).get("message").get("text").asString());
        assertTrue(clash.get("message").get("text").asString().startsWith("riser at rail:0 and leaf at rail:1 both take over-rail\n"));
    }

    @Test
    void a_waived_finding_is_suppressed_with_its_reason() throws IOException {
        Files.copy(Path.of(HOSTILE, "catalog.json"), folder.resolve("catalog.json"));
        Files.writeString(folder.resolve("waivers.json"), "{ \"waivers\": [{ \"rule\": \"duplicate-id\", \"subject\": \"part:knob\", \"because\": \"We like both.\" }] }");
        String sarif = sarif("lint", folder.toString(), "--format", "sarif");
        assertEquals(List.of(), oasis().validate(sarif, InputFormat.JSON));
        List<String> reasons = results(sarif).stream().filter(result -> result.get("ruleId").asString().equals("duplicate-id"))
                .map(result -> result.get("suppressions").get(0).get("justification").asString()).toList();
        assertEquals(List.of("We like both."), reasons);
    }

    @Test
    void fingerprints_survive_moved_lines_and_tell_findings_apart() throws IOException {
        String text = Files.readString(Path.of(TIDEMILL, "builds/wrong.yaml"));
        Path moved = folder.resolve("wrong.yaml");
        Files.writeString(moved, "# one line more\n\n" + text);
        List<String> before = fingerprints(TIDEMILL + "/builds/wrong.yaml");
        assertEquals(before, fingerprints(moved.toString()));
        assertEquals(before.size(), new TreeSet<>(before).size());
        Files.writeString(moved, text.replace("part: riser, at: 4", "part: riser, at: 3"));
        assertNotEquals(before, fingerprints(moved.toString()));
    }

    private static List<String> fingerprints(String builds) {
        return results(sarif("validate", TIDEMILL, builds, "--format", "sarif")).stream()
                .map(result -> result.get("partialFingerprints").get("fettleFinding/v1").asString())
                .sorted().toList();
    }
}

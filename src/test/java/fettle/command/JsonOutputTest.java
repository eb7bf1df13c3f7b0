package fettle.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fettle.view.Shown;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.TreeSet;
import java.util.stream.Stream;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;
import tools.jackson.dataformat.yaml.YAMLMapper;

/** JSON output has the keys and the order that other programs are promised, and the same bytes for the same input. */
class JsonOutputTest {

    private static final String TIDEMILL = Shown.FOLDER.resolve("tidemill").toString();
    private static final String HOSTILE = Shown.FOLDER.resolve("hostile").toString();
    private static final JsonMapper JSON = new JsonMapper();

    @TempDir
    private Path folder;

    private static JsonNode json(String... arguments) {
        List<String> all = new ArrayList<>(List.of(arguments));
        all.addAll(List.of("--format", "json"));
        return JSON.readTree(Ran.fettle(all.toArray(String[]::new)).out());
    }

    private static List<String> keys(JsonNode object) {
        return List.copyOf(object.propertyNames());
    }

    private static List<JsonNode> items(JsonNode array) {
        return StreamSupport.stream(array.spliterator(), false).toList();
    }

    @Test
    void every_command_opens_with_the_same_keys_in_the_same_order() {
        List<String> common = List.of("fettle", "command", "catalog", "findings", "summary");
        JsonNode lint = json("lint", HOSTILE);
        assertEquals(common, keys(lint));
        assertEquals("lint", lint.get("command").asString());
        assertEquals(common, keys(json("explain", HOSTILE, "knob")).subList(0, 5));
        assertEquals(List.of("fettle", "command", "catalog", "findings", "summary", "builds"), keys(json("validate", TIDEMILL, TIDEMILL + "/builds")));
        assertEquals(List.of("id", "patch"), keys(lint.get("catalog")));
        assertEquals("hostile", lint.get("catalog").get("id").asString());
        assertEquals(List.of("error", "warning", "note", "waived"), keys(lint.get("summary")));
        assertEquals(lint.get("findings").size(), items(lint.get("summary")).stream().mapToInt(JsonNode::asInt).sum());
    }

    @Test
    void every_finding_has_its_keys_in_order() {
        JsonNode findings = json("validate", TIDEMILL, TIDEMILL + "/builds").get("findings");
        assertTrue(findings.size() >= 9, "only " + findings.size() + " findings were looked at");
        for (JsonNode finding : findings) {
            assertEquals(List.of("rule", "severity", "subject", "message", "where", "because", "remedies", "data"), keys(finding));
            assertFalse(finding.get("message").asString().contains("{"), finding.toString());
            for (JsonNode place : finding.get("where")) {
                assertEquals(List.of("file", "line", "column", "pointer"), keys(place));
                assertTrue(place.get("line").isInt() && place.get("column").isInt(), place.toString());
            }
            for (JsonNode reason : finding.get("because")) {
                assertEquals("fact", keys(reason).get(0));
                assertTrue(List.of(List.of("fact"), List.of("fact", "where")).contains(keys(reason)), reason.toString());
            }
            assertEquals(List.copyOf(new TreeSet<>(keys(finding.get("data")))), keys(finding.get("data")));
        }
    }

    @Test
    void a_waived_finding_carries_the_reason_of_its_waiver() throws IOException {
        Files.copy(Path.of(HOSTILE, "catalog.json"), folder.resolve("catalog.json"));
        Files.writeString(folder.resolve("waivers.yaml"), "waivers: [{ rule: duplicate-id, subject: \"part:knob\", because: Two knobs, and we like both. }]\n".replace(
                "Two knobs, and we like both.", "\"Two knobs, and we like both.\""));
        JsonNode lint = json("lint", folder.toString());
        List<JsonNode> waived = items(lint.get("findings")).stream().filter(finding -> finding.has("waived")).toList();
        assertEquals(1, waived.size(), lint.toString());
        assertEquals("waived", keys(waived.get(0)).get(8));
        assertEquals("Two knobs, and we like both.", waived.get(0).get("waived").asString());
        assertEquals(1, lint.get("summary").get("waived").asInt());
        assertEquals(0, lint.get("summary").get("error").asInt());
        assertEquals(0, Ran.fettle("lint", folder.toString()).exit());
        assertTrue(Ran.fettle("lint", folder.toString()).out().contains(" waived  duplicate-id of part:knob: Two knobs, and we like both."), Ran.fettle("lint", folder.toString()).out());
    }

    @Test
    void text_tells_below_a_build_what_is_waived_of_it_and_why() throws IOException {
        Path tidemill = folder.resolve("tidemill");
        try (Stream<Path> files = Files.walk(Path.of(TIDEMILL))) {
            for (Path file : files.filter(Files::isRegularFile).toList()) {
                Path copy = tidemill.resolve(Path.of(TIDEMILL).relativize(file).toString());
                Files.createDirectories(copy.getParent());
                Files.copy(file, copy);
            }
        }
        Files.writeString(tidemill.resolve("waivers.yaml"), "waivers: [{ rule: better-part, subject: \"build:sound\", because: It is there for its looks. }]\n");
        String told = " waived  better-part of build:sound: It is there for its looks.\n";
        Ran ran = Ran.fettle("validate", tidemill.toString(), tidemill.resolve("builds/sound.yaml").toString());
        assertTrue(ran.out().contains("\n\n" + told), ran.out());
        assertTrue(!ran.out().contains("(better-part)"), ran.out());
        assertTrue(!Ran.fettle("validate", tidemill.toString(), tidemill.resolve("builds").toString(), "--quiet").out().contains(told));
    }

    @Test
    void a_build_has_its_keys_in_order_and_figures_as_strings() {
        JsonNode all = json("validate", TIDEMILL, TIDEMILL + "/builds");
        JsonNode sound = items(all.get("builds")).stream().filter(build -> build.get("id").asString().equals("sound")).findFirst().orElseThrow();
        assertEquals(List.of("id", "file", "platform", "valid", "totals", "cost", "limits", "findings"), keys(sound));
        assertEquals(JSON.readTree("""
                {"grip": "34.5", "kick": "102.5", "length": "60", "mass": "2.2"}"""), sound.get("totals"));
        assertEquals("186", sound.get("cost").asString());
        assertTrue(sound.get("valid").asBoolean());
        // The coat takes a tenth of the grip, 31.05; on the line from (10, 1.5) to (40, 4) that allows 1.5 + 21.05 / 12 = 3.2541(6) kg.
        assertEquals(JSON.readTree("""
                [{"id": "arm", "value": "2.2", "threshold": "781/240", "margin": "253/240", "holds": true},
                 {"id": "case", "value": "60", "threshold": "90", "margin": "30", "holds": true}]"""), sound.get("limits"));
    }

    @Test
    void a_build_names_its_findings_by_their_places_in_the_list() {
        JsonNode all = json("validate", TIDEMILL, TIDEMILL + "/builds");
        int seen = 0;
        for (JsonNode build : all.get("builds")) {
            for (JsonNode place : build.get("findings")) {
                assertEquals("build:" + build.get("id").asString(), all.get("findings").get(place.asInt()).get("subject").asString());
                seen++;
            }
        }
        assertEquals(all.get("findings").size(), seen);
    }

    @Test
    void what_cannot_be_resolved_is_not_valid_and_has_no_cost() {
        JsonNode all = json("validate", TIDEMILL, TIDEMILL + "/builds");
        for (JsonNode build : all.get("builds")) {
            if (build.get("id").asString().equals("elsewhere")) {
                assertFalse(build.get("valid").asBoolean());
                assertTrue(build.get("cost").isNull());
                assertTrue(build.get("totals").isEmpty());
            } else if (build.get("id").asString().equals("bare")) {
                assertEquals("1.25", build.get("totals").get("mass").asString());
            }
        }
    }

    @Test
    void equal_input_gives_equal_bytes() {
        String[] validate = {"validate", TIDEMILL, TIDEMILL + "/builds", "--format", "json"};
        assertEquals(Ran.fettle(validate), Ran.fettle(validate));
        String[] turned = {"validate", TIDEMILL, TIDEMILL + "/builds/wrong.yaml", TIDEMILL + "/builds/sound.yaml", "--format", "json"};
        assertEquals(Ran.fettle(validate), Ran.fettle(turned));
        assertTrue(Ran.fettle(validate).out().endsWith("}\n"));
        assertFalse(Ran.fettle(validate).out().contains("\r"));
    }

    @Test
    void the_order_of_files_and_entries_changes_nothing_but_places() throws IOException {
        ObjectNode whole = JSON.createObjectNode();
        for (String file : List.of("catalog.yaml", "parts.yaml")) {
            new YAMLMapper().readTree(Path.of(TIDEMILL, file)).properties().forEach(section -> whole.set(section.getKey(), section.getValue()));
        }
        String expected = placeless(write(whole, "whole", new Random(0), false));
        assertTrue(expected.length() > 2000, expected);
        for (int seed = 1; seed <= 8; seed++) {
            assertEquals(expected, placeless(write(whole, "shuffled" + seed, new Random(seed), true)), "seed " + seed);
        }
    }

    /** Writes the catalog, its entries shuffled and dealt out to files, and the builds as they are; returns where. */
    private Path write(ObjectNode whole, String name, Random random, boolean shuffled) throws IOException {
        Path directory = Files.createDirectories(folder.resolve(name));
        List<ObjectNode> files = new ArrayList<>();
        for (int i = 0; i < (shuffled ? 4 : 1); i++) {
            files.add(JSON.createObjectNode());
        }
        whole.properties().forEach(section -> {
            if (section.getValue() instanceof ArrayNode entries) {
                List<JsonNode> order = new ArrayList<>(items(entries));
                if (shuffled) {
                    Collections.shuffle(order, random);
                }
                order.forEach(entry -> files.get(random.nextInt(files.size())).withArray("/" + section.getKey()).add(entry));
            } else {
                files.get(random.nextInt(files.size())).set(section.getKey(), section.getValue());
            }
        });
        for (int i = 0; i < files.size(); i++) {
            Files.writeString(directory.resolve((char) ('a' + i) + ".json"), JSON.writeValueAsString(files.get(i)));
        }
        return directory;
    }

    /** All that is said of the catalog and the builds, without the places; findings in an order that does not follow from places. */
    private static String placeless(Path catalog) {
        JsonNode all = json("validate", catalog.toString(), TIDEMILL + "/builds");
        List<String> findings = new ArrayList<>();
        for (JsonNode found : List.of(all.get("findings"), json("lint", catalog.toString()).get("findings"))) {
            for (JsonNode finding : found) {
                ((ObjectNode) finding).remove("where");
                finding.get("because").forEach(reason -> ((ObjectNode) reason).remove("where"));
                findings.add(finding.toString());
            }
        }
        all.get("builds").forEach(build -> ((ObjectNode) build).remove("findings"));
        return String.join("\n", new TreeSet<>(findings)) + "\n" + all.get("builds");
    }
}

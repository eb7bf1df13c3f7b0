package fettle.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** Swaps that lose nothing only as long as another part stays where it is. */
class MainstayTest {

    private static final String CATALOG = """
            catalog: { id: quay, patch: "1", released: 2031-03-01, currency: crown }
            currencies: [{ id: crown, rate: 1 }]
            attributes:
              - { id: glow, unit: lm, better: higher, combine: max, decimals: 0, shown: 0 }
              - { id: grip, unit: points, better: higher, combine: sum, decimals: 0, shown: 0 }
            kinds: [{ id: thing }]
            mounts: [{ id: peg }]
            platforms: [{ id: heron, stats: { grip: 10 }, slots: [{ id: left, mounts: [peg] }, { id: right, mounts: [peg], required: true }] }]
            parts:
              - { id: lamp, kind: thing, mounts: [peg], stats: { glow: 17 } }
              - { id: knob, kind: thing, mounts: [peg], stats: { glow: 3, grip: 4 } }
            vendors: [{ id: harbour, tiers: 0 }]
            offers: [{ part: lamp, vendor: harbour, price: 5 }, { part: knob, vendor: harbour, price: 5 }]
            lenses: [{ id: hold, weights: { grip: 5, glow: 1 } }]
            """;

    @TempDir
    private Path folder;

    @BeforeEach
    void write() throws IOException {
        Files.writeString(Files.createDirectory(folder.resolve("quay")).resolve("catalog.yaml"), CATALOG);
    }

    private String said(String command, String left, String right, String... more) throws IOException {
        Path file = Files.writeString(folder.resolve("b.yaml"),
                "build: { id: b, platform: heron, patch: \"1\", lens: hold, parts: { left: " + left + ", right: " + right + " } }\n");
        List<String> words = new ArrayList<>(List.of(command, folder.resolve("quay").toString(), file.toString()));
        words.addAll(List.of(more));
        return Ran.fettle(words.toArray(String[]::new)).out();
    }

    private JsonNode json(String command, String left, String right, String... more) throws IOException {
        List<String> words = new ArrayList<>(List.of("--format", "json"));
        words.addAll(List.of(more));
        return JsonMapper.shared().readTree(said(command, left, right, words.toArray(String[]::new)));
    }

    /** What is held at a place, of the swaps that put a knob there. */
    private static String held(JsonNode swaps, String path) {
        for (JsonNode swap : swaps) {
            if (swap.get("path").asString().equals(path) && swap.get("to").toString().equals("{\"\":\"knob\"}")) {
                return swap.get("held").toString();
            }
        }
        throw new AssertionError("no such swap in " + swaps);
    }

    @Test
    void advice_names_the_part_that_keeps_a_total_as_data_too() throws IOException {
        JsonNode findings = json("validate", "lamp", "lamp").get("findings");
        assertEquals(2, findings.size());
        for (JsonNode finding : findings) {
            String path = finding.get("data").get("path").asString();
            String other = path.equals("left") ? "right" : "left";
            assertEquals("better-part", finding.get("rule").asString());
            assertEquals("{\"glow\":{\"parts\":{\"" + other + "\":\"lamp\"},\"total\":\"17\"}}", finding.get("data").get("held").toString());
            assertTrue(finding.get("message").asString().contains("nothing worse as long as lamp at " + other + " keeps glow at 17,"), finding.toString());
        }
    }

    @Test
    void nothing_is_said_to_keep_what_the_swap_itself_makes_of_it() throws IOException {
        assertEquals("{}", held(json("improve", "lamp", "knob").get("swaps"), "left"));
        assertTrue(said("improve", "lamp", "knob").contains("-14 glow\n"), said("improve", "lamp", "knob"));
    }

    @Test
    void a_list_of_swaps_tells_it_of_the_build_and_of_what_steps_make_of_it() throws IOException {
        String text = said("improve", "lamp", "lamp");
        assertTrue(text.contains("+4 grip, as long as lamp at right keeps glow at 17"), text);
        JsonNode improved = json("improve", "lamp", "lamp", "--steps", "2");
        assertEquals("{\"glow\":{\"parts\":{\"left\":\"lamp\"},\"total\":\"17\"}}", held(improved.get("swaps"), "right"));
        JsonNode steps = improved.get("steps");
        assertEquals(2, steps.size());
        assertTrue(steps.get(0).get("held").has("glow"), steps.toString());
        assertEquals("{}", steps.get(1).get("held").toString());
    }
}

package fettle.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** What the ladder command writes, against a published table and a case worked by hand. */
class LadderTest {

    private static final String PUBLISHED = "src/test/resources/fettle/ladder/published";
    private static final String EXTENDED = "src/test/resources/fettle/ladder/extended";

    private static Ran ladder(String catalog, String platform, String slot, String lens, String... more) {
        List<String> arguments = new ArrayList<>(List.of("ladder", catalog, "--platform", platform, "--slot", slot, "--lens", lens));
        arguments.addAll(List.of(more));
        return Ran.fettle(arguments.toArray(String[]::new));
    }

    private static JsonNode json(Ran ran) {
        assertEquals("", ran.err());
        assertEquals(0, ran.exit());
        return JsonMapper.shared().readTree(ran.out()).get("ladder");
    }

    private static List<String> rungs(JsonNode group) {
        return StreamSupport.stream(group.get("rungs").spliterator(), false)
                .map(rung -> rung.get("parts") + " " + rung.get("cost").asString() + " " + rung.get("benefit").asString() + " " + rung.get("step") + (rung.has("alike") ? " " + rung.get("alike") : ""))
                .collect(Collectors.toList());
    }

    /**
     * Paltiel et al., Expanded HIV screening in the United States, Annals of Internal Medicine 145 (2006) 797–806, Table 4, high-risk population,
     * patient-level benefit; as restated in the DAMPACK package's introduction to cost-effectiveness analysis.
     */
    @Test
    void a_published_cost_effectiveness_table_comes_out() {
        JsonNode ladder = json(ladder(PUBLISHED, "people", "people/screening", "life", "--format", "json"));
        assertEquals(List.of("platform", "host", "slot", "lens", "groups", "standing", "leftOut"), List.copyOf(ladder.propertyNames()));
        assertEquals(1, ladder.get("groups").size());
        // 1000/0.32 = 3125, 1020/0.21 = 34000/7, 420/0.05 = 8400
        assertEquals(
                List.of("{\"\":\"status-quo\"} 26000 277.25 null", "{\"\":\"one-time\"} 27000 277.57 \"3125\"",
                        "{\"\":\"every-5-years\"} 28020 277.78 \"34000/7\"", "{\"\":\"every-3-years\"} 28440 277.83 \"8400\""),
                rungs(ladder.get("groups").get(0)));
        assertEquals(
                "{\"annual\":\"dominated\",\"every-3-years\":\"rung\",\"every-5-years\":\"rung\",\"one-time\":\"rung\",\"status-quo\":\"rung\"}",
                ladder.get("standing").toString());
    }

    /**
     * Benefits are hold − 2 × weight. No role: nothing (0, 0), cork (10, 3), rope (20, 4), horn (31, 10), brass (40, 9). Horn costs less and brings
     * more than brass. From nothing to horn the line rises 10/31 a shell, so at 10 it is at 100/31 > 3 and at 20 at 200/31 > 4: cork and rope lie
     * below it. Sight: bead (6, −0.5) is alone.
     */
    @Test
    void what_a_mix_of_its_neighbours_beats_lies_between() {
        JsonNode ladder = json(ladder(EXTENDED, "oar", "oar/grip", "steady", "--format", "json"));
        assertEquals(List.of("{} 0 0 null", "{\"\":\"horn\"} 31 10 \"3.1\""), rungs(ladder.get("groups").get(0)));
        assertEquals("[\"sight\"]", ladder.get("groups").get(1).get("roles").toString());
        assertEquals(List.of("{\"\":\"bead\"} 6 -0.5 null"), rungs(ladder.get("groups").get(1)));
        assertEquals(
                "{\"bead\":\"rung\",\"brass\":\"dominated\",\"cork\":\"between\",\"horn\":\"rung\",\"rope\":\"between\"}", ladder.get("standing").toString());
    }

    /** Without horn the line from nothing to brass rises 9/40: at 10 it is at 2.25 < 3, so cork is a rung; from cork to brass 6/30, at 20 it is at 5 > 4. */
    @Test
    void what_can_not_be_bought_takes_no_part() {
        JsonNode ladder = json(ladder(EXTENDED, "oar", "oar/grip", "steady", "--access", "new", "--format", "json"));
        assertEquals(
                List.of("{} 0 0 null", "{\"\":\"cork\"} 10 3 \"10/3\"", "{\"\":\"brass\"} 40 9 \"5\""), rungs(ladder.get("groups").get(0)));
        assertEquals("{\"bead\":\"rung\",\"brass\":\"rung\",\"cork\":\"rung\",\"rope\":\"between\"}", ladder.get("standing").toString());
    }

    @Test
    void the_table_shows_the_waste_in_the_middle() {
        assertEquals("""
                   slot  oar/grip on oar for steady "Steady hand"

                 serves  no role
                         standing   cost, shell  benefit  step price  assembly
                         rung                 0        0              nothing
                         between             10        3              cork
                         between             20        4              rope
                         rung                31       10         3.1  horn
                         dominated           40        9              brass

                 serves  sight
                         standing  cost, shell  benefit  step price  assembly
                         rung                6     -0.5              bead

                 in all  of 5 parts 2 are rungs, 2 lie between rungs and 1 is dominated

                This concerns game data only, and says nothing about real equipment.
                """, ladder(EXTENDED, "oar", "oar/grip", "steady").out());
    }

    /**
     * Arch (10, 1) and bow (10, 1), which both carry gem for 5 more and 3 points: from (10, 1) to (15, 4) a point costs 5/3. Bow weighs less, which the lens doesn't count.
     */
    @Test
    void what_comes_to_the_same_shares_a_rung() {
        String two = "src/test/resources/fettle/ladder/two-alike";
        assertEquals(
                List.of("{\"\":\"arch\"} 10 1 null [{\"\":\"bow\"}]", "{\"\":\"arch\",\"eye\":\"gem\"} 15 4 \"5/3\" [{\"\":\"bow\",\"eye\":\"gem\"}]"),
                rungs(json(ladder(two, "lamp", "lamp/top", "bright", "--format", "json")).get("groups").get(0)));
        String text = ladder(two, "lamp", "lamp/top", "bright").out();
        assertTrue(text.contains("arch; or bow\n") && text.contains("arch with gem; or bow with gem\n"), text);
    }

    @Test
    void wrong_names_are_answered_with_the_nearest() {
        assertEquals("fettle ladder: oar has no slot gripp; did you mean grip? Its slots are grip\n", ladder(EXTENDED, "oar", "oar/gripp", "steady").err());
        assertEquals("fettle ladder: the catalog has no part or platform hron; did you mean horn?\n", ladder(EXTENDED, "oar", "hron/grip", "steady").err());
        assertEquals("fettle ladder: the catalog has no lens stedy; did you mean steady?\n", ladder(EXTENDED, "oar", "oar/grip", "stedy").err());
        assertEquals("fettle ladder: 'grip' names no slot; write the host's id, a slash, and the slot's id, as in oar/grip\n", ladder(EXTENDED, "oar", "grip", "steady").err());
        assertEquals("fettle ladder: 'blade' names no slot; write the host's id, a slash, and the slot's id\n", ladder(EXTENDED, "oar", "blade", "steady").err());
        Ran missing = Ran.fettle("ladder", EXTENDED, "--platform", "oar");
        assertEquals(2, missing.exit());
        assertTrue(missing.err().contains("--slot"), missing.err());
    }

    @Test
    void a_slot_that_is_not_on_the_platform_has_no_ladder_there() {
        Ran elsewhere = ladder("catalog/marrowdyke", "gannet", "wader/hand", "quick");
        assertEquals("fettle ladder: wader/hand is no slot on gannet: wader is another platform\n", elsewhere.err());
        assertEquals(ExitCode.NOT_CHECKED, elsewhere.exit());
    }

    @Test
    void weights_that_do_not_add_up_from_part_to_part_are_told(@TempDir Path folder) throws IOException {
        String whole = Files.readString(Path.of(EXTENDED, "catalog.yaml"));
        String product = whole.replace("- { id: hold, unit: points, better: higher, combine: sum", "- { id: hold, unit: points, better: higher, combine: product");
        assertFalse(product.equals(whole));
        Files.writeString(folder.resolve("catalog.yaml"), product.replace("slots: [{ id: grip", "stats: { hold: 10 }, slots: [{ id: grip"));
        String text = ladder(folder.toString(), "oar", "oar/grip", "steady").out().replaceAll("\\s+", " ");
        assertTrue(text.contains(" without the weight of hold (product): a ladder counts what adds up from part to part, sums and percents; improve weighs all serves"), text);
        JsonNode ladder = json(ladder(folder.toString(), "oar", "oar/grip", "steady", "--format", "json"));
        assertEquals("[{\"attribute\":\"hold\",\"combine\":\"product\"}]", ladder.get("leftOut").toString());
        assertEquals("[]", json(ladder(EXTENDED, "oar", "oar/grip", "steady", "--format", "json")).get("leftOut").toString());
    }
}

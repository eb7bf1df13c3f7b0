package fettle.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is said of builds where the catalog itself states something wrong that bears on them. */
class MisstatedCatalogTest {

    private static final String CATALOG = """
            catalog: { id: quay, patch: "1", released: 2031-03-01, currency: crown }
            currencies: [{ id: crown, rate: 1 }]
            attributes:
              - { id: kick, unit: points, better: lower, combine: sum, decimals: 1, shown: 1, material: 1 }
              - { id: reach, better: higher, combine: percent, decimals: 1, shown: 1, material: 1 }
              - { id: heat, better: lower, combine: max, decimals: 1, shown: 1, material: 1 }
            kinds: [{ id: brake }, { id: charm }]
            platforms:
              - id: carbine
                stats: { kick: 80, reach: 10 }
                slots: [{ id: muzzle, accepts: ["kind:brake"] }, { id: ring, accepts: ["kind:charm"] }]
            parts:
              - { id: jaw, kind: brake, stats: { kick: -20, reach: 5 } }
              - { id: maw, kind: brake, stats: { kick: -30, reach: 5 } }
              - { id: medal, kind: charm }
            vendors: [{ id: harbour, tiers: 2 }]
            access: [{ id: newcomer, vendors: { harbour: 1 } }]
            offers:
              - { part: jaw, vendor: harbour, tier: 1, price: 50 }
              - { part: maw, vendor: harbour, tier: 1, price: 40 }
            limits:
              - { id: steady, attribute: kick, atMost: { by: reach, points: [[0, 70], [20, 75]] }, severity: error }
              - { id: cool, attribute: heat, atMost: 5, severity: error }
            lenses: [{ id: calm, weights: { kick: 1 } }]
            """;

    @TempDir
    private Path folder;

    private Ran validated(String catalog, String parts, String... more) throws IOException {
        Files.writeString(Files.createDirectories(folder.resolve("quay")).resolve("catalog.yaml"), catalog);
        Path build = Files.writeString(folder.resolve("b.yaml"), "build: { id: b, platform: carbine, patch: \"1\", access: newcomer, lens: calm, parts: " + parts + " }\n");
        List<String> words = new ArrayList<>(List.of("validate", folder.resolve("quay").toString(), build.toString()));
        words.addAll(List.of(more));
        return Ran.fettle(words.toArray(String[]::new));
    }

    private List<String> drawn(String old, String now, String parts) throws IOException {
        String changed = CATALOG.replace(old, now);
        assertFalse(changed.equals(CATALOG) && !old.equals(now), old);
        String json = validated(changed, parts, "--format", "json").out();
        return Pattern.compile("\"rule\" : \"([^\"]*)\"").matcher(json).results().map(found -> found.group(1)).sorted().toList();
    }

    @Test
    void a_sound_catalog_draws_nothing_beside_what_is_in_the_build() throws IOException {
        assertEquals(List.of("better-part"), drawn("", "", "{ muzzle: jaw }"));
        assertEquals(List.of("unobtainable-part"), drawn("", "", "{ muzzle: maw, ring: medal }"));
    }

    @Test
    void a_limit_on_what_is_not_there_is_told_and_held_by_nothing() throws IOException {
        for (String[] slip : new String[][] {{"attribute: kick, atMost", "attribute: kik, atMost"}, {"by: reach", "by: reech"}}) {
            assertEquals(List.of("unknown-reference"), drawn(slip[0], slip[1], "{ muzzle: jaw }"));
            Ran text = validated(CATALOG.replace(slip[0], slip[1]), "{ muzzle: jaw }");
            assertTrue(text.out().lines().anyMatch(line -> line.contains("steady") && line.endsWith("  can't be told")), text.out());
            assertTrue(text.out().lines().anyMatch(line -> line.contains("cool") && line.endsWith("  holds")), text.out());
            assertEquals(1, text.exit());
            String json = validated(CATALOG.replace(slip[0], slip[1]), "{ muzzle: jaw }", "--format", "json").out();
            assertTrue(json.contains("\"holds\" : null") && json.contains("\"holds\" : true"), json);
        }
    }

    @Test
    void nothing_is_advised_that_rests_on_a_figure_of_nothing_or_on_no_base() throws IOException {
        assertEquals(List.of("unknown-reference"), drawn("stats: { kick: -20, reach", "stats: { kick: -20, reech", "{ muzzle: jaw }"));
        assertEquals(List.of("unknown-reference"), drawn("weights: { kick: 1 }", "weights: { kick: 1, rech: 1 }", "{ muzzle: jaw }"));
        assertEquals(List.of("missing-base"), drawn("{ kick: 80, reach: 10 }", "{ kick: 80 }", "{ muzzle: jaw }"));
    }

    @Test
    void what_cannot_be_priced_is_not_said_to_be_sold_nowhere() throws IOException {
        String head = "catalog: { id: quay, patch: \"1\", released: 2031-03-01, currency: crown }\n";
        assertEquals(List.of("no-catalog-head"), drawn(head, "", "{ muzzle: maw }"));
        assertEquals(List.of("unknown-reference"), drawn("currency: crown", "currency: crowm", "{ muzzle: maw }"));
        assertEquals(List.of("unknown-reference"), drawn("{ part: maw, vendor: harbour", "{ part: maw, vendor: harbor", "{ muzzle: maw }"));
        Ran text = validated(CATALOG.replace(head, ""), "{ muzzle: maw }");
        assertTrue(text.out().contains("cost  not known, since the catalog doesn't say what the price of maw is worth\n"), text.out());
    }

    @Test
    void an_error_in_what_no_build_names_is_left_to_those_who_look_at_the_catalog() throws IOException {
        assertEquals(List.of(), drawn("stats: { kick: -20, reach", "stats: { kick: -20, reech", "{ muzzle: maw }"));
        assertEquals(List.of(), drawn("{ part: jaw, vendor: harbour", "{ part: jaw, vendor: harbor", "{ muzzle: maw }"));
    }

    @Test
    void other_answers_from_such_a_catalog_say_beside_them_that_they_may_be_wrong() throws IOException {
        String quay = folder.resolve("quay").toString();
        for (String asked : List.of("survey " + quay, "explain " + quay + " jaw", "explain " + quay + " jaw medal", "ladder " + quay + " --platform carbine --slot carbine/muzzle --lens calm")) {
            Files.writeString(Files.createDirectories(folder.resolve("quay")).resolve("catalog.yaml"), CATALOG);
            Ran sound = Ran.fettle(asked.split(" "));
            assertEquals("", sound.err(), asked);
            Files.writeString(folder.resolve("quay/catalog.yaml"), CATALOG.replace("attribute: kick, atMost", "attribute: kik, atMost"));
            Ran slip = Ran.fettle(asked.split(" "));
            assertEquals("fettle: the catalog has 1 error by which this may be wrong; see fettle lint " + quay + "\n", slip.err(), asked);
            assertEquals(sound.exit(), slip.exit(), asked);
        }
    }
}

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

/** Whatever is asked of a catalog of which a figure could not be read, the answer begins with that. */
class HalfReadCatalogTest {

    private static final String BUILD = "src/test/resources/fettle/improve/builds/first.yaml";

    @TempDir
    Path catalog;

    @BeforeEach
    void write() throws IOException {
        String whole = Files.readString(Path.of("src/test/resources/fettle/improve/catalog.yaml"));
        String broken = whole.replace("grip: 4", "grip: none");
        assertTrue(!broken.equals(whole));
        Files.writeString(catalog.resolve("catalog.yaml"), broken);
    }

    @Test
    void each_command_that_answers_from_it_says_so_and_fails() {
        for (List<String> asked : List.of(
                List.of("survey"), List.of("explain", "good-grip"), List.of("explain", "good-grip", "cork"), List.of("improve", BUILD), List.of("validate", BUILD))) {
            List<String> words = new ArrayList<>(asked);
            words.add(1, catalog.toString());
            Ran ran = Ran.fettle(words.toArray(String[]::new));
            assertTrue(ran.out().contains("(schema-mismatch)"), () -> asked + ": " + ran.out());
            assertEquals(1, ran.exit(), asked.toString());
        }
    }

    @Test
    void what_seems_not_to_be_there_may_stand_where_it_could_not_be_read() throws IOException {
        Files.writeString(catalog.resolve("more.yaml"), "parts:\n  - { id: late-grip\n");
        Ran ran = Ran.fettle("explain", catalog.toString(), "late-grip");
        assertEquals(2, ran.exit());
        assertTrue(ran.err().contains("more.yaml, which could not be read whole"), ran.err());
    }

    @Test
    void what_is_missing_may_stand_in_a_section_or_an_entry_whose_name_is_misspelt() throws IOException {
        String whole = Files.readString(Path.of("src/test/resources/fettle/improve/catalog.yaml"));
        for (String slip : List.of("mountz:", "mounts: { stub: 1 }", "mounts: [{ idd: peg }]", "mounts: [{ id: [peg] }]")) {
            String broken = whole.replaceFirst("(?m)^mounts:(.*)$", slip.endsWith("z:") ? slip + "$1" : slip);
            assertTrue(!broken.equals(whole));
            Files.writeString(catalog.resolve("catalog.yaml"), broken);
            Ran ran = Ran.fettle("lint", catalog.toString());
            String words = ran.out().replaceAll("\\s+", " ");
            assertTrue(words.contains("(unknown-reference)") && words.contains("catalog.yaml first: what is missing may stand there"), () -> slip + ": " + ran.out());
        }
    }

    @Test
    void a_figure_that_could_not_be_read_hides_nothing_that_others_name() throws IOException {
        Path file = catalog.resolve("catalog.yaml");
        Files.writeString(file, Files.readString(file).replaceFirst("(?m)^mounts:.*$", "mounts: []"));
        Ran ran = Ran.fettle("lint", catalog.toString());
        assertTrue(ran.out().contains("(schema-mismatch)") && ran.out().contains("(unknown-reference)"), ran.out());
        assertTrue(!ran.out().contains("may stand there"), ran.out());
    }

    @Test
    void a_piece_of_an_entry_or_of_the_catalog_hides_nothing_either() throws IOException {
        String whole = Files.readString(Path.of("src/test/resources/fettle/improve/catalog.yaml")).replaceFirst("(?m)^mounts:.*$", "mounts: []");
        List<String> slips = List.of("kinds: [{ id: grip, label: A, label: B }]", "label: 3", "waivers: [{ rule: dead-part, subject: part:plain-grip }]", "kinds: [{ id: grip, role: 3 }]");
        for (String slip : slips) {
            Files.writeString(catalog.resolve("catalog.yaml"), whole);
            Files.writeString(catalog.resolve("more.yaml"), slip + "\n");
            Ran ran = Ran.fettle("lint", catalog.toString());
            assertTrue(ran.out().contains("more.yaml:1") && ran.out().contains("(unknown-reference)"), () -> slip + ": " + ran.out());
            assertTrue(!ran.out().contains("Begin with"), () -> slip + ": " + ran.out());
        }
    }

    @Test
    void an_offer_of_nothing_and_a_misspelt_list_of_slots_hide_what_others_miss() throws IOException {
        String whole = Files.readString(Path.of("src/test/resources/fettle/improve/catalog.yaml")).replaceFirst("(?m)^mounts:.*$", "mounts: []");
        for (String slip : List.of("offers: [{ partt: cork, vendor: stall, price: 3 }]", "parts: [{ id: late, mounts: [peg], slotz: [] }]", "parts: [{ id: late, mounts: peg }]")) {
            Files.writeString(catalog.resolve("catalog.yaml"), whole);
            Files.writeString(catalog.resolve("more.yaml"), slip + "\n");
            Ran ran = Ran.fettle("lint", catalog.toString());
            assertTrue(ran.out().replaceAll("\\s+", " ").contains("more.yaml, of which not all could be read"), () -> slip + ": " + ran.out());
        }
    }

    @Test
    void what_stands_under_a_name_that_no_section_has_is_gone_and_not_added() throws IOException {
        Path now = catalog.resolve("now");
        Files.createDirectories(now);
        Files.writeString(now.resolve("catalog.yaml"), Files.readString(Path.of("src/test/resources/fettle/improve/catalog.yaml")).replaceFirst("(?m)^parts:", "partz:"));
        Ran ran = Ran.fettle("compare", "src/test/resources/fettle/improve", now.toString());
        assertTrue(ran.out().contains("removed") && !ran.out().contains("added"), ran.out());
    }

    @Test
    void a_build_is_not_valid_where_no_part_can_be_read() throws IOException {
        Files.writeString(catalog.resolve("catalog.yaml"), Files.readString(Path.of("src/test/resources/fettle/improve/catalog.yaml")));
        String whole = Files.readString(Path.of(BUILD));
        assertTrue(Ran.fettle("validate", catalog.toString(), BUILD, "--format", "json").out().contains("\"valid\" : true"));
        for (String unread : List.of("30", "null", "{ at: 1 }", "{ part: 30 }", "''", "[[cork]]")) {
            Path build = Files.createDirectories(catalog.resolve("builds")).resolve("build.yaml");
            Files.writeString(build, whole.replace("top: lamp-hook", "top: " + unread));
            Ran ran = Ran.fettle("validate", catalog.toString(), build.toString(), "--format", "json");
            assertTrue(ran.out().contains("\"valid\" : false") && ran.out().contains("\"schema-mismatch\""), () -> unread + ": " + ran.out());
            assertTrue(!ran.out().contains("unknown-reference"), ran.out());
        }
    }

    @Test
    void a_figure_that_is_written_is_not_missed_where_it_cannot_be_read() throws IOException {
        String lacking = Files.readString(Path.of("rules/stats/missing-stat/cases/one-of-seven/catalog.yaml"));
        Files.writeString(catalog.resolve("catalog.yaml"), lacking);
        assertTrue(Ran.fettle("lint", catalog.toString()).out().contains("(missing-stat)"));
        String unread = lacking.replace("label: Lost grip", "stats: { mass: \"0.2\" }");
        Files.writeString(catalog.resolve("catalog.yaml"), unread);
        Ran ran = Ran.fettle("lint", catalog.toString());
        assertTrue(ran.out().contains("(schema-mismatch)") && !ran.out().contains("(missing-stat)"), ran.out());
    }

    @Test
    void nor_is_one_that_is_written_under_a_misspelt_name() throws IOException {
        String lacking = Files.readString(Path.of("rules/stats/missing-stat/cases/one-of-seven/catalog.yaml"));
        Ran ran = Ran.fettle("lint", written(lacking.replace("label: Lost grip", "stats: { mas: 0.2 }")));
        assertTrue(ran.out().contains("(unknown-reference)") && !ran.out().contains("(missing-stat)"), ran.out());
    }

    @Test
    void a_trait_of_values_that_cannot_be_read_rules_nothing_out() throws IOException {
        String whole = Files.readString(Path.of("src/test/resources/fettle/improve/catalog.yaml"));
        String declared = "traits: [{ id: hue }]\n" + whole.replace("id: plain-grip,", "id: plain-grip, traits: { hue: [7] },");
        Ran ran = Ran.fettle("lint", written(declared));
        assertTrue(ran.out().contains("(schema-mismatch)") && !ran.out().contains("(dead-part)"), ran.out());
        assertTrue(Ran.fettle("lint", written(declared.replace("[7]", "[]"))).out().contains("(dead-part)"));
    }

    @Test
    void an_offer_for_nothing_is_none_that_is_missing() throws IOException {
        String whole = Files.readString(Path.of("src/test/resources/fettle/improve/catalog.yaml"));
        String offer = "part: cork, vendor: market, barter: [{ good: wire, count: 2 }]";
        for (String slip : List.of("prize: 3", "tier: 0", "barter: []", "barter: [{ good: wire }]")) {
            String unpriced = whole.replace(offer, "part: cork, vendor: market, " + slip);
            assertTrue(!unpriced.equals(whole));
            String words = Ran.fettle("lint", written(unpriced)).out().replaceAll("\\s+", " ");
            assertTrue(words.contains("(schema-mismatch)") && !words.contains("(no-source)"), () -> slip + ": " + words);
        }
    }

    @Test
    void a_catalog_object_of_which_not_all_is_read_is_there() throws IOException {
        String whole = Files.readString(Path.of("src/test/resources/fettle/improve/catalog.yaml"));
        for (String slip : List.of("catalog: { ident: reedbank,", "catalog: {", "catalog: { id: 3,", "catalgo: { id: reedbank,")) {
            String out = Ran.fettle("lint", written(whole.replace("catalog: { id: reedbank,", slip))).out();
            assertTrue(out.contains("(schema-mismatch)") && !out.contains("(no-catalog-head)"), () -> slip + ": " + out);
        }
        assertTrue(Ran.fettle("lint", written(whole.replaceFirst("catalog: .*", ""))).out().contains("(no-catalog-head)"));
    }

    @Test
    void a_price_below_nothing_is_not_reckoned_with() throws IOException {
        String whole = Files.readString(Path.of("src/test/resources/fettle/improve/catalog.yaml"));
        assertTrue(!Ran.fettle("lint", written(whole)).out().contains("(no-source)"));
        String unpriced = whole.replaceFirst("(part: plain-grip,.*price: )", "$1-");
        assertTrue(!unpriced.equals(whole));
        Ran ran = Ran.fettle("lint", written(unpriced));
        String words = ran.out().replaceAll("\\s+", " ");
        assertTrue(words.contains("(schema-mismatch)") && !words.contains("(no-source)"), ran.out());
        Ran unsold = Ran.fettle("lint", written(unpriced.replaceFirst(".*part: cork, vendor: market.*\n", "")));
        assertTrue(unsold.out().replaceAll("\\s+", " ").contains("nothing sells cork (no-source)"), unsold.out());
    }

    private String written(String text) throws IOException {
        Files.writeString(catalog.resolve("catalog.yaml"), text);
        return catalog.toString();
    }
}

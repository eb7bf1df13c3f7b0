package fettle.judgement;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fettle.engine.RuleBase;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What lint says of parts' worth where some figures can't be read. */
class HalfReadTest {

    private static final String CATALOG = """
            catalog: { id: c, patch: "1", released: "2031-01-01", currency: scrip }
            currencies: [{ id: scrip, rate: 1 }]
            attributes:
              - { id: grip, unit: points, better: higher, combine: sum, decimals: 1, shown: 0 }
              - { id: mass, unit: kg, better: lower, combine: sum, decimals: 1, shown: 1 }
            kinds: [{ id: hold }, { id: end }]
            vendors: [{ id: market, tiers: 0 }]
            platforms:
              - id: frame
                slots: [{ id: hand, accepts: ["kind:hold"], required: true }, { id: tail, accepts: ["kind:end"], required: true }]
            parts:
              - { id: poor, kind: hold, stats: { grip: 1, mass: 1.5 } }
              - { id: good, kind: hold, stats: { grip: 2, mass: 1 } }
              - { id: plank, kind: end, stats: { grip: 1, mass: 2 } }
              - { id: stock, kind: end, stats: { grip: 3, mass: 1 } }
            offers:
              - { part: poor, vendor: market, price: 1 }
              - { part: good, vendor: market, price: 2 }
              - { part: plank, vendor: market, price: 1 }
              - { part: stock, vendor: market, price: 2 }
            waivers:
              - { rule: never-worth-using, subject: "part:stock", because: It was once. }
              - { rule: never-worth-using, subject: "part:gone", because: It was once. }
            """;
    private static final List<String> ALL_BUT_WHAT_HANGS_ON_IT =
            List.of("idle-waiver waiver:never-worth-using part:gone", "never-worth-using part:plank", "schema-mismatch document:catalog.yaml");

    @TempDir
    private Path folder;

    private List<String> drawn(String catalog) throws IOException {
        Files.writeString(folder.resolve("catalog.yaml"), catalog);
        RuleBase rules = RuleBase.builtIn();
        return new Lint(rules).findings(CatalogReading.of(rules, folder)).stream().map(finding -> finding.rule() + " " + finding.subject().replace(folder + "/", "")).sorted().toList();
    }

    @Test
    void what_is_read_in_full_is_compared() throws IOException {
        assertEquals(List.of("idle-waiver waiver:never-worth-using part:gone", "idle-waiver waiver:never-worth-using part:stock", "never-worth-using part:plank",
                "never-worth-using part:poor"), drawn(CATALOG));
    }

    @Test
    void a_part_with_a_figure_that_cannot_be_read_outdoes_nothing() throws IOException {
        assertEquals(ALL_BUT_WHAT_HANGS_ON_IT,
                drawn(CATALOG.replace("grip: 2, mass: 1 ", "grip: 2, mass: 1kg ")));
    }

    @Test
    void where_it_cannot_be_read_in_which_direction_an_attribute_serves_nothing_is_compared() throws IOException {
        List<String> said = List.of("idle-waiver waiver:never-worth-using part:gone", "schema-mismatch document:catalog.yaml");
        assertEquals(said, drawn(CATALOG.replace("better: lower", "better: Lower")));
        assertEquals(said, drawn(CATALOG.replace("better: lower", "beter: lower")).stream().distinct().toList());
        assertEquals("schema-mismatch document:catalog.yaml", drawn(CATALOG.replace("unit: kg", "unit: 1")).get(4));
    }

    @Test
    void decimals_that_none_can_have_bound_no_figure() throws IOException {
        assertEquals(List.of("schema-mismatch document:catalog.yaml"),
                drawn(CATALOG.replace("combine: sum, decimals: 1, shown: 1", "combine: sum, decimals: -1, shown: 1")).stream().filter(finding -> !finding.contains("never-worth")).toList());
    }

    /** Without the documents that say so. */
    private List<String> told(String catalog) throws IOException {
        return drawn(catalog).stream().filter(finding -> !finding.startsWith("unknown-reference") && !finding.startsWith("schema-mismatch")).toList();
    }

    @Test
    void a_figure_of_an_attribute_that_is_not_there_is_one_that_cannot_be_read() throws IOException {
        List<String> told = List.of("idle-waiver waiver:never-worth-using part:gone", "never-worth-using part:plank");
        assertEquals(told, told(CATALOG.replace("stats: { grip: 1, mass: 1.5 }", "stats: { gripp: 1, mass: 1.5 }")));
        assertEquals(told, told(CATALOG.replace("stats: { grip: 1, mass: 1.5 }", "stats: { grip: 1 }, loaded: { mas: -1.5 }")));
        assertEquals(List.of("idle-waiver waiver:never-worth-using part:gone"), told(CATALOG.replace("id: mass", "id: mas")));
    }

    @Test
    void whether_a_part_serves_a_purpose_must_be_known_of_its_kind() throws IOException {
        List<String> told = List.of("idle-waiver waiver:never-worth-using part:gone", "never-worth-using part:plank");
        assertEquals(told, told(CATALOG.replace("id: hold }", "id: hold, role: yes }")));
        assertEquals(told, told(CATALOG.replace("id: good, kind: hold", "id: good, kind: holt").replace("[\"kind:hold\"]", "[\"kind:hold\", good]")));
    }

    @Test
    void an_offer_of_which_too_little_is_read_still_tells_that_its_part_is_sold() throws IOException {
        String dearer = CATALOG.replace("part: poor, vendor: market, price: 1 }", "part: poor, vendor: market, price: 3 }")
                .replace("stats: { grip: 1, mass: 1.5 }", "stats: { grip: 2, mass: 1 }");
        String more = "  - { part: poor, vendor: market, prize: 1 }\n  - { part: stock";
        assertTrue(told(dearer).contains("dominated-part part:poor"), told(dearer).toString());
        assertTrue(!told(dearer.replace("  - { part: stock", more)).contains("dominated-part part:poor"));
    }

    @Test
    void nor_is_it_outdone() throws IOException {
        assertEquals(ALL_BUT_WHAT_HANGS_ON_IT,
                drawn(CATALOG.replace("grip: 1, mass: 1.5", "grip: 1, mass: heavy")));
    }

    @Test
    void twins_that_it_would_outdo_are_still_told() throws IOException {
        String poorTwice = "  - { id: poor, kind: hold, stats: { grip: 1, mass: 1.5 } }\n  - { id: poorer, kind: hold, stats: { grip: 1, mass: 1.5 } }\n";
        String catalog = CATALOG.replace("  - { id: poor, kind: hold, stats: { grip: 1, mass: 1.5 } }\n", poorTwice).replace("mass: 1 } }\n  - { id: plank", "mass: 1, flaw: x } }\n  - { id: plank");
        assertEquals(List.of("no-source part:poorer", "twin-parts part:poor"), drawn(catalog).stream().filter(finding -> finding.contains("poor")).toList());
    }

    @Test
    void a_price_that_cannot_be_read_counts_as_well() throws IOException {
        assertEquals(ALL_BUT_WHAT_HANGS_ON_IT,
                drawn(CATALOG.replace("part: good, vendor: market, price: 2", "part: good, vendor: market, price: 2, tier: low")));
    }

    @Test
    void a_tier_that_cannot_be_read_is_not_missing() throws IOException {
        String catalog = CATALOG.replace("tiers: 0", "tiers: 2").replace("price: 1 }", "price: 1, tier: low }");
        assertEquals(List.of("missing-tier offer:good@market", "missing-tier offer:stock@market"), drawn(catalog).stream().filter(finding -> finding.startsWith("missing-tier")).toList());
    }

    @Test
    void words_that_nothing_is_computed_from_may_be_anything() throws IOException {
        assertEquals(List.of("idle-waiver waiver:never-worth-using part:gone", "idle-waiver waiver:never-worth-using part:stock", "never-worth-using part:plank",
                "never-worth-using part:poor", "schema-mismatch document:catalog.yaml"), drawn(CATALOG.replace("id: good,", "id: good, note: [1],")));
    }
}

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

    @Test
    void what_outdoes_a_part_on_most_platforms_comes_first() throws IOException {
        String catalog = Files.readString(CASE).replace("needs: [[dull-glass]], ", "excludes: [fine-glass], ")
                .replace("  - { id: torch,", "  - { id: brand, slots: [{ id: top, mounts: [rail] }] }\n  - { id: torch,")
                + "  - { id: fine-glass, kind: glass, mounts: [dovetail], stats: { grip: 3, mass: 0.2 } }\n";
        List<JsonNode> found = findings("never-worth-using", catalog);
        assertEquals("dull-glass is never worth using: in arm/eye on brand and torch, fine-glass outdoes it whatever it costs: +1 point grip;"
                + " so does clear-glass in arm/eye on lantern", found.get(0).get("message").asString());
    }

    @Test
    void the_rungs_between_which_a_part_lies_are_told_of_the_platforms_that_have_them() throws IOException {
        List<JsonNode> found = findings("between-rungs", """
                catalog: { id: quay, patch: "1.0", released: 2031-03-01, currency: crown }
                currencies: [{ id: crown, rate: 1 }]
                vendors: [{ id: stall, tiers: 0 }]
                kinds: [{ id: arm }, { id: grip }]
                mounts: [{ id: rail }, { id: peg }]
                attributes:
                  - { id: hold, unit: points, better: higher, combine: sum, decimals: 1, shown: 0 }
                lenses: [{ id: steady, weights: { hold: 1 } }]
                platforms:
                  - { id: lantern, excludes: [horn], slots: [{ id: top, mounts: [rail] }] }
                  - { id: torch, slots: [{ id: top, mounts: [rail] }] }
                parts:
                  - { id: arm, kind: arm, mounts: [rail], stats: { hold: 1 }, slots: [{ id: eye, mounts: [peg], required: true }] }
                  - { id: cork, kind: grip, mounts: [peg], stats: { hold: 1 } }
                  - { id: rope, kind: grip, mounts: [peg], stats: { hold: 2 } }
                  - { id: horn, kind: grip, mounts: [peg], stats: { hold: 8 } }
                  - { id: brass, kind: grip, mounts: [peg], stats: { hold: 8 } }
                offers:
                  - { part: arm, vendor: stall, price: 1 }
                  - { part: cork, vendor: stall, price: 10 }
                  - { part: rope, vendor: stall, price: 60 }
                  - { part: horn, vendor: stall, price: 80 }
                  - { part: brass, vendor: stall, price: 90 }
                """);
        assertEquals(1, found.size());
        List<String> facts = new ArrayList<>();
        found.get(0).get("because").forEach(fact -> facts.add(fact.get("fact").asString().replaceAll(" a point comes.*on", "")));
        assertEquals(
                List.of("for steady, in arm/eye on lantern, rope (cost 60, benefit 2): above cork (cost 10, benefit 1) the way to brass (cost 90, benefit 8)",
                        "for steady, in arm/eye on torch, rope (cost 60, benefit 2): above cork (cost 10, benefit 1) the way to horn (cost 80, benefit 8)"),
                facts);
    }
}

package fettle.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is not said of a build that names an access profile which the catalog doesn't have. */
class UnknownProfileTest {

    private static final String CATALOG = """
            catalog: { id: quay, patch: "1", released: 2031-03-01, currency: crown }
            currencies: [{ id: crown, rate: 1 }]
            attributes: [{ id: kick, unit: points, better: lower, combine: sum, decimals: 1, shown: 1, material: 1 }]
            kinds: [{ id: brake }, { id: charm }]
            platforms:
              - id: carbine
                stats: { kick: 80 }
                slots: [{ id: muzzle, accepts: ["kind:brake"] }, { id: ring, accepts: ["kind:charm"] }]
            parts:
              - { id: jaw, kind: brake, stats: { kick: -20 } }
              - { id: maw, kind: brake, stats: { kick: -30 } }
              - { id: medal, kind: charm }
            vendors: [{ id: harbour, tiers: 2 }]
            access: [{ id: newcomer, vendors: { harbour: 1 } }]
            offers:
              - { part: jaw, vendor: harbour, tier: 1, price: 50 }
              - { part: maw, vendor: harbour, tier: 1, price: 40 }
            lenses: [{ id: calm, weights: { kick: 1 } }]
            """;

    @TempDir
    private Path folder;

    @BeforeEach
    void write() throws IOException {
        Files.writeString(Files.createDirectory(folder.resolve("quay")).resolve("catalog.yaml"), CATALOG);
    }

    private Ran validated(String access, String parts, String... more) throws IOException {
        Path build = Files.writeString(folder.resolve("b.yaml"),
                "build: { id: b, platform: carbine, patch: \"1\", access: " + access + ", lens: calm, budget: 20, parts: " + parts + " }\n");
        List<String> words = new ArrayList<>(List.of("validate", folder.resolve("quay").toString(), build.toString()));
        words.addAll(List.of(more));
        return Ran.fettle(words.toArray(String[]::new));
    }

    private List<String> drawn(String access, String parts) throws IOException {
        String json = validated(access, parts, "--format", "json").out();
        return Pattern.compile("\"rule\" : \"([^\"]*)\"").matcher(json).results().map(found -> found.group(1)).sorted().toList();
    }

    @Test
    void nothing_that_hangs_on_prices_is_said_of_it() throws IOException {
        assertEquals(List.of("better-part", "over-budget"), drawn("newcomer", "{ muzzle: jaw }"));
        assertEquals(List.of("unobtainable-part"), drawn("newcomer", "{ ring: medal }").stream().filter(rule -> rule.startsWith("unob")).toList());
        assertEquals(List.of("unknown-name"), drawn("beginner", "{ muzzle: jaw }"));
        assertEquals(List.of("unknown-name"), drawn("beginner", "{ ring: medal }"));
    }

    @Test
    void its_cost_is_not_known_and_the_reason_is_told() throws IOException {
        assertTrue(validated("beginner", "{ muzzle: jaw }").out().contains("cost  not known, since the catalog has no access profile beginner\n"));
        assertTrue(validated("beginner", "{ muzzle: jaw }", "--format", "json").out().contains("\"cost\" : null"));
        assertTrue(validated("newcomer", "{ muzzle: jaw }", "--format", "json").out().contains("\"cost\" : \"50\""));
    }

    @Test
    void a_profile_named_on_the_command_line_takes_its_place() throws IOException {
        assertTrue(validated("beginner", "{ muzzle: jaw }", "--access", "newcomer").out().contains("cost  50 crown, of a budget of 20 crown\n"));
        assertEquals(2, validated("newcomer", "{ muzzle: jaw }", "--access", "beginner").exit());
    }
}

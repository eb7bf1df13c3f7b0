package fettle.command;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Advice on slots that are alike. */
class SameAdviceTest {

    private static final String CATALOG = """
            catalog: { id: reedbank, patch: "1", released: "2031-01-01", currency: tally }
            currencies: [{ id: tally, rate: 1 }]
            attributes: [{ id: grip, label: Grip, unit: points, better: higher, combine: sum, decimals: 1, shown: 1, material: 1 }]
            kinds: [{ id: hold }]
            mounts: [{ id: peg }, { id: strap }]
            vendors: [{ id: market, tiers: 0 }]
            lenses: [{ id: firm, label: Firm, weights: { grip: 1 } }]
            platforms:
              - id: heron
                stats: { grip: 10 }
                slots: [{ id: left, mounts: [peg] }, { id: right, mounts: [peg] }, { id: tail, mounts: [strap] }]
            parts:
              - { id: plain-grip, kind: hold, mounts: [peg], stats: { grip: 1 } }
              - { id: sure-grip, kind: hold, mounts: [peg], stats: { grip: 4 } }
              - { id: strap-grip, kind: hold, mounts: [strap], stats: { grip: 3 } }
            offers:
              - { part: plain-grip, vendor: market, price: 10 }
              - { part: sure-grip, vendor: market, price: 16 }
              - { part: strap-grip, vendor: market, price: 900 }
            """;
    private static final String BUILD = """
            build:
              id: firm-heron
              platform: heron
              patch: "1"
              lens: firm
              parts:
                left: plain-grip
            """;

    @TempDir
    private Path folder;

    @Test
    void the_same_of_two_slots_is_told_once_with_both() throws IOException {
        Ran ran = validated("    right: plain-grip\n");
        assertTrue(ran.out().contains("at left, sure-grip betters plain-grip"), ran.out());
        assertTrue(ran.out().contains("\n   also  the same at right (build.yaml:8:12).\n"), ran.out());
        assertFalse(ran.out().contains("at right, sure-grip betters"), ran.out());
    }

    @Test
    void what_differs_in_anything_else_is_told_of_each() throws IOException {
        Ran ran = validated("");
        assertTrue(ran.out().contains("at right, sure-grip betters an empty slot"), ran.out());
        assertFalse(ran.out().contains("   also  "), ran.out());
    }

    private Ran validated(String right) throws IOException {
        Files.writeString(folder.resolve("catalog.yaml"), CATALOG);
        Path build = Files.writeString(Files.createDirectories(folder.resolve("builds")).resolve("build.yaml"), BUILD + right);
        return Ran.fettle("validate", folder.toString(), build.toString());
    }
}

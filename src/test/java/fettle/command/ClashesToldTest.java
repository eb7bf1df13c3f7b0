package fettle.command;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** That of what a part clashes with only that is told which can come about. */
class ClashesToldTest {

    private static final String CATALOG = """
            catalog: { id: quay, patch: "1", released: 2031-03-01, currency: crown }
            currencies: [{ id: crown, rate: 1 }]
            attributes: [{ id: glow, unit: points, better: higher, combine: sum, decimals: 1, shown: 1 }]
            kinds: [{ id: charm }]
            zones: [{ id: flame }]
            mounts: [{ id: clip }, { id: peg }, { id: ring }]
            platforms:
              - { id: lamp, slots: [{ id: rail, mounts: [clip], most: 2, tags: [low] }] }
              - { id: torch, blocks: [side], slots: [{ id: rail, mounts: [clip], tags: [low] }, { id: end, mounts: [peg] }] }
              - { id: brand, slots: [{ id: arm, mounts: [clip], tags: [side] }] }
            parts:
              - { id: bead, kind: charm, mounts: [clip], stats: { glow: 2 }, blocks: [low], claims: [flame] }
              - { id: bell, kind: charm, mounts: [clip], stats: { glow: 1 } }
              - { id: knot, kind: charm, mounts: [peg], stats: { glow: 1 }, blocks: [low] }
            """;

    @TempDir
    private Path folder;

    /** The sentences on clashes, without their reasons. */
    private List<String> clashes(String catalog, String id) throws IOException {
        Files.writeString(folder.resolve("catalog.yaml"), catalog);
        String text = Ran.fettle("explain", folder.toString(), id).out();
        return text.lines().dropWhile(line -> !line.startsWith("  clash")).takeWhile(line -> !line.isEmpty())
                .map(line -> line.replaceFirst("^  clash", "       ")).filter(line -> line.matches(" {9}\\S.*")).map(String::strip).toList();
    }

    @Test
    void nothing_keeps_the_slot_empty_in_which_it_sits_itself() throws IOException {
        assertEquals(List.of("knot keeps it out of torch/rail (blocked-slot)"), clashes(CATALOG, "bell"));
        assertEquals(List.of("knot keeps it out of torch/rail (blocked-slot)"), clashes(CATALOG, "bead"));
        assertEquals(List.of("keeps empty torch/rail (blocked-slot)"), clashes(CATALOG, "knot"));
    }

    @Test
    void it_does_from_elsewhere() throws IOException {
        String lamp = CATALOG.replace("most: 2, tags: [low] }", "most: 2, tags: [low] }, { id: foot, mounts: [clip] }");
        assertEquals(List.of("keeps empty lamp/rail unless it sits there itself (blocked-slot)", "knot keeps it out of torch/rail (blocked-slot)",
                "cannot be used twice (zone-clash)"), clashes(lamp, "bead").stream().sorted(java.util.Comparator.comparing(line -> line.startsWith("cannot"))).toList());
        assertEquals(List.of("bead keeps it out of lamp/rail unless bead sits there itself (blocked-slot)", "knot keeps it out of torch/rail (blocked-slot)"),
                clashes(lamp, "bell"));
        assertEquals(List.of("bead keeps it out of lamp/rail (blocked-slot)", "knot keeps it out of torch/rail (blocked-slot)"), clashes(lamp.replace("most: 2, ", ""), "bell"));
        assertEquals(List.of("bead keeps its slot lamp/rail empty unless bead sits there itself (blocked-slot)"), clashes(lamp, "lamp"));
    }

    @Test
    void slots_on_a_part_that_may_be_there_twice_can_be_kept_empty_from_its_like() throws IOException {
        String arms = CATALOG.replace("{ id: rail, mounts: [clip], most: 2, tags: [low] }", "{ id: rail, mounts: [ring], most: 2, repeats: true }")
                + "  - { id: arm, kind: charm, mounts: [ring], slots: [{ id: eye, mounts: [clip], tags: [low] }] }\n";
        assertEquals("bead keeps it out of arm/eye (blocked-slot)", clashes(arms, "bell").get(0));
        assertEquals(List.of("bead keeps its slot arm/eye empty unless bead sits there itself (blocked-slot)"), clashes(arms, "arm"));
        assertEquals(List.of(), clashes(arms.replace(", repeats: true", ""), "arm"));
    }

    @Test
    void what_meets_on_no_platform_does_not_clash() throws IOException {
        String zones = CATALOG.replace("{ glow: 1 }, blocks: [low] }", "{ glow: 1 }, claims: [flame] }");
        assertEquals(List.of("cannot be used with bead (zone-clash)"), clashes(zones, "knot"));
        assertEquals(List.of(), clashes(zones.replace("{ id: end, mounts: [peg] }", "{ id: end, mounts: [ring] }").replace("[{ id: arm, mounts: [clip]", "[{ id: arm, mounts: [peg]"), "knot"));
    }

    @Test
    void what_names_nothing_is_no_clash() throws IOException {
        assertEquals(List.of(), clashes(CATALOG.replace("blocks: [low] }", "blocks: [tall], excludes: [\"tag:sooty\"] }"), "knot"));
    }
}

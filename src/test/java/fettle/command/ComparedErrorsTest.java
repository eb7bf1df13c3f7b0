package fettle.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a patch states wrongly, by which what is compared may be wrong too. */
class ComparedErrorsTest {

    private static final String CATALOG = """
            catalog: { id: quay, patch: "%s", released: 2031-03-01, currency: crown }
            currencies: [{ id: crown, rate: 1 }]
            kinds: [{ id: grip }]
            mounts: [{ id: stub }]
            attributes: [{ id: mass, better: lower, combine: sum, decimals: 2 }]
            platforms: [{ id: carbine, slots: [{ id: below, mounts: [stub] }] }]
            vendors: [{ id: stall, tiers: 2 }]
            parts: [{ id: peg, kind: grip, mounts: [stub], stats: { mass: 0.25 } }]
            offers: [{ part: peg, vendor: stall, tier: 1, price: 5 }]
            """;
    private static final String SECOND = "parts: [{ id: peg, kind: grip, mounts: [stub], stats: { mass: 0.75 } }]\n";

    @TempDir
    private Path folder;

    @BeforeEach
    void two_alike() throws IOException {
        write("old/all.yaml", CATALOG.formatted("1"));
        write("new/all.yaml", CATALOG.formatted("2"));
        write("builds.yaml", "build: { id: first, platform: carbine, parts: { below: peg } }\n");
    }

    private void write(String file, String text) throws IOException {
        Files.createDirectories(folder.resolve(file).getParent());
        Files.writeString(folder.resolve(file), text);
    }

    private Ran compare() {
        return Ran.fettle("compare", folder.resolve("old").toString(), folder.resolve("new").toString(), "--builds", folder.resolve("builds.yaml").toString());
    }

    @Test
    void an_id_that_two_entries_have_is_an_error_wherever_the_second_one_stands() throws IOException {
        for (String file : new String[] {"new/aaa.yaml", "new/zzz.yaml"}) {
            write(file, SECOND);
            Ran ran = compare();
            assertEquals(1, ran.exit(), ran.out());
            assertTrue(ran.out().contains("(duplicate-id)"), ran.out());
            Files.delete(folder.resolve(file));
        }
    }

    @Test
    void an_id_that_two_entries_of_the_old_catalog_have_is_an_error_too() throws IOException {
        write("old/zzz.yaml", SECOND);
        Ran ran = compare();
        assertEquals(1, ran.exit(), ran.out());
        assertTrue(ran.out().contains("old/zzz.yaml:1:15"), ran.out());
    }

    @Test
    void what_a_patch_states_wrongly_is_told() throws IOException {
        write("new/all.yaml", CATALOG.formatted("2").replace("tier: 1", "tier: 3"));
        Ran ran = compare();
        assertEquals(1, ran.exit(), ran.out());
        assertTrue(ran.out().contains("names tier 3 of stall, which has 2 (no-such-tier)"), ran.out());
    }

    @Test
    void what_was_stated_wrongly_before_is_not_the_patchs() throws IOException {
        for (String side : new String[] {"old", "new"}) {
            write(side + "/all.yaml", CATALOG.formatted(side).replace("tier: 1", "tier: 3"));
        }
        Ran ran = compare();
        assertEquals(0, ran.exit(), ran.out());
        assertFalse(ran.out().contains("no-such-tier"), ran.out());
    }
}

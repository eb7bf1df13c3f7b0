package fettle.command;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A patch that takes an attribute out of the catalog, or gives it another id, while builds and a limit still hang on it. */
class GoneAttributeTest {

    private static final String CATALOG = """
            catalog: { id: quay, patch: "1", released: 2031-03-01, currency: crown }
            currencies: [{ id: crown, rate: 1 }]
            kinds: [{ id: grip }]
            mounts: [{ id: stub }]
            attributes:
              - { id: mass, better: lower, combine: sum, decimals: 2 }
              - { id: hold, better: higher, combine: sum, decimals: 1 }
            platforms: [{ id: carbine, stats: { mass: 3, hold: 1 }, slots: [{ id: below, mounts: [stub] }] }]
            parts: [{ id: peg, kind: grip, mounts: [stub], stats: { mass: 0.25, hold: 2 } }]
            limits: [{ id: firm, attribute: hold, atLeast: 5 }]
            """;

    @TempDir
    private Path folder;

    @BeforeEach
    void two_builds_of_one_part() throws IOException {
        write("old/all.yaml", CATALOG);
        write("builds.yaml", """
                builds:
                  - { id: first, platform: carbine, parts: { below: peg } }
                  - { id: second, platform: carbine, parts: { below: peg } }
                """);
    }

    private void write(String file, String text) throws IOException {
        Files.createDirectories(folder.resolve(file).getParent());
        Files.writeString(folder.resolve(file), text);
    }

    private String compared(String now) throws IOException {
        write("new/all.yaml", now);
        return Ran.fettle("compare", folder.resolve("old").toString(), folder.resolve("new").toString(), "--builds", folder.resolve("builds.yaml").toString()).out();
    }

    @Test
    void a_limit_on_an_attribute_that_is_gone_is_not_said_to_be_kept() throws IOException {
        String out = compared(CATALOG.replace("{ id: hold,", "{ id: holding,"));
        assertFalse(out.contains("now kept"), out);
        assertTrue(compared(CATALOG.replace("atLeast: 5", "atLeast: 2")).contains("limit firm now kept"));
    }

    @Test
    void builds_that_lack_nothing_but_the_attribute_are_told_in_one_line() throws IOException {
        String out = compared(CATALOG.replace("{ id: hold,", "{ id: holding,"));
        assertTrue(out.contains("shifted  2 builds, in nothing but what only one of the catalogs counts: hold and holding\n"), out);
        assertFalse(out.contains("shifted  build "), out);
    }

    @Test
    void what_else_moved_is_told_of_each() throws IOException {
        String out = compared(CATALOG.replace("{ id: hold,", "{ id: holding,").replace("mass: 0.25", "mass: 0.5"));
        assertTrue(out.contains("shifted  build first: mass from 3.25 to 3.50\n") && out.contains("shifted  build second: mass from 3.25 to 3.50\n"), out);
    }
}

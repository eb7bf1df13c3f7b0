package fettle.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a platform states to count when loaded, which counts nowhere, isn't shown as if it did. */
class PlatformFiguresTest {

    private static final String CATALOG = """
            catalog: { id: quay, patch: "1", released: 2031-03-01, currency: crown }
            currencies: [{ id: crown, rate: 1 }]
            attributes: [{ id: mass, unit: g, better: lower, combine: sum, decimals: 0, shown: 0 }]
            kinds: [{ id: can }]
            mounts: [{ id: clip }]
            platforms:
              - { id: lamp, stats: { mass: 200 }, loaded: { mass: 4000 }, slots: [{ id: foot, mounts: [clip] }] }
            parts:
              - { id: oil-can, kind: can, mounts: [clip], stats: { mass: 30 }, loaded: { mass: 70 } }
            """;

    @TempDir
    private Path folder;

    @BeforeEach
    void write_the_catalog() throws IOException {
        Files.writeString(folder.resolve("catalog.yaml"), CATALOG);
    }

    private List<String> stats(String id) {
        return Ran.fettle("explain", folder.toString(), id).out().lines().filter(line -> line.startsWith("  stats")).map(line -> line.strip().replaceAll(" +", " ")).toList();
    }

    @Test
    void explain_says_that_they_count_nowhere() {
        assertEquals(List.of("stats mass 200 g mass loaded, counted nowhere 4000 g"), stats("lamp"));
        assertEquals(List.of("stats mass +30 g mass loaded +70 g"), stats("oil-can"));
    }

    @Test
    void the_page_leaves_them_out() throws IOException {
        Path page = folder.resolve("page.html");
        Ran.fettle("report", folder.toString(), "-o", page.toString());
        String data = Files.readString(page);
        assertTrue(data.contains("[\"mass\",\"+70 g\",1]"), data);
        assertFalse(data.contains("4000 g"));
        assertFalse(data.contains("4,000 g"));
    }
}

package fettle.command;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** No reason that the command tells can be left out: with what it rests on taken from the catalog, the parts go together. */
class LeftOutReasonTest {

    private static final String CATALOG = """
            catalog: { id: shed, patch: "1", released: 2031-01-01, currency: nail }
            kinds: [{ id: k }]
            mounts: [{ id: hook }]
            traits: [{ id: bore }]
            platforms:
              - id: frame
                slots:
                  - { id: a, accepts: [x, v] }
                  - { id: b, accepts: [y] }
                  - { id: c, mounts: [hook] }
            parts:
              - { id: x, kind: k, needs: [[z]] }
              - { id: y, kind: k, excludes: ["tag:loud"] }
              - { id: z, kind: k, tags: [loud], mounts: [hook] }
              - { id: v, kind: k, mounts: [hook] }
            """;

    @TempDir
    private Path folder;

    private String explained(String catalog) throws IOException {
        Files.writeString(folder.resolve("catalog.yaml"), catalog, StandardCharsets.UTF_8);
        return Ran.fettle("explain", folder.toString(), "x", "y", "--platform", "frame").out().replace(folder.toString().replace('\\', '/'), "shed");
    }

    private static String without(String stated) {
        assertEquals(2, CATALOG.split(java.util.regex.Pattern.quote(stated), -1).length, stated);
        return CATALOG.replace(stated, "");
    }

    @Test
    void each_reason_is_needed() throws IOException {
        String reasons = """
                on frame: x and y cannot be together
                why x is asked for
                y is asked for
                x needs z (unmet-need)
                x needs z shed/catalog.yaml:12:31
                the catalog has z shed/catalog.yaml:14:11
                y and a part tagged loud cannot be used together (excluded-pair)
                y cannot be used with parts tagged loud shed/catalog.yaml:13:34
                z is tagged loud shed/catalog.yaml:14:30
                """;
        assertEquals(reasons.replace('\n', ' ').strip(), explained(CATALOG).replaceAll("\\s+", " ").strip());
        Map<String, String> builds = new LinkedHashMap<>();
        for (String stated : new String[] {", needs: [[z]]", ", excludes: [\"tag:loud\"]", ", tags: [loud]"}) {
            builds.put(stated, explained(without(stated)).lines().findFirst().orElseThrow());
        }
        builds.forEach((stated, told) -> assertEquals("     on  frame: x and y can be together, as in this valid build", told, stated));
    }

    @Test
    void what_is_no_reason_changes_nothing() throws IOException {
        String before = explained(CATALOG);
        assertEquals(before, explained(CATALOG.replace("accepts: [x, v]", "accepts: [x]")));
    }
}

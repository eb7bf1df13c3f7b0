package fettle.command;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is not said of a build with a part that could not be placed. */
class UnplacedPartTest {

    private static final String CATALOG = """
            catalog: { id: quay, patch: "1", released: 2031-03-01, currency: crown }
            currencies: [{ id: crown, rate: 1 }]
            attributes: [{ id: kick, unit: points, better: lower, combine: percent, decimals: 1, shown: 1 }]
            kinds: [{ id: brake }, { id: pad }]
            platforms:
              - id: carbine
                stats: { kick: 80 }
                slots: [{ id: muzzle, accepts: ["kind:brake"] }, { id: tail, accepts: ["kind:pad"] }]
            parts:
              - { id: jaw, kind: brake, stats: { kick: -20 } }
              - { id: wool, kind: pad, stats: { kick: -10 } }
            limits:
              - { id: hold, attribute: kick, atMost: 60, near: 10 }
            """;

    @TempDir
    private Path folder;

    @BeforeEach
    void write() throws IOException {
        write("old", CATALOG);
        write("now", CATALOG.replace("patch: \"1\"", "patch: \"2\"").replace("id: wool", "id: felt"));
        Files.writeString(folder.resolve("soft.yaml"), "build: { id: soft, platform: carbine, patch: \"1\", parts: { muzzle: jaw, tail: wool } }\n");
        Files.writeString(folder.resolve("bare.yaml"), "build: { id: bare, platform: carbine, patch: \"1\", parts: { muzzle: jaw } }\n");
    }

    private void write(String name, String catalog) throws IOException {
        Files.writeString(Files.createDirectories(folder.resolve(name)).resolve("catalog.yaml"), catalog);
    }

    private String told(String command, String... more) {
        String[] words = new String[more.length + 1];
        words[0] = command;
        for (int i = 0; i < more.length; i++) {
            words[i + 1] = more[i].startsWith("-") ? more[i] : folder.resolve(more[i]).toString();
        }
        return Ran.fettle(words).out();
    }

    @Test
    void no_limit_is_said_to_be_exceeded_for_want_of_it() {
        assertTrue(told("validate", "now", "bare.yaml").contains("(limit-exceeded)"));
        String unplaced = told("validate", "now", "soft.yaml");
        assertTrue(unplaced.contains("(unknown-name)"), unplaced);
        assertFalse(unplaced.contains("(limit-exceeded)") || unplaced.contains("(limit-close)"), unplaced);
        assertTrue(told("validate", "old", "soft.yaml").contains("(limit-close)"));
    }

    @Test
    void no_limit_is_said_to_be_crossed_for_want_of_it() throws IOException {
        String unplaced = told("compare", "old", "now", "--builds", "soft.yaml");
        assertTrue(unplaced.contains("(build-broken)"), unplaced);
        assertFalse(unplaced.contains("(limit-crossed)"), unplaced);
        write("now", CATALOG.replace("patch: \"1\"", "patch: \"2\"").replace("kick: -10", "kick: -1"));
        assertTrue(told("compare", "old", "now", "--builds", "soft.yaml").contains("(limit-crossed)"));
    }
}

package fettle.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.Test;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** Advice on a build shows what it first rests on, and counts the rest, which the JSON has. */
class ShownFactsTest {

    private static final String SWAP = "hask-section-cant with pell-foregrip-rail for an empty slot gains";

    private static String validate(String format) {
        return Ran.fettle("validate", "catalog/marrowdyke", "catalog/marrowdyke/builds/coot-drum.yaml", "--format", format).out();
    }

    @Test
    void the_facts_that_are_shown_and_those_that_are_counted_are_all_there_are() {
        List<String> text = validate("text").lines().toList();
        int from = 0;
        while (!(text.get(from) + " " + text.get(from + 1).strip()).contains("at guard/left, " + SWAP)) {
            from++;
        }
        int counted = 0;
        int shown = 0;
        for (String line : text.subList(from, text.size())) {
            shown += line.matches(".*\\S:\\d+:\\d+$") && !line.contains("builds/") ? 1 : 0;
            if (line.strip().startsWith("and ")) {
                counted = Integer.parseInt(line.replaceAll("\\D", ""));
                break;
            }
        }
        JsonNode found = StreamSupport.stream(new JsonMapper().readTree(validate("json")).get("findings").spliterator(), false)
                .filter(finding -> finding.get("message").asString().startsWith("at guard/left, " + SWAP)).findFirst().orElseThrow();
        assertEquals(6, shown);
        assertTrue(counted > 1, "some are left out");
        assertEquals(found.get("because").size(), shown + counted);
    }
}

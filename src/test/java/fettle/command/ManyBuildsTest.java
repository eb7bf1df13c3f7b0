package fettle.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** What is told of more builds than anyone would read the whole of. */
class ManyBuildsTest {

    private static final String DEMO = "catalog/marrowdyke";
    private static final String CLOSING = "Of so many builds notes are told without reasons";

    @Test
    void notes_on_many_builds_are_told_without_their_reasons() {
        String out = Ran.fettle("validate", DEMO, DEMO + "/builds").out();
        assertFalse(words(out).contains("note why") || words(out).contains("note try"), out);
        assertTrue(out.contains(CLOSING), out);
    }

    @Test
    void what_is_wrong_with_many_builds_is_told_with_its_reasons() {
        String out = Ran.fettle("validate", DEMO, DEMO + "/builds").out();
        assertTrue(words(out).contains("error why") && words(out).contains("error try") && words(out).contains("warning why"), out);
    }

    @Test
    void of_a_few_builds_all_reasons_are_told() {
        List<String> some = Stream.of("coot-drum", "gannet-first-ebb", "stilt-no-bed").map(id -> DEMO + "/builds/" + id + ".yaml").toList();
        String out = Ran.fettle(Stream.concat(Stream.of("validate", DEMO), some.stream()).toArray(String[]::new)).out();
        assertTrue(words(out).contains("note why") && words(out).contains("note try"), out);
        assertFalse(out.contains(CLOSING), out);
    }

    @Test
    void other_forms_of_output_hold_all_of_it_however_many_builds_there_are() {
        String out = Ran.fettle("validate", DEMO, DEMO + "/builds", "--format", "json").out();
        long notes = out.lines().filter(line -> line.strip().equals("\"severity\" : \"note\",")).count();
        assertTrue(notes > 20, out);
        assertEquals(0, out.lines().filter(line -> line.strip().matches("\"because\" ?: \\[ *],?")).count(), out);
    }

    /** What each line below a finding holds, with the severity of that finding. */
    private static List<String> words(String out) {
        String[] of = {""};
        return out.lines().filter(line -> line.length() > 9).map(line -> line.substring(0, 8).strip()).filter(word -> !word.isEmpty()).map(word -> {
            if (List.of("error", "warning", "note", "build").contains(word)) {
                of[0] = word;
            }
            return of[0] + " " + word;
        }).toList();
    }
}

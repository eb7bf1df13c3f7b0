package fettle.command;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.eclipse.lsp4j.CodeAction;
import org.junit.jupiter.api.Test;

/** What a quick fix leaves behind: the document as it was, but for what was meant. */
class QuickFixTest extends LanguageServerTalk {

    private static final String UNSOLD = "    mounts: [peg]\n    stats: { mass: 0.25 }\n";

    /** The texts that a document becomes by the fixes of what a rule finds first in it, without the waivers. */
    private List<String> mended(Path file, String text, String rule) throws Exception {
        open(file, text);
        return fixes(file, of(told(file, with(rule)), rule).getRange()).stream()
                .filter(fix -> fix.getDiagnostics().get(0).getCode().getLeft().equals(rule) && !fix.getTitle().startsWith("Waive "))
                .map(fix -> applied(text, fix, file)).toList();
    }

    private static String waivers(String parts, String waiver) {
        return parts.replace("  - { part: knob, vendor: shop, price: 3, seen: 2031-01-02 }\n", "") + waiver;
    }

    @Test
    void a_waiver_of_a_misspelt_subject_gets_its_subject_and_keeps_the_rest() throws Exception {
        greet();
        Path more = catalog.resolve("waivers.yaml");
        String block = "waivers:\n  - rule: no-source\n    subject: part:knobb\n    because: x\n";
        open(parts, waivers(PARTS, ""));
        assertEquals(List.of(block.replace("knobb", "knob")), mended(more, block, "idle-waiver"));
    }

    @Test
    void so_does_one_in_a_line_or_in_json() throws Exception {
        greet();
        open(parts, waivers(PARTS, ""));
        Path line = catalog.resolve("line.yaml");
        String flow = "waivers:\n  - { rule: no-source, subject: \"part:knobb\", because: x }\n";
        assertEquals(List.of(flow.replace("knobb", "knob")), mended(line, flow, "idle-waiver"));
        Path other = catalog.resolve("other.json");
        String json = "{ \"waivers\": [ { \"rule\": \"no-source\", \"subject\": \"part:knobbb\", \"because\": \"x\" } ] }\n";
        assertEquals(List.of(json.replace("knobbb", "knob")), mended(other, json, "idle-waiver"));
    }

    @Test
    void a_path_is_mended_where_it_goes_wrong() throws Exception {
        greet();
        open(parts, PARTS);
        String build = "build:\n  id: one\n  platform: bench\n  parts:\n    top: riser\n    topp/bay: knob\n";
        assertEquals(List.of(build.replace("topp/", "top/")), mended(catalog.resolve("builds/one.yaml"), build, "no-such-slot"));
        String json = "{ \"build\": { \"id\": \"two\", \"platform\": \"bench\", \"parts\": { \"hand\": \"knob\", \"top\": \"riser\", \"top:0/bayy\": \"knob\" } } }";
        assertEquals(List.of(json.replace("top:0/bayy", "top/bay")), mended(catalog.resolve("builds/two.json"), json, "no-such-slot"));
    }

    @Test
    void so_is_a_path_of_what_a_platform_comes_with() throws Exception {
        greet();
        open(parts, PARTS);
        Path head = catalog.resolve("catalog.yaml");
        String text = CATALOG + "    factory:\n      top: riser\n      topp/bay: knob\n";
        assertEquals(List.of(text.replace("topp/", "top/")), mended(head, text, "factory-invalid"));
    }

    @Test
    void a_word_that_would_not_be_read_as_a_text_is_put_in_quotes() throws Exception {
        greet();
        open(catalog.resolve("odd.yaml"), "kinds: [{ id: \"45\" }, { id: \"null\" }]\n");
        String numbered = PARTS.replace("kind: frame", "kind: 45a");
        assertEquals(List.of(PARTS.replace("kind: frame", "kind: \"45\"")), mended(parts, numbered, "unknown-reference"));
        Path more = catalog.resolve("more.yaml");
        String empty = "parts:\n  - id: lever\n    kind: nul\n" + UNSOLD;
        assertEquals(List.of(empty.replace("nul", "\"null\"")), mended(more, empty, "unknown-reference"));
        Path build = catalog.resolve("builds/one.yaml");
        String old = "build:\n  id: one\n  platform: bench\n  patch: beta\n  parts: { hand: knob }\n";
        assertEquals(List.of(old.replace("beta", "\"2.0\"")), mended(build, old, "outdated-build"));
        Path quoted = catalog.resolve("builds/two.yaml");
        String single = old.replace("beta", "'1.9'").replace("one", "two");
        assertEquals(List.of(single.replace("1.9", "2.0")), mended(quoted, single, "outdated-build"));
    }

    @Test
    void what_is_written_in_several_lines_or_under_another_name_is_left_alone() throws Exception {
        greet();
        open(parts, PARTS);
        assertEquals(List.of(), mended(catalog.resolve("more.yaml"), "parts:\n  - id: lever\n    kind: |-\n      fraem\n" + UNSOLD, "unknown-reference"));
        String doubled = "zones:\n  - id: shelf\n    lable: Shelf\n    label: Board\n";
        assertEquals(List.of(), mended(catalog.resolve("zones.yaml"), doubled, "schema-mismatch"));
    }
}

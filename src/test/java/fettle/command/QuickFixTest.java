package fettle.command;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.eclipse.lsp4j.DidCloseTextDocumentParams;
import org.eclipse.lsp4j.TextDocumentIdentifier;
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
    void a_selector_gets_the_prefix_of_what_it_names() throws Exception {
        greet();
        open(parts, PARTS);
        String lever = "parts:\n  - id: lever\n    kind: grip\n    excludes: [kind:frame]\n" + UNSOLD;
        assertEquals(List.of(lever), mended(catalog.resolve("a.yaml"), lever.replace("kind:frame", "frame"), "unknown-reference"));
        assertEquals(List.of(lever), mended(catalog.resolve("b.yaml"), lever.replace("kind:frame", "kind:fraem"), "unknown-reference"));
        assertEquals(List.of(lever), mended(catalog.resolve("c.yaml"), lever.replace("kind:frame", "kinds:frame"), "schema-mismatch"));
        assertEquals(List.of(lever.replace("kind:frame", "\"kind:frame\"")), mended(catalog.resolve("d.yaml"), lever.replace("kind:frame", "\"kind: frame\""), "schema-mismatch"));
    }

    @Test
    void what_is_written_in_several_lines_or_under_another_name_is_left_alone() throws Exception {
        greet();
        open(parts, PARTS);
        assertEquals(List.of(), mended(catalog.resolve("more.yaml"), "parts:\n  - id: lever\n    kind: |-\n      fraem\n" + UNSOLD, "unknown-reference"));
        String doubled = "zones:\n  - id: shelf\n    lable: Shelf\n    label: Board\n";
        assertEquals(List.of(), mended(catalog.resolve("zones.yaml"), doubled, "schema-mismatch"));
    }

    /** What a document with a lever that nothing sells becomes by the waiver of that; nothing where none is offered. */
    private List<String> waived(String name, String text) throws Exception {
        Path file = catalog.resolve(name);
        open(file, text);
        List<String> waived = fixes(file, of(told(file, with("no-source")), "no-source").getRange()).stream()
                .filter(fix -> fix.getTitle().startsWith("Waive this no-source")).map(fix -> applied(text, fix, file)).toList();
        server.getTextDocumentService().didClose(new DidCloseTextDocumentParams(new TextDocumentIdentifier(uri(file))));
        return waived;
    }

    @Test
    void a_waiver_is_put_only_where_the_document_can_be_read_with_it() throws Exception {
        greet();
        String lever = "parts:\n  - id: lever\n    kind: grip\n" + UNSOLD;
        String waiver = "waivers:\n  - rule: no-source\n    subject: part:lever\n    because: \"\"\n";
        assertEquals(List.of(lever + waiver), waived("a.yaml", lever));
        assertEquals(List.of(lever + waiver), waived("b.yaml", lever.stripTrailing()));
        assertEquals(List.of((lever + waiver).replace("\n", "\r\n")), waived("c.yaml", lever.replace("\n", "\r\n")));
        assertEquals(List.of((lever + waiver).indent(2)), waived("d.yaml", lever.indent(2)));
        assertEquals(List.of(), waived("e.yaml", lever + "...\n"));
        String flow = "{ parts: [{ id: lever, kind: grip, mounts: [peg], stats: { mass: 0.25 } }] }\n";
        assertEquals(List.of(), waived("f.yaml", "# all\n" + flow));
        assertEquals(List.of(), waived("g.yaml", "---\n" + flow));
        String before = (lever + waiver).replace("because: \"\"", "because: known").replace("part:lever", "part:knob");
        assertEquals(List.of(before.replace("waivers:\n", waiver).replace("\n", "\r\n")), waived("h.yaml", before.replace("\n", "\r\n")));
    }

    @Test
    void a_waiver_is_put_between_brackets_too() throws Exception {
        greet();
        String lever = "parts:\n  - id: lever\n    kind: grip\n" + UNSOLD;
        String waiver = "{ rule: no-source, subject: \"part:lever\", because: \"\" }";
        assertEquals(List.of(lever + "waivers: [" + waiver + "]\n"), waived("a.yaml", lever + "waivers: []\n"));
        String known = "{ rule: no-source, subject: \"part:knob\", because: known }";
        assertEquals(List.of(lever + "waivers: [" + waiver + ", " + known + "]\n"), waived("b.yaml", lever + "waivers: [" + known + "]\n"));
        String json = "{ \"parts\": [{ \"id\": \"lever\", \"kind\": \"grip\", \"mounts\": [\"peg\"], \"stats\": { \"mass\": 0.25 } }],\n  \"waivers\": [";
        String quoted = "{ \"rule\": \"no-source\", \"subject\": \"part:lever\", \"because\": \"\" }";
        assertEquals(List.of(json + quoted + "] }\n"), waived("c.json", json + "] }\n"));
        String other = quoted.replace("lever", "knob").replace("\"\"", "\"known\"");
        assertEquals(List.of(json + "\n    " + quoted + ",\n    " + other + "\n  ] }\n"), waived("d.json", json + "\n    " + other + "\n  ] }\n"));
        assertEquals(List.of(), waived("e.json", json.substring(0, json.lastIndexOf(',')) + " }\n"));
    }
}

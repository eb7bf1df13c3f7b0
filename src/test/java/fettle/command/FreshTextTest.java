package fettle.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import org.eclipse.lsp4j.CodeAction;
import org.eclipse.lsp4j.Diagnostic;
import org.eclipse.lsp4j.Position;
import org.eclipse.lsp4j.PublishDiagnosticsParams;
import org.eclipse.lsp4j.Range;
import org.eclipse.lsp4j.TextDocumentContentChangeEvent;
import org.junit.jupiter.api.Test;

/** What is told and offered is of the text that the editor holds, however fast someone types. */
class FreshTextTest extends LanguageServerTalk {

    private static final Range TOP = new Range(new Position(0, 0), new Position(0, 0));

    @Test
    void places_that_are_told_are_of_the_version_that_is_told_with_them() throws Exception {
        greet();
        StringBuilder many = new StringBuilder(PARTS.substring(0, PARTS.indexOf("offers:")).replace("kind: frame", "kind: fraem"));
        for (int i = 0; i < 3000; i++) {
            many.append("  - { id: knob-").append(i).append(", kind: grip, mounts: [peg], stats: { mass: ").append(i).append(" } }\n");
        }
        String text = many.toString();
        open(parts, text);
        Map<Integer, Integer> lines = new HashMap<>(Map.of(1, 7));
        for (int version = 2; version < 12; version++) {
            Thread.sleep(170 + version * 10);
            text = "# one\n# two\n" + text;
            lines.put(version, 7 + 2 * (version - 1));
            change(parts, version, new TextDocumentContentChangeEvent(TOP, "# one\n# two\n"));
        }
        PublishDiagnosticsParams told;
        do {
            told = editor.published.take();
            if (told.getUri().equals(uri(parts))) {
                Diagnostic unknown = of(told.getDiagnostics(), "unknown-reference");
                assertEquals(lines.get(told.getVersion()), unknown.getRange().getStart().getLine(), "in version " + told.getVersion());
            }
        } while (!told.getUri().equals(uri(parts)) || told.getVersion() < 11);
    }

    @Test
    void someone_who_types_without_a_pause_is_told_of_it_meanwhile() throws Exception {
        greet();
        open(parts, PARTS);
        told(parts, List::isEmpty);
        change(parts, 2, new TextDocumentContentChangeEvent(PARTS.replace("kind: frame", "kind: fraem")));
        int version = 3;
        boolean found = false;
        // Key upon key, each before a pause would be long enough, until it is told or a minute's worth is typed.
        while (!found && version < 1_000) {
            change(parts, version++, new TextDocumentContentChangeEvent(TOP, "#\n"));
            PublishDiagnosticsParams told = editor.published.poll(60, TimeUnit.MILLISECONDS);
            found = told != null && told.getUri().equals(uri(parts)) && with("unknown-reference").test(told.getDiagnostics());
        }
        assertTrue(found, "nothing was told in " + version + " versions");
    }

    @Test
    void nothing_is_mended_in_a_text_that_has_not_been_looked_at_yet() throws Exception {
        greet();
        String broken = PARTS.replace("kind: frame", "kind: fraem");
        open(parts, broken);
        Range found = of(told(parts, with("unknown-reference")), "unknown-reference").getRange();
        assertFalse(fixes(parts, found).isEmpty());
        change(parts, 2, new TextDocumentContentChangeEvent(TOP, "# one\n"));
        assertEquals(List.of(), fixes(parts, found));
        Range moved = of(told(parts, with("unknown-reference").and(all -> of(all, "unknown-reference").getRange().getStart().getLine() == 8)), "unknown-reference").getRange();
        CodeAction named = fixes(parts, moved).get(0);
        assertEquals("# one\n" + PARTS, applied("# one\n" + broken, named, parts));
    }

    @Test
    void a_waiver_goes_where_the_waivers_are_by_now() throws Exception {
        greet();
        Path head = catalog.resolve("catalog.yaml");
        String waivers = CATALOG + "waivers:\n  - { rule: no-source, subject: part:lever, because: old }\n";
        open(head, waivers);
        open(parts, PARTS.replace("kind: frame", "kind: fraem"));
        Range found = of(told(parts, with("unknown-reference")), "unknown-reference").getRange();
        told(head, with("idle-waiver"));
        change(head, 2, new TextDocumentContentChangeEvent(TOP, "# one\n"));
        List<CodeAction> fixes = fixes(parts, found);
        String waived = applied("# one\n" + waivers, fixes.get(fixes.size() - 1), head);
        assertEquals("# one\n" + waivers.replace("waivers:\n", "waivers:\n  - rule: unknown-reference\n    subject: part:riser\n    because: \"\"\n"), waived);
    }
}

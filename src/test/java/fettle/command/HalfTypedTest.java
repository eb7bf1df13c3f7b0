package fettle.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.eclipse.lsp4j.DefinitionParams;
import org.eclipse.lsp4j.Diagnostic;
import org.eclipse.lsp4j.Location;
import org.eclipse.lsp4j.Position;
import org.eclipse.lsp4j.PublishDiagnosticsParams;
import org.eclipse.lsp4j.Range;
import org.eclipse.lsp4j.TextDocumentContentChangeEvent;
import org.eclipse.lsp4j.TextDocumentIdentifier;
import org.junit.jupiter.api.Test;

/** While a text can't be read to its end, since someone is typing in it, the rest of the catalog is told of as if it held what it held before. */
class HalfTypedTest extends LanguageServerTalk {

    private static final String GRIPS = """
            parts:
              - id: knob
                kind: grip
                mounts: [peg]
                stats: { mass: 0.25 }
              - id: haft
                kind: gripp
                mounts: [peg]
                stats: { mass: 0.5 }
            """;
    private static final String OFFERS = """
            parts:
              - id: riser
                kind: frame
                mounts: [plate]
                stats: { mass: 0.5 }
                slots:
                  - id: bay
                    mounts: [peg]
            offers:
              - { part: knob, vendor: shop, price: 3, seen: 2031-01-02 }
              - { part: haft, vendor: shop, price: 4, seen: 2031-01-02 }
              - { part: riser, vendor: shop, price: 5, seen: 2031-01-02 }
            """;
    private static final Range BEFORE_HAFT = new Range(new Position(5, 0), new Position(5, 0));

    private Path grips;

    private void begin() throws Exception {
        Files.writeString(parts, OFFERS);
        grips = Files.writeString(catalog.resolve("grips.yaml"), GRIPS);
        greet();
        open(grips, GRIPS);
        told(grips, with("unknown-reference"));
    }

    private static int lineOf(List<Diagnostic> diagnostics, String rule) {
        return of(diagnostics, rule).getRange().getStart().getLine();
    }

    @Test
    void only_what_is_not_closed_yet_is_told() throws Exception {
        begin();
        change(grips, 2, new TextDocumentContentChangeEvent(BEFORE_HAFT, "  - id: \"\n"));
        Set<String> rules = new TreeSet<>();
        told(grips, diagnostics -> {
            boolean half = with("unreadable-document").test(diagnostics);
            if (half) {
                diagnostics.forEach(each -> rules.add(each.getCode().getLeft()));
            }
            return half;
        });
        assertEquals(Set.of("unknown-reference", "unreadable-document"), rules);
        change(grips, 3, new TextDocumentContentChangeEvent(GRIPS.replace("gripp", "grip")));
        Set<String> elsewhere = new TreeSet<>();
        while (true) {
            PublishDiagnosticsParams next = editor.published.take();
            if (!next.getUri().equals(uri(grips))) {
                next.getDiagnostics().forEach(each -> elsewhere.add(each.getMessage().getLeft()));
            } else if (next.getVersion() == 3 && with("unknown-reference").negate().test(next.getDiagnostics())) {
                break;
            }
        }
        assertEquals(Set.of(), elsewhere);
    }

    @Test
    void what_stands_behind_what_is_typed_is_told_where_it_is_now() throws Exception {
        begin();
        change(grips, 2, new TextDocumentContentChangeEvent(BEFORE_HAFT, "  # more\n  - id: \"\n"));
        List<Diagnostic> half = told(grips, with("unreadable-document"));
        assertEquals(8, lineOf(half, "unknown-reference"));
        assertEquals(new Range(new Position(8, 10), new Position(8, 15)), of(half, "unknown-reference").getRange());
        assertEquals(new Range(new Position(8, 10), new Position(8, 15)), of(half, "unknown-reference").getRelatedInformation().get(0).getLocation().getRange());
        assertEquals(List.of(), fixes(grips, of(half, "unknown-reference").getRange()), "what would be written is reckoned from another text");
        open(parts, OFFERS);
        told(parts, List::isEmpty);
        List<? extends Location> definition = server.getTextDocumentService()
                .definition(new DefinitionParams(new TextDocumentIdentifier(uri(parts)), at(OFFERS, "part: ha"))).get().getLeft();
        assertEquals(7, definition.get(0).getRange().getStart().getLine());
    }

    @Test
    void what_is_typed_anew_is_not_told_of_as_it_was() throws Exception {
        begin();
        change(grips, 2, new TextDocumentContentChangeEvent(GRIPS.replace("kind: gripp", "kind: \"gripping")));
        assertFalse(with("unknown-reference").test(told(grips, with("unreadable-document"))));
    }

    @Test
    void a_text_that_is_emptied_holds_nothing_any_more() throws Exception {
        begin();
        change(grips, 2, new TextDocumentContentChangeEvent(""));
        told(parts, with("unknown-reference"));
        change(grips, 3, new TextDocumentContentChangeEvent("parts: [\""));
        boolean gone = false;
        boolean half = false;
        while (!gone || !half) {
            PublishDiagnosticsParams next = editor.published.take();
            gone |= next.getUri().equals(uri(parts)) && with("unknown-reference").test(next.getDiagnostics());
            half |= next.getUri().equals(uri(grips)) && with("unreadable-document").test(next.getDiagnostics());
        }
    }
}

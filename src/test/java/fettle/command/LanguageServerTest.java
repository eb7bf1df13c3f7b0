package fettle.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import org.eclipse.lsp4j.CodeAction;
import org.eclipse.lsp4j.CodeActionParams;
import org.eclipse.lsp4j.CompletionItem;
import org.eclipse.lsp4j.CompletionParams;
import org.eclipse.lsp4j.DefinitionParams;
import org.eclipse.lsp4j.Diagnostic;
import org.eclipse.lsp4j.DiagnosticSeverity;
import org.eclipse.lsp4j.DidCloseTextDocumentParams;
import org.eclipse.lsp4j.DidOpenTextDocumentParams;
import org.eclipse.lsp4j.HoverCapabilities;
import org.eclipse.lsp4j.HoverParams;
import org.eclipse.lsp4j.InitializeParams;
import org.eclipse.lsp4j.InitializeResult;
import org.eclipse.lsp4j.Location;
import org.eclipse.lsp4j.MarkupContent;
import org.eclipse.lsp4j.MarkupKind;
import org.eclipse.lsp4j.Position;
import org.eclipse.lsp4j.Range;
import org.eclipse.lsp4j.ReferenceContext;
import org.eclipse.lsp4j.ReferenceParams;
import org.eclipse.lsp4j.TextDocumentClientCapabilities;
import org.eclipse.lsp4j.TextDocumentContentChangeEvent;
import org.eclipse.lsp4j.TextDocumentIdentifier;
import org.eclipse.lsp4j.TextDocumentItem;
import org.eclipse.lsp4j.WorkspaceFolder;
import org.eclipse.lsp4j.jsonrpc.ResponseErrorException;
import org.eclipse.lsp4j.jsonrpc.messages.ResponseErrorCode;
import org.junit.jupiter.api.Test;

/** The language server as an editor meets it: real messages over its streams, by another end of the protocol. */
class LanguageServerTest extends LanguageServerTalk {

    @Test
    void it_greets_says_what_it_can_do_and_leaves_politely() throws Exception {
        InitializeResult result = greet();
        assertEquals("fettle", result.getServerInfo().getName());
        assertTrue(result.getCapabilities().getHoverProvider().getLeft());
        assertTrue(result.getCapabilities().getDefinitionProvider().getLeft());
        assertTrue(result.getCapabilities().getCompletionProvider().getTriggerCharacters().contains(":"));
        assertTrue(result.getCapabilities().getCodeActionProvider().isRight());
        server.shutdown().get();
        server.exit();
        assertEquals(0, exit.get());
    }

    @Test
    void nothing_is_answered_once_the_editor_has_asked_for_the_end() throws Exception {
        greet();
        open(parts, PARTS);
        server.shutdown().get();
        HoverParams hover = new HoverParams(new TextDocumentIdentifier(uri(parts)), new Position(0, 0));
        for (CompletableFuture<?> asked : List.of(server.getTextDocumentService().hover(hover), server.shutdown())) {
            assertRefused(ResponseErrorCode.InvalidRequest, asked);
        }
        server.exit();
        assertEquals(0, exit.get());
    }

    @Test
    void nothing_is_answered_before_the_greeting_which_comes_once() throws Exception {
        HoverParams hover = new HoverParams(new TextDocumentIdentifier(uri(parts)), new Position(0, 0));
        for (CompletableFuture<?> asked : List.of(server.getTextDocumentService().hover(hover), server.shutdown())) {
            assertRefused(ResponseErrorCode.ServerNotInitialized, asked);
        }
        greet();
        assertRefused(ResponseErrorCode.InvalidRequest, server.initialize(new InitializeParams()));
        open(parts, PARTS);
        told(parts, List::isEmpty);
        assertTrue(hover(parts, at(PARTS, "part: kn")).contains("Round knob"));
    }

    private static void assertRefused(ResponseErrorCode code, CompletableFuture<?> asked) {
        ResponseErrorException refused = (ResponseErrorException) assertThrows(ExecutionException.class, asked::get).getCause();
        assertEquals(code.getValue(), refused.getResponseError().getCode());
    }

    @Test
    void headers_may_be_written_in_any_case() throws Exception {
        greet();
        String opened = "{\"jsonrpc\":\"2.0\",\"method\":\"textDocument/didOpen\",\"params\":{\"textDocument\":"
                + "{\"uri\":\"" + uri(parts) + "\",\"languageId\":\"yaml\",\"version\":1,\"text\":\"parts: [\"}}}";
        raw("content-length: " + opened.length() + "\r\n\r\n" + opened);
        told(parts, with("unreadable-document"));
    }

    @Test
    void an_editor_that_leaves_without_a_word_is_no_success() throws Exception {
        greet();
        server.exit();
        assertEquals(1, exit.get());
    }

    @Test
    void a_broken_document_is_told_with_its_places_and_mended_as_one_types() throws Exception {
        greet();
        String broken = PARTS.replace("kind: frame", "kind: fraem");
        open(parts, broken);
        Diagnostic unknown = of(told(parts, with("unknown-reference")), "unknown-reference");
        assertEquals(range(7, 10, 15), unknown.getRange());
        assertEquals(DiagnosticSeverity.Error, unknown.getSeverity());
        assertEquals("fettle", unknown.getSource());
        assertTrue(unknown.getMessage().getLeft().startsWith("part:riser names the kind fraem, and there is none of that name\n"), unknown.getMessage().getLeft());
        assertTrue(unknown.getMessage().getLeft().contains("Write frame, if that was meant."), unknown.getMessage().getLeft());
        assertEquals(range(7, 10, 15), unknown.getRelatedInformation().get(0).getLocation().getRange());
        change(parts, 2, new TextDocumentContentChangeEvent(range(7, 12, 15), "ame"));
        assertEquals(List.of(), told(parts, with("unknown-reference").negate()));
        change(parts, 3, new TextDocumentContentChangeEvent(PARTS.replace("mass: 0.25", "mass: 0.255")));
        assertEquals(range(5, 19, 24), of(told(parts, with("needless-precision")), "needless-precision").getRange());
    }

    @Test
    void what_holds_of_all_builds_is_told_too_and_the_text_on_disk_is_left_alone() throws Exception {
        greet();
        open(parts, PARTS.replace("mounts: [plate]", "mounts: [peg]\n    needs: [[tag:none]]"));
        List<Diagnostic> dead = told(parts, with("dead-part"));
        assertEquals("riser", PARTS.lines().toList().get(of(dead, "dead-part").getRange().getStart().getLine()).replaceAll(".*id: ", ""));
        assertEquals(PARTS, Files.readString(parts));
    }

    @Test
    void a_document_that_cannot_be_read_is_told_and_hides_nothing_in_others() throws Exception {
        greet();
        Files.writeString(catalog.resolve("more.yaml"), "zones:\n  - id: shelf\n    lable: Shelf\n");
        open(parts, PARTS + "zones: [ {");
        assertEquals(16, of(told(parts, with("unreadable-document")), "unreadable-document").getRange().getStart().getLine());
        change(parts, 2, new TextDocumentContentChangeEvent(PARTS + "tags: \u00e9\ud83d\ude00"));
        told(parts, with("schema-mismatch"));
        change(parts, 3, new TextDocumentContentChangeEvent(PARTS));
        Diagnostic misspelt = of(told(catalog.resolve("more.yaml"), with("schema-mismatch")), "schema-mismatch");
        assertEquals(range(2, 4, 9), misspelt.getRange());
    }

    @Test
    void a_document_that_was_never_saved_is_told_like_any_other() throws Exception {
        greet();
        Path fresh = catalog.resolve("fresh.yaml");
        open(fresh, "zones:\n  - id: shelf\n    lable: Shelf\n");
        assertEquals(range(2, 4, 9), of(told(fresh, with("schema-mismatch")), "schema-mismatch").getRange());
        assertTrue(Files.notExists(fresh));
    }

    @Test
    void characters_outside_the_basic_plane_shift_no_place() throws Exception {
        greet();
        open(parts, PARTS.replace("- { part: riser, vendor: shop, price: 5, seen: 2031-01-02 }", "- { note: \"\ud83d\ude00\ud83d\ude00\", part: riser, vendor: shpo, price: 5 }"));
        Diagnostic unknown = of(told(parts, with("unknown-reference")), "unknown-reference");
        String line = "  - { note: \"\ud83d\ude00\ud83d\ude00\", part: riser, vendor: shpo, price: 5 }";
        assertEquals(range(15, line.indexOf("shpo"), line.indexOf("shpo") + 4), unknown.getRange());
    }

    @Test
    void a_build_is_checked_against_its_catalog() throws Exception {
        greet();
        Path build = catalog.resolve("builds/one.yaml");
        String text = "build:\n  id: one\n  platform: bench\n  patch: \"1.9\"\n  parts:\n    hand: knob\n    top: knob\n    top/bayy: knob\n";
        open(build, text);
        List<Diagnostic> found = told(build, with("does-not-fit"));
        assertEquals(range(6, 9, 13), of(found, "does-not-fit").getRange());
        assertEquals("1.9", text.lines().toList().get(of(found, "outdated-build").getRange().getStart().getLine()).replaceAll("\\D*([0-9.]+)\\D*", "$1"));
        List<CodeAction> patch = fixes(build, of(found, "outdated-build").getRange());
        assertTrue(applied(text, patch.get(0), build).contains("patch: \"2.0\""), patch.toString());
        change(build, 2, new TextDocumentContentChangeEvent(text.replace("top: knob", "top: riser")));
        List<Diagnostic> lost = told(build, with("does-not-fit").negate());
        assertEquals(range(7, 4, 12), of(lost, "no-such-slot").getRange());
        List<CodeAction> path = fixes(build, of(lost, "no-such-slot").getRange());
        assertTrue(applied(text, path.get(0), build).contains("top/bay: knob"), path.toString());
        server.getTextDocumentService().didClose(new DidCloseTextDocumentParams(new TextDocumentIdentifier(uri(build))));
        assertEquals(List.of(), told(build, List::isEmpty));
    }

    @Test
    void hovering_tells_what_is_known() throws Exception {
        greet();
        open(parts, PARTS);
        told(parts, List::isEmpty);
        String knob = hover(parts, at(PARTS, "part: kn"));
        assertTrue(knob.startsWith("```text\n") && knob.contains("knob \"Round knob\"") && knob.contains("bench/hand"), knob);
        assertTrue(hover(parts, at(PARTS, "mounts: [pe")).contains("peg"));
        assertEquals("The id of the part's kind.", hover(parts, at(PARTS, "    ki")));
        Path build = catalog.resolve("builds/one.yaml");
        String text = "build:\n  id: one\n  platform: bench\n  parts:\n    top: riser\n    top/bay: knob\n";
        open(build, text);
        assertTrue(hover(build, at(text, "top/b")).contains("riser/bay"));
    }

    @Test
    void an_editor_that_shows_no_markdown_is_answered_in_bare_text() throws Exception {
        TextDocumentClientCapabilities shows = new TextDocumentClientCapabilities();
        shows.setHover(new HoverCapabilities(List.of(MarkupKind.PLAINTEXT), false));
        greet(greeting -> {
            greeting.getCapabilities().setTextDocument(shows);
            greeting.setWorkspaceFolders(List.of(new WorkspaceFolder(folder.toUri().toString(), "work")));
        });
        open(parts, PARTS);
        told(parts, List::isEmpty);
        MarkupContent knob = server.getTextDocumentService().hover(new HoverParams(new TextDocumentIdentifier(uri(parts)), at(PARTS, "part: kn"))).get().getContents().getRight();
        assertEquals(MarkupKind.PLAINTEXT, knob.getKind());
        assertTrue(knob.getValue().contains("knob \"Round knob\"") && !knob.getValue().contains("```"), knob.getValue());
    }

    @Test
    void a_slot_is_mentioned_by_the_paths_that_lead_through_it() throws Exception {
        greet();
        open(parts, PARTS);
        told(parts, List::isEmpty);
        Path build = catalog.resolve("builds/one.yaml");
        String text = "build: { id: one, platform: bench, parts: { top: riser, top/bay: knob } }\n";
        open(build, text);
        Location top = new Location(uri(build), range(0, text.indexOf("top:"), text.indexOf("top:") + 3));
        Location bay = new Location(uri(build), range(0, text.indexOf("top/bay"), text.indexOf("top/bay") + 7));
        Location given = new Location(uri(parts), range(11, 12, 15));
        assertEquals(List.of(given, bay), mentions(build, at(text, "top/ba"), true));
        assertEquals(List.of(bay), mentions(parts, at(PARTS, "id: ba"), false));
        assertEquals(List.of(top, bay), mentions(build, at(text, "{ to"), false));
    }

    private List<? extends Location> mentions(Path file, Position position, boolean given) throws Exception {
        return server.getTextDocumentService().references(new ReferenceParams(new TextDocumentIdentifier(uri(file)), position, new ReferenceContext(given))).get();
    }

    @Test
    void definitions_and_mentions_are_found_from_catalog_and_build() throws Exception {
        greet();
        open(parts, PARTS);
        told(parts, List::isEmpty);
        Location peg = server.getTextDocumentService().definition(new DefinitionParams(new TextDocumentIdentifier(uri(parts)), at(PARTS, "mounts: [p"))).get().getLeft().get(0);
        assertEquals(new Location(uri(catalog.resolve("catalog.yaml")), range(8, 8, 11)), peg);
        List<? extends Location> mentions = server.getTextDocumentService()
                .references(new ReferenceParams(new TextDocumentIdentifier(uri(parts)), at(PARTS, "- id: kn"), new ReferenceContext(true))).get();
        assertEquals(List.of(range(1, 8, 12), range(14, 12, 16)), mentions.stream().map(Location::getRange).toList());
        Path build = catalog.resolve("builds/one.yaml");
        String text = "build: { id: one, platform: bench, parts: { top: riser, top/bay: knob } }\n";
        open(build, text);
        Location bay = server.getTextDocumentService().definition(new DefinitionParams(new TextDocumentIdentifier(uri(build)), at(text, "top/ba"))).get().getLeft().get(0);
        assertEquals(new Location(uri(parts), range(11, 12, 15)), bay);
        Files.writeString(catalog.resolve("builds/two.yaml"), "build: { id: two, platform: bench, parts: { top: knob } }\n");
        List<? extends Location> uses = server.getTextDocumentService()
                .references(new ReferenceParams(new TextDocumentIdentifier(uri(build)), at(text, "top/bay: kn"), new ReferenceContext(false))).get();
        assertEquals(List.of(
                new Location(uri(build), range(0, text.indexOf("knob"), text.indexOf("knob") + 4)), new Location(uri(catalog.resolve("builds/two.yaml")), range(0, 49, 53)),
                new Location(uri(parts), range(14, 12, 16))), uses);
    }

    @Test
    void completion_offers_what_may_stand_there_and_nothing_else() throws Exception {
        greet();
        open(parts, PARTS);
        told(parts, List::isEmpty);
        assertEquals(List.of("frame", "grip"), List.copyOf(offered(parts, at(PARTS, "kind: gr")).keySet()));
        assertEquals(List.of("peg", "plate"), List.copyOf(offered(parts, at(PARTS, "mounts: [")).keySet()));
        assertEquals("mass", offered(parts, at(PARTS, "stats: { ma")).get("mass").getTextEdit().getLeft().getNewText());
        String typing = PARTS.replace("    mounts: [plate]\n", "    mounts: [plate]\n    cl\n    excludes: [ ]\n");
        change(parts, 2, new TextDocumentContentChangeEvent(typing));
        Map<String, CompletionItem> properties = offered(parts, at(typing, "    cl"));
        assertEquals("claims: ", properties.get("claims").getTextEdit().getLeft().getNewText());
        assertTrue(properties.get("claims").getDetail().startsWith("The zones that the part takes."), properties.get("claims").getDetail());
        assertFalse(properties.containsKey("mounts"), "a property that is there already is offered again");
        String selecting = PARTS.replace("    mounts: [plate]\n", "    mounts: [plate]\n    excludes: [ ]\n");
        change(parts, 3, new TextDocumentContentChangeEvent(selecting));
        assertEquals(List.of("kind:frame", "kind:grip", "knob", "riser"), List.copyOf(offered(parts, at(selecting, "excludes: [ ")).keySet()));
        String choosing = PARTS + "attributes:\n  - id: kick\n    better: \n";
        change(parts, 4, new TextDocumentContentChangeEvent(choosing));
        assertEquals(List.of("higher", "lower", "none"), List.copyOf(offered(parts, at(choosing, "better: ")).keySet()));
    }

    @Test
    void completion_in_a_build_offers_free_slots_and_the_parts_that_fit_them() throws Exception {
        greet();
        open(parts, PARTS);
        told(parts, List::isEmpty);
        Path build = catalog.resolve("builds/one.yaml");
        String text = "build:\n  id: one\n  platform: bench\n  parts:\n    top: riser\n    ha\n";
        open(build, text);
        assertEquals(List.of("hand", "top/bay"), List.copyOf(offered(build, at(text, "    ha")).keySet()));
        String placing = text.replace("    ha\n", "    top/bay: \n");
        change(build, 2, new TextDocumentContentChangeEvent(placing));
        Map<String, CompletionItem> fitting = offered(build, at(placing, "top/bay: "));
        assertEquals(List.of("knob"), List.copyOf(fitting.keySet()));
        assertEquals("Round knob, by peg", fitting.get("knob").getDetail());
        Path json = catalog.resolve("builds/two.json");
        String half = "{ \"build\": { \"id\": \"two\", \"platform\": \"bench\", \"parts\": { \"to\" } } }";
        open(json, half);
        assertEquals(List.of("hand", "top"), List.copyOf(offered(json, at(half, "{ \"to")).keySet()));
    }

    @Test
    void quick_fixes_write_the_name_that_was_meant_or_a_waiver() throws Exception {
        greet();
        String broken = PARTS.replace("kind: frame", "kind: fraem").replace("    label: Round", "    lable: Round");
        open(parts, broken);
        List<Diagnostic> found = told(parts, with("unknown-reference").and(with("schema-mismatch")));
        List<CodeAction> name = fixes(parts, of(found, "unknown-reference").getRange());
        assertEquals("Write frame", name.get(0).getTitle());
        assertTrue(applied(broken, name.get(0), parts).contains("kind: frame"));
        List<CodeAction> property = fixes(parts, of(found, "schema-mismatch").getRange());
        assertEquals(List.of("Write label"), property.stream().map(CodeAction::getTitle).toList());
        assertTrue(applied(broken, property.get(0), parts).contains("    label: Round"));
        CodeAction waiver = name.get(name.size() - 1);
        assertEquals("Waive this unknown-reference, and write down why", waiver.getTitle());
        String waived = applied(broken, waiver, parts);
        assertTrue(waived.endsWith("waivers:\n  - rule: unknown-reference\n    subject: part:riser\n    because: \"\"\n"), waived);
        change(parts, 2, new TextDocumentContentChangeEvent(waived.replace("because: \"\"", "because: known")));
        told(parts, with("unknown-reference").negate());
    }

    @Test
    void a_part_that_is_written_where_its_slot_is_not_can_be_put_where_it_is() throws Exception {
        greet();
        open(parts, PARTS);
        told(parts, List::isEmpty);
        Path build = catalog.resolve("builds/one.yaml");
        String text = "build:\n  id: one\n  platform: bench\n  owned: [riser, knob]\n  parts:\n    top: riser\n    'bay': knob\n";
        open(build, text);
        List<CodeAction> offered = fixes(build, of(told(build, with("no-such-slot")), "no-such-slot").getRange());
        assertEquals(List.of("Write top/bay"), offered.stream().map(CodeAction::getTitle).toList());
        assertEquals(text.replace("'bay'", "'top/bay'"), applied(text, offered.get(0), build));
    }

    @Test
    void documents_of_no_catalog_and_no_file_are_passed_over() throws Exception {
        greet();
        server.getTextDocumentService().didOpen(new DidOpenTextDocumentParams(new TextDocumentItem("untitled:Untitled-1", "yaml", 1, "parts: [")));
        server.getTextDocumentService().didOpen(new DidOpenTextDocumentParams(new TextDocumentItem("::not a uri", "yaml", 1, "parts: [")));
        assertEquals(List.of(), server.getTextDocumentService().completion(new CompletionParams(new TextDocumentIdentifier("untitled:Untitled-1"), new Position(0, 3))).get().getLeft());
        assertEquals(null, server.getTextDocumentService().hover(new HoverParams(new TextDocumentIdentifier(uri(parts)), new Position(99999, -5))).get());
        open(parts, PARTS);
        told(parts, List::isEmpty);
        change(parts, 2, new TextDocumentContentChangeEvent(new Range(new Position(-4, 900), new Position(1 << 30, 1 << 30)), "parts: ["));
        told(parts, with("unreadable-document"));
        assertEquals(List.of(), List.copyOf(editor.logged));
    }

    @Test
    void hostile_messages_are_survived() throws Exception {
        greet();
        raw("Content-Length: 7\r\n\r\n{\"oops\"");
        raw("Content-Length: 2\r\n\r\n[]");
        raw("Content-Length: nonsense\r\nStrange\r\n\r\n");
        raw("Content-Length: 4\r\nContent-Type: text; charset=no-such-charset\r\n\r\n{{{{");
        body("{\"jsonrpc\":\"2.0\",\"id\":{},\"method\":7}");
        body("{\"jsonrpc\":\"2.0\",\"method\":\"textDocument/didOpen\",\"params\":null}");
        body("{\"jsonrpc\":\"2.0\",\"method\":\"textDocument/didOpen\",\"params\":{\"textDocument\":{}}}");
        body("{\"jsonrpc\":\"2.0\",\"method\":\"textDocument/didChange\",\"params\":{\"contentChanges\":\"all\"}}");
        body("{\"jsonrpc\":\"2.0\",\"method\":\"textDocument/didChange\",\"params\":" + "[".repeat(50_000) + "]".repeat(50_000) + "}");
        body("{\"jsonrpc\":\"2.0\",\"method\":\"no/such/thing\",\"params\":{}}");
        body("{\"jsonrpc\":\"2.0\",\"id\":\"made-up\",\"result\":{}}");
        open(parts, "x: ".repeat(10_000) + "[".repeat(10_000));
        told(parts, with("unreadable-document"));
        change(parts, 2, new TextDocumentContentChangeEvent(PARTS));
        assertEquals(List.of(), told(parts, List::isEmpty));
        assertTrue(hover(parts, at(PARTS, "part: kn")).contains("Round knob"));
    }

    @Test
    void a_request_that_is_not_known_is_answered_so() throws Exception {
        greet();
        CompletableFuture<Object> strange = server.getWorkspaceService().executeCommand(new org.eclipse.lsp4j.ExecuteCommandParams("nothing", List.of()));
        try {
            strange.get();
            assertFalse(true, "a command that is not there was carried out");
        } catch (ExecutionException refused) {
            assertFalse(refused.getMessage().contains("\tat "), refused.getMessage());
            assertEquals(ResponseErrorCode.MethodNotFound.getValue(),
                    ((ResponseErrorException) refused.getCause()).getResponseError().getCode());
        }
    }

    @Test
    void a_request_that_names_no_document_or_place_is_refused_and_no_fault() throws Exception {
        greet();
        HoverParams nowhere = new HoverParams();
        nowhere.setTextDocument(new TextDocumentIdentifier(uri(parts)));
        for (HoverParams asked : Arrays.asList(null, new HoverParams(), nowhere)) {
            ExecutionException refused = assertThrows(ExecutionException.class, () -> server.getTextDocumentService().hover(asked).get());
            assertEquals(ResponseErrorCode.InvalidParams.getValue(),
                    ((ResponseErrorException) refused.getCause()).getResponseError().getCode());
        }
        ExecutionException refused = assertThrows(ExecutionException.class, () -> server.getTextDocumentService().codeAction(new CodeActionParams()).get());
        assertTrue(refused.getMessage().contains("The request names no range."), refused.getMessage());
        open(parts, PARTS);
        told(parts, List::isEmpty);
        assertTrue(hover(parts, at(PARTS, "part: kn")).contains("Round knob"));
    }
}

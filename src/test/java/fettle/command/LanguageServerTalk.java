package fettle.command;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.PipedInputStream;
import java.io.PipedOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.eclipse.lsp4j.ClientCapabilities;
import org.eclipse.lsp4j.CodeAction;
import org.eclipse.lsp4j.CodeActionContext;
import org.eclipse.lsp4j.CodeActionParams;
import org.eclipse.lsp4j.CompletionItem;
import org.eclipse.lsp4j.CompletionParams;
import org.eclipse.lsp4j.Diagnostic;
import org.eclipse.lsp4j.DidChangeTextDocumentParams;
import org.eclipse.lsp4j.DidOpenTextDocumentParams;
import org.eclipse.lsp4j.HoverParams;
import org.eclipse.lsp4j.InitializeParams;
import org.eclipse.lsp4j.InitializeResult;
import org.eclipse.lsp4j.InitializedParams;
import org.eclipse.lsp4j.MessageActionItem;
import org.eclipse.lsp4j.MessageParams;
import org.eclipse.lsp4j.Position;
import org.eclipse.lsp4j.PublishDiagnosticsParams;
import org.eclipse.lsp4j.Range;
import org.eclipse.lsp4j.ShowMessageRequestParams;
import org.eclipse.lsp4j.TextDocumentContentChangeEvent;
import org.eclipse.lsp4j.TextDocumentIdentifier;
import org.eclipse.lsp4j.TextDocumentItem;
import org.eclipse.lsp4j.TextEdit;
import org.eclipse.lsp4j.VersionedTextDocumentIdentifier;
import org.eclipse.lsp4j.WorkspaceFolder;
import org.eclipse.lsp4j.jsonrpc.Launcher;
import org.eclipse.lsp4j.launch.LSPLauncher;
import org.eclipse.lsp4j.services.LanguageClient;
import org.eclipse.lsp4j.services.LanguageServer;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** One end of a talk with the language server: a small catalog, and real messages over its streams, by the protocol's own library. */
@Timeout(180)
abstract class LanguageServerTalk {

    static final String CATALOG = """
            catalog: { id: small, patch: "2.0", released: 2031-01-01, currency: coin }
            currencies: [{ id: coin, rate: 1 }]
            vendors: [{ id: shop, tiers: 0 }]
            attributes: [{ id: mass, unit: kg, better: lower, combine: sum, decimals: 2, shown: 1 }]
            kinds:
              - { id: grip, role: true }
              - { id: frame }
            mounts:
              - id: peg
              - id: plate
            platforms:
              - id: bench
                stats: { mass: 2 }
                slots:
                  - id: hand
                    mounts: [peg]
                  - id: top
                    mounts: [plate]
            """;

    static final String PARTS = """
            parts:
              - id: knob
                label: Round knob
                kind: grip
                mounts: [peg]
                stats: { mass: 0.25 }
              - id: riser
                kind: frame
                mounts: [plate]
                stats: { mass: 0.5 }
                slots:
                  - id: bay
                    mounts: [peg]
            offers:
              - { part: knob, vendor: shop, price: 3, seen: 2031-01-02 }
              - { part: riser, vendor: shop, price: 5, seen: 2031-01-02 }
            """;

    /** What an editor is told, in the order in which it is told. */
    static final class Editor implements LanguageClient {

        final LinkedBlockingQueue<PublishDiagnosticsParams> published = new LinkedBlockingQueue<>();
        final LinkedBlockingQueue<String> logged = new LinkedBlockingQueue<>();

        @Override
        public void publishDiagnostics(PublishDiagnosticsParams said) {
            published.add(said);
        }

        @Override
        public void logMessage(MessageParams said) {
            logged.add(said.getMessage());
        }

        @Override
        public void telemetryEvent(Object said) {
            logged.add("telemetry");
        }

        @Override
        public void showMessage(MessageParams said) {
            logged.add(said.getMessage());
        }

        @Override
        public CompletableFuture<MessageActionItem> showMessageRequest(ShowMessageRequestParams said) {
            return CompletableFuture.completedFuture(null);
        }
    }

    @TempDir
    Path folder;

    final Editor editor = new Editor();
    final CompletableFuture<Integer> exit = new CompletableFuture<>();
    final ByteArrayOutputStream err = new ByteArrayOutputStream();
    OutputStream wire;
    LanguageServer server;
    Path catalog;
    Path parts;

    @BeforeEach
    void start() throws IOException {
        catalog = folder.resolve("small");
        Files.createDirectories(catalog.resolve("builds"));
        Files.writeString(catalog.resolve("catalog.yaml"), CATALOG);
        parts = Files.writeString(catalog.resolve("parts.yaml"), PARTS);
        PipedInputStream toServer = new PipedInputStream(1 << 20);
        PipedInputStream toEditor = new PipedInputStream(1 << 20);
        wire = new PipedOutputStream(toServer);
        PrintStream out = new PrintStream(new PipedOutputStream(toEditor), true, StandardCharsets.UTF_8);
        Thread serving = new Thread(() -> exit.complete(
                Main.run(new String[] {"language-server", "--stdio"}, new Streams(toServer, out, new PrintStream(err, true, StandardCharsets.UTF_8), false))));
        serving.setDaemon(true);
        serving.start();
        Launcher<LanguageServer> launcher = LSPLauncher.createClientLauncher(editor, toEditor, wire);
        launcher.startListening();
        server = launcher.getRemoteProxy();
    }

    @AfterEach
    void the_editor_goes_away() throws Exception {
        wire.close();
        exit.get(60, TimeUnit.SECONDS);
        assertEquals("", err.toString(StandardCharsets.UTF_8));
    }

    InitializeResult greet() throws Exception {
        return greet(greeting -> greeting.setWorkspaceFolders(List.of(new WorkspaceFolder(folder.toUri().toString(), "work"))));
    }

    InitializeResult greet(Consumer<InitializeParams> more) throws Exception {
        InitializeParams greeting = new InitializeParams();
        greeting.setCapabilities(new ClientCapabilities());
        more.accept(greeting);
        InitializeResult result = server.initialize(greeting).get();
        server.initialized(new InitializedParams());
        return result;
    }

    static String uri(Path file) {
        return file.toUri().toString();
    }

    void open(Path file, String text) {
        server.getTextDocumentService().didOpen(new DidOpenTextDocumentParams(new TextDocumentItem(uri(file), "yaml", 1, text)));
    }

    void change(Path file, int version, TextDocumentContentChangeEvent... changes) {
        server.getTextDocumentService().didChange(new DidChangeTextDocumentParams(new VersionedTextDocumentIdentifier(uri(file), version), List.of(changes)));
    }

    /** The first that is told of a file and is as wanted; what is told before is passed over, since a check tells in two steps. */
    List<Diagnostic> told(Path file, Predicate<List<Diagnostic>> wanted) throws InterruptedException {
        while (true) {
            PublishDiagnosticsParams next = editor.published.take();
            if (next.getUri().equals(uri(file)) && wanted.test(next.getDiagnostics())) {
                return next.getDiagnostics();
            }
        }
    }

    static Predicate<List<Diagnostic>> with(String rule) {
        return diagnostics -> diagnostics.stream().anyMatch(each -> rule.equals(each.getCode().getLeft()));
    }

    static Diagnostic of(List<Diagnostic> diagnostics, String rule) {
        return diagnostics.stream().filter(each -> rule.equals(each.getCode().getLeft())).findFirst().orElseThrow();
    }

    static Position at(String text, String before) {
        int offset = text.indexOf(before) + before.length();
        int line = (int) text.substring(0, offset).chars().filter(each -> each == '\n').count();
        return new Position(line, offset - text.lastIndexOf('\n', offset - 1) - 1);
    }

    static Range range(int line, int from, int to) {
        return new Range(new Position(line, from), new Position(line, to));
    }

    Map<String, CompletionItem> offered(Path file, Position position) throws Exception {
        return server.getTextDocumentService().completion(new CompletionParams(new TextDocumentIdentifier(uri(file)), position)).get().getLeft().stream()
                .collect(Collectors.toMap(CompletionItem::getLabel, item -> item, (one, other) -> one, TreeMap::new));
    }

    String hover(Path file, Position position) throws Exception {
        return server.getTextDocumentService().hover(new HoverParams(new TextDocumentIdentifier(uri(file)), position)).get().getContents().getRight().getValue();
    }

    List<CodeAction> fixes(Path file, Range range) throws Exception {
        return server.getTextDocumentService()
                .codeAction(new CodeActionParams(new TextDocumentIdentifier(uri(file)), range, new CodeActionContext(List.of()))).get().stream()
                .map(each -> each.getRight()).toList();
    }

    static String applied(String text, CodeAction action, Path file) {
        return replaced(text, action.getEdit().getChanges().get(uri(file)).get(0));
    }

    static String replaced(String text, TextEdit edit) {
        String[] lines = text.split("\n", -1);
        int from = offset(lines, edit.getRange().getStart());
        int to = offset(lines, edit.getRange().getEnd());
        return text.substring(0, from) + edit.getNewText() + text.substring(to);
    }

    static int offset(String[] lines, Position position) {
        int offset = position.getCharacter();
        for (int i = 0; i < position.getLine(); i++) {
            offset += lines[i].length() + 1;
        }
        return offset;
    }

    void body(String json) throws IOException {
        raw("Content-Length: " + json.getBytes(StandardCharsets.UTF_8).length + "\r\n\r\n" + json);
    }

    void raw(String message) throws IOException {
        wire.write(message.getBytes(StandardCharsets.UTF_8));
        wire.flush();
    }
}

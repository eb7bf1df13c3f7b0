package fettle.editor;

import fettle.engine.RuleBase;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.function.Function;
import java.util.stream.Stream;
import org.eclipse.lsp4j.ClientCapabilities;
import org.eclipse.lsp4j.CodeActionKind;
import org.eclipse.lsp4j.CodeActionOptions;
import org.eclipse.lsp4j.CompletionOptions;
import org.eclipse.lsp4j.DidChangeWatchedFilesRegistrationOptions;
import org.eclipse.lsp4j.FileSystemWatcher;
import org.eclipse.lsp4j.HoverCapabilities;
import org.eclipse.lsp4j.InitializeParams;
import org.eclipse.lsp4j.InitializeResult;
import org.eclipse.lsp4j.InitializedParams;
import org.eclipse.lsp4j.MarkupKind;
import org.eclipse.lsp4j.Registration;
import org.eclipse.lsp4j.RegistrationParams;
import org.eclipse.lsp4j.ServerCapabilities;
import org.eclipse.lsp4j.ServerInfo;
import org.eclipse.lsp4j.SetTraceParams;
import org.eclipse.lsp4j.TextDocumentClientCapabilities;
import org.eclipse.lsp4j.TextDocumentSyncKind;
import org.eclipse.lsp4j.TextDocumentSyncOptions;
import org.eclipse.lsp4j.WorkspaceFolder;
import org.eclipse.lsp4j.jsonrpc.Launcher;
import org.eclipse.lsp4j.jsonrpc.MessageConsumer;
import org.eclipse.lsp4j.jsonrpc.MessageProducer;
import org.eclipse.lsp4j.jsonrpc.RemoteEndpoint;
import org.eclipse.lsp4j.jsonrpc.ResponseErrorException;
import org.eclipse.lsp4j.jsonrpc.json.ConcurrentMessageProcessor;
import org.eclipse.lsp4j.jsonrpc.json.MessageJsonHandler;
import org.eclipse.lsp4j.jsonrpc.messages.Either;
import org.eclipse.lsp4j.jsonrpc.messages.ResponseError;
import org.eclipse.lsp4j.jsonrpc.messages.ResponseErrorCode;
import org.eclipse.lsp4j.services.LanguageClient;
import org.eclipse.lsp4j.services.LanguageServer;
import org.eclipse.lsp4j.services.TextDocumentService;
import org.eclipse.lsp4j.services.WorkspaceService;

/** Speaks the Language Server Protocol (3.17) with one editor, from its greeting to its leave. */
public final class EditorServer implements LanguageServer {

    private final Session session;
    private final Requests requests;
    private final String version;
    private final CompletableFuture<Boolean> left = new CompletableFuture<>();
    private Optional<LanguageClient> client = Optional.empty();
    private boolean watches;
    private boolean done;

    private EditorServer(Session session, String version) {
        this.session = session;
        this.requests = new Requests(session);
        this.version = version;
    }

    /**
     * Serves an editor until it leaves or goes away.
     *
     * @param catalog the one catalog to look at; found around each document where it is not named
     * @param version of the program
     * @param told puts a fault of the program into one sentence
     * @return whether the editor took its leave as the protocol asks
     */
    public static boolean serve(InputStream in, OutputStream out, RuleBase rules, Optional<Path> catalog, String version, Function<Throwable, String> told) {
        EditorServer server = new EditorServer(new Session(rules, catalog.map(path -> path.toAbsolutePath().normalize()), told), version);
        ExecutorService reading = Executors.newCachedThreadPool(work -> {
            Thread thread = new Thread(work, "messages");
            thread.setDaemon(true);
            return thread;
        });
        Launcher<LanguageClient> launcher = new Wiring()
                .setLocalService(server)
                .setRemoteInterface(LanguageClient.class)
                .setInput(in)
                .setOutput(out)
                .setExecutorService(reading)
                .setExceptionHandler(fault -> answered(fault, told))
                .create();
        server.client = Optional.of(launcher.getRemoteProxy());
        server.session.connect(launcher.getRemoteProxy());
        Future<Void> listening = launcher.startListening();
        reading.execute(() -> {
            try {
                listening.get();
            } catch (InterruptedException | ExecutionException gone) {
                server.left.complete(false);
            }
            server.left.complete(false);
        });
        boolean politely = server.left.join();
        server.session.end();
        reading.shutdownNow();
        return politely;
    }

    /** Connects as the library does, but for how messages are taken off the stream. */
    private static final class Wiring extends Launcher.Builder<LanguageClient> {

        private Optional<RemoteEndpoint> endpoint = Optional.empty();

        @Override
        protected RemoteEndpoint createRemoteEndpoint(MessageJsonHandler reader) {
            RemoteEndpoint made = super.createRemoteEndpoint(reader);
            endpoint = Optional.of(made);
            return made;
        }

        @Override
        protected ConcurrentMessageProcessor createMessageProcessor(MessageProducer usual, MessageConsumer consumer, LanguageClient editor) {
            RemoteEndpoint made = endpoint.orElseThrow();
            return super.createMessageProcessor(new Messages(input, made.getJsonHandler(), made), consumer, editor);
        }
    }

    private static ResponseError answered(Throwable fault, Function<Throwable, String> told) {
        Throwable cause = fault;
        while (cause.getCause() != null && !(cause instanceof ResponseErrorException)) {
            cause = cause.getCause();
        }
        if (leftOut(cause)) {
            return new ResponseError(ResponseErrorCode.MethodNotFound, "Fettle doesn't answer to this method.", null);
        }
        return cause instanceof ResponseErrorException known ? known.getResponseError() : new ResponseError(ResponseErrorCode.InternalError, told.apply(cause), null);
    }

    /** Whether it is what the library throws for a method of the protocol that a server doesn't have; the same from anywhere else is a fault. */
    private static boolean leftOut(Throwable cause) {
        StackTraceElement[] trace = cause.getStackTrace();
        return cause instanceof UnsupportedOperationException && trace.length > 0 && trace[0].getClassName().startsWith(LanguageServer.class.getPackageName());
    }

    @Override
    public CompletableFuture<InitializeResult> initialize(InitializeParams said) {
        requests.begin();
        session.greet(folders(said), plain(said));
        watches = said.getCapabilities() != null && said.getCapabilities().getWorkspace() != null
                && said.getCapabilities().getWorkspace().getDidChangeWatchedFiles() != null
                && Boolean.TRUE.equals(said.getCapabilities().getWorkspace().getDidChangeWatchedFiles().getDynamicRegistration());
        ServerCapabilities can = new ServerCapabilities();
        TextDocumentSyncOptions sync = new TextDocumentSyncOptions();
        sync.setOpenClose(true);
        sync.setChange(TextDocumentSyncKind.Incremental);
        sync.setSave(true);
        can.setTextDocumentSync(sync);
        can.setHoverProvider(true);
        can.setDefinitionProvider(true);
        can.setReferencesProvider(true);
        can.setCompletionProvider(new CompletionOptions(false, List.of(":", "\"", "/")));
        can.setCodeActionProvider(new CodeActionOptions(List.of(CodeActionKind.QuickFix)));
        return CompletableFuture.completedFuture(new InitializeResult(can, new ServerInfo("fettle", version)));
    }

    /** Whether the editor says what it can show, and leaves Markdown out. */
    private static boolean plain(InitializeParams said) {
        return Optional.ofNullable(said.getCapabilities()).map(ClientCapabilities::getTextDocument).map(TextDocumentClientCapabilities::getHover)
                .map(HoverCapabilities::getContentFormat).filter(shown -> !shown.isEmpty() && !shown.contains(MarkupKind.MARKDOWN)).isPresent();
    }

    /** The folders that are open; an editor that knows of one only may name it in the way of older protocols. */
    @SuppressWarnings("deprecation")
    private static List<Path> folders(InitializeParams said) {
        List<WorkspaceFolder> folders = Optional.ofNullable(said.getWorkspaceFolders()).orElse(List.of());
        Stream<String> named = folders.isEmpty() ? Optional.ofNullable(said.getRootUri()).stream() : folders.stream().map(WorkspaceFolder::getUri);
        return named.flatMap(folder -> Session.file(folder).stream()).toList();
    }

    /** Asks to be told of saves by others: a file may change that no one has open. */
    @Override
    public void initialized(InitializedParams said) {
        if (watches) {
            FileSystemWatcher files = new FileSystemWatcher(Either.forLeft("**/*.{json,yaml,yml}"));
            Registration wish = new Registration("files", "workspace/didChangeWatchedFiles", new DidChangeWatchedFilesRegistrationOptions(List.of(files)));
            client.ifPresent(editor -> editor.registerCapability(new RegistrationParams(List.of(wish))));
        }
    }

    @Override
    public CompletableFuture<Object> shutdown() {
        requests.refuseOutOfTurn();
        requests.end();
        done = true;
        return CompletableFuture.completedFuture(null);
    }

    @Override
    public void exit() {
        left.complete(done);
    }

    @Override
    public void setTrace(SetTraceParams said) {
        // There is nothing to trace that the findings do not say.
    }

    @Override
    public TextDocumentService getTextDocumentService() {
        return requests;
    }

    @Override
    public WorkspaceService getWorkspaceService() {
        return requests;
    }
}

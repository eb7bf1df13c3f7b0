package fettle.editor;

import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.function.BiFunction;
import java.util.function.Function;
import org.eclipse.lsp4j.CodeAction;
import org.eclipse.lsp4j.CodeActionParams;
import org.eclipse.lsp4j.Command;
import org.eclipse.lsp4j.CompletionItem;
import org.eclipse.lsp4j.CompletionList;
import org.eclipse.lsp4j.CompletionParams;
import org.eclipse.lsp4j.DefinitionParams;
import org.eclipse.lsp4j.DidChangeConfigurationParams;
import org.eclipse.lsp4j.DidChangeTextDocumentParams;
import org.eclipse.lsp4j.DidChangeWatchedFilesParams;
import org.eclipse.lsp4j.DidCloseTextDocumentParams;
import org.eclipse.lsp4j.DidOpenTextDocumentParams;
import org.eclipse.lsp4j.DidSaveTextDocumentParams;
import org.eclipse.lsp4j.Hover;
import org.eclipse.lsp4j.HoverParams;
import org.eclipse.lsp4j.Location;
import org.eclipse.lsp4j.LocationLink;
import org.eclipse.lsp4j.ReferenceParams;
import org.eclipse.lsp4j.TextDocumentContentChangeEvent;
import org.eclipse.lsp4j.TextDocumentIdentifier;
import org.eclipse.lsp4j.TextDocumentItem;
import org.eclipse.lsp4j.TextDocumentPositionParams;
import org.eclipse.lsp4j.jsonrpc.ResponseErrorException;
import org.eclipse.lsp4j.jsonrpc.messages.Either;
import org.eclipse.lsp4j.jsonrpc.messages.ResponseError;
import org.eclipse.lsp4j.jsonrpc.messages.ResponseErrorCode;
import org.eclipse.lsp4j.services.TextDocumentService;
import org.eclipse.lsp4j.services.WorkspaceService;

/** Takes what an editor sends about documents, and hands it to whoever answers. What concerns no known document is passed over. */
final class Requests implements TextDocumentService, WorkspaceService {

    private final Session session;
    private volatile boolean greeted;
    private volatile boolean over;

    Requests(Session session) {
        this.session = session;
    }

    /** Answers from now on, which the protocol allows once the editor has greeted, and greeted once. */
    void begin() {
        refuseAtTheEnd();
        if (greeted) {
            throw refused(ResponseErrorCode.InvalidRequest, "The editor has greeted already.");
        }
        greeted = true;
    }

    /** Answers nothing more, as the protocol asks once the editor has said that it is about to leave. */
    void end() {
        over = true;
    }

    /** Refuses whatever is asked before the greeting, or after the end. */
    void refuseOutOfTurn() {
        refuseAtTheEnd();
        if (!greeted) {
            throw refused(ResponseErrorCode.ServerNotInitialized, "The editor has not greeted yet; send initialize first.");
        }
    }

    private void refuseAtTheEnd() {
        if (over) {
            throw refused(ResponseErrorCode.InvalidRequest, "The editor has asked for the end; nothing is answered after that.");
        }
    }

    private static ResponseErrorException refused(ResponseErrorCode code, String why) {
        return new ResponseErrorException(new ResponseError(code, why, null));
    }

    @Override
    public void didOpen(DidOpenTextDocumentParams said) {
        if (!greeted) {
            return;
        }
        TextDocumentItem item = said.getTextDocument();
        Session.file(item.getUri()).ifPresent(file -> session.open(new OpenText(file, item.getUri(), item.getVersion(), new Lines(item.getText()))));
    }

    @Override
    public void didChange(DidChangeTextDocumentParams said) {
        session.open(said.getTextDocument().getUri()).ifPresent(open -> {
            String text = open.lines().text();
            for (TextDocumentContentChangeEvent change : said.getContentChanges()) {
                text = change.getRange() == null ? change.getText() : new Lines(text).with(change.getRange(), change.getText());
            }
            Integer version = said.getTextDocument().getVersion();
            session.open(open.with(text, version == null ? open.version() + 1 : version));
        });
    }

    @Override
    public void didClose(DidCloseTextDocumentParams said) {
        session.close(said.getTextDocument().getUri());
    }

    @Override
    public void didSave(DidSaveTextDocumentParams said) {
        Session.file(said.getTextDocument().getUri()).ifPresent(session::changed);
    }

    @Override
    public void didChangeConfiguration(DidChangeConfigurationParams said) {
        session.changedAll();
    }

    @Override
    public void didChangeWatchedFiles(DidChangeWatchedFilesParams said) {
        session.changedAll();
    }

    /** An answer about an open document whose catalog has been read; {@code otherwise} where there is none. */
    private <T> CompletableFuture<T> answer(String uri, T otherwise, BiFunction<OpenText, Desk, T> work) {
        refuseOutOfTurn();
        return session.answer(() -> session.open(uri).flatMap(text -> session.desk(text.file()).map(desk -> work.apply(text, desk))).orElse(otherwise));
    }

    /** The document that a request is about; a request that names none, or no place in it, is refused as one. */
    private static String document(TextDocumentPositionParams asked) {
        given(given(asked, "document").getPosition(), "position");
        return document(asked.getTextDocument());
    }

    private static String document(TextDocumentIdentifier named) {
        return given(given(named, "document").getUri(), "document");
    }

    private static <T> T given(T value, String what) {
        if (value == null) {
            throw refused(ResponseErrorCode.InvalidParams, "The request names no " + what + ".");
        }
        return value;
    }

    private <T> BiFunction<OpenText, Desk, T> known(T otherwise, Function<Answers, T> work) {
        return (text, desk) -> desk.reading()
                .map(reading -> work.apply(new Answers(session, desk, text, reading))).orElse(otherwise);
    }

    @Override
    public CompletableFuture<Hover> hover(HoverParams asked) {
        // The protocol's word for nothing to show is null.
        return answer(document(asked), null, known(null, answers -> answers.hover(asked.getPosition()).orElse(null)));
    }

    @Override
    public CompletableFuture<Either<List<? extends Location>, List<? extends LocationLink>>> definition(DefinitionParams asked) {
        Either<List<? extends Location>, List<? extends LocationLink>> nowhere = Either.forLeft(List.of());
        return answer(document(asked), nowhere, known(nowhere, answers -> Either.forLeft(answers.definition(asked.getPosition()))));
    }

    @Override
    public CompletableFuture<List<? extends Location>> references(ReferenceParams asked) {
        String document = document(asked);
        boolean declared = asked.getContext() != null && asked.getContext().isIncludeDeclaration();
        return answer(document, List.of(), known(List.of(), answers -> answers.references(asked.getPosition(), declared)));
    }

    @Override
    public CompletableFuture<Either<List<CompletionItem>, CompletionList>> completion(CompletionParams asked) {
        Either<List<CompletionItem>, CompletionList> nothing = Either.forLeft(List.of());
        return answer(document(asked), nothing, (text, desk) -> desk.reading()
                .<Either<List<CompletionItem>, CompletionList>>map(reading -> Either.forLeft(
                        new Suggestions(session, text, Session.holdsBuilds(desk, text.file()), reading).at(asked.getPosition())))
                .orElse(nothing));
    }

    @Override
    public CompletableFuture<List<Either<Command, CodeAction>>> codeAction(CodeActionParams asked) {
        given(given(asked, "document").getRange(), "range");
        return answer(document(asked.getTextDocument()), List.of(), (text, desk) -> new Fixes(session, desk, text).in(asked.getRange()).stream()
                .map(Either::<Command, CodeAction>forRight).toList());
    }
}

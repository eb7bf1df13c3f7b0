package fettle.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.eclipse.lsp4j.DidChangeWatchedFilesParams;
import org.eclipse.lsp4j.FileChangeType;
import org.eclipse.lsp4j.FileEvent;
import org.eclipse.lsp4j.TextDocumentContentChangeEvent;
import org.eclipse.lsp4j.WorkspaceFolder;
import org.junit.jupiter.api.Test;

/** Which catalog a document belongs to, while catalogs begin, break and end. */
class CatalogHomeTest extends LanguageServerTalk {

    private static final String BROKEN = PARTS.replace("kind: frame", "kind: fraem");
    private static final String OPEN_ENDED = CATALOG.replace("patch: \"2.0\"", "patch: \"2.0");

    private void changedOutside(Path file, FileChangeType how) {
        server.getWorkspaceService().didChangeWatchedFiles(new DidChangeWatchedFilesParams(List.of(new FileEvent(uri(file), how))));
    }

    @Test
    void a_catalog_stays_one_while_its_head_is_broken() throws Exception {
        greet();
        Path head = catalog.resolve("catalog.yaml");
        open(head, CATALOG);
        open(parts, PARTS);
        told(parts, List::isEmpty);
        Files.writeString(head, OPEN_ENDED);
        change(head, 2, new TextDocumentContentChangeEvent(OPEN_ENDED));
        told(head, with("unreadable-document"));
        change(head, 3, new TextDocumentContentChangeEvent(CATALOG.replace("catalog:", "catalo:")));
        told(head, with("schema-mismatch"));
        change(head, 4, new TextDocumentContentChangeEvent(CATALOG));
        told(head, List::isEmpty);
        assertTrue(hover(parts, at(PARTS, "part: kn")).contains("Round knob"));
    }

    @Test
    void a_head_that_cannot_be_read_is_told_of_from_the_start() throws Exception {
        Path head = Files.writeString(catalog.resolve("catalog.yaml"), OPEN_ENDED);
        greet();
        open(head, OPEN_ENDED);
        told(head, with("unreadable-document"));
    }

    @Test
    void a_head_that_is_not_saved_yet_begins_a_catalog() throws Exception {
        greet();
        Path fresh = Files.createDirectories(folder.resolve("fresh"));
        Path head = fresh.resolve("catalog.yaml");
        open(head, "catalog: { id: fresh, patc: \"1\" }\n");
        told(head, with("schema-mismatch"));
        assertTrue(editor.published.stream().noneMatch(said -> said.getUri().equals(uri(fresh))), "something is told of the folder");
        assertTrue(offered(head, at("catalog: { id: fresh, patc", "catalog: { id: fresh, pa")).containsKey("patch"));
    }

    @Test
    void a_head_that_comes_from_outside_begins_a_catalog_and_one_that_goes_ends_it() throws Exception {
        Path head = catalog.resolve("catalog.yaml");
        Files.delete(head);
        greet();
        open(parts, BROKEN);
        Files.writeString(head, CATALOG);
        changedOutside(head, FileChangeType.Created);
        told(parts, with("unknown-reference"));
        Files.delete(head);
        changedOutside(head, FileChangeType.Deleted);
        assertEquals(List.of(), told(parts, List::isEmpty));
    }

    @Test
    void a_head_may_be_large() throws Exception {
        Files.writeString(catalog.resolve("catalog.yaml"), CATALOG + "# more\n".repeat(200_000));
        greet();
        open(parts, BROKEN);
        told(parts, with("unknown-reference"));
    }

    /** A build that stands beside the catalog, and not in it. */
    private Path build() throws Exception {
        Path build = Files.createDirectories(folder.resolve("mine")).resolve("one.yaml");
        open(build, "build:\n  id: one\n  platform: bench\n  parts:\n    hand: knobb\n");
        return build;
    }

    @Test
    @SuppressWarnings("deprecation")
    void an_editor_may_name_its_one_folder_as_older_protocols_do() throws Exception {
        greet(greeting -> greeting.setRootUri(folder.toUri().toString()));
        told(build(), with("unknown-name"));
    }

    @Test
    void one_folder_may_be_open_in_another() throws Exception {
        greet(greeting -> greeting.setWorkspaceFolders(List.of(new WorkspaceFolder(folder.toUri().toString(), "work"), new WorkspaceFolder(catalog.toUri().toString(), "small"))));
        told(build(), with("unknown-name"));
    }
}

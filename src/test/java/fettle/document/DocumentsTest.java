package fettle.document;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.RandomAccessFile;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Tests which files are taken for documents, and that none of them can keep the others from being read. */
class DocumentsTest {
    @TempDir
    private Path folder;

    @BeforeEach
    void put_one_sound_document() throws IOException {
        write("sound.json", "{}");
    }

    private Path write(String name, String text) throws IOException {
        Path file = folder.resolve(name);
        Files.createDirectories(file.getParent());
        return Files.writeString(file, text);
    }

    /** Each document by its name below the folder, with what is wrong with it. */
    private List<String> told(DocumentSet documents) {
        String prefix = DocumentSearch.shown(folder) + "/";
        return documents.documents().stream()
                .map(document -> document.file().replace(prefix, "") + " " + document.problems().stream().map(DocumentProblem::what).toList())
                .toList();
    }

    private List<String> toldCatalog() {
        return told(Documents.catalog(folder));
    }

    private static InputStream input(String text) {
        return new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8));
    }

    @Test
    void a_catalog_is_every_document_below_a_folder_except_builds() throws IOException {
        write("b/deep/er/x.yml", "{}");
        write("a.YAML", "{}");
        write("notes.md", "# nothing");
        write("builds/b.json", "{}");
        write("b/builds/deeper/b.yaml", "{}");
        write("b/builds.json", "{}");
        assertEquals(List.of("a.YAML []", "b/builds.json []", "b/deep/er/x.yml []", "sound.json []"), toldCatalog());
    }

    @Test
    void a_folder_named_builds_may_itself_be_a_catalog() throws IOException {
        write("builds/b.json", "{}");
        assertEquals(List.of("builds/b.json []"), told(Documents.catalog(folder.resolve("builds"))));
    }

    @Test
    void files_are_shown_as_the_folder_was_named() throws IOException {
        Path relative = Path.of("").toAbsolutePath().relativize(folder.toAbsolutePath());
        assertEquals(List.of(relative + "/sound.json"), Documents.catalog(relative).documents().stream().map(Document::file).toList());
    }

    @Test
    void a_catalog_that_is_missing_empty_or_a_file_is_a_problem() throws IOException {
        assertEquals(List.of("gone [there is no such file or folder]"), told(Documents.catalog(folder.resolve("gone"))));
        assertEquals(List.of("sound.json [a catalog is a folder, but this is a file]"), told(Documents.catalog(folder.resolve("sound.json"))));
        Files.createDirectories(folder.resolve("empty/builds"));
        DocumentSet empty = Documents.catalog(folder.resolve("empty"));
        assertEquals(List.of("empty [no document is in this folder]"), told(empty));
        assertTrue(empty.holdsNothing());
    }

    @Test
    void broken_documents_do_not_hide_the_others() throws IOException {
        write("a.json", "{");
        write("z.yaml", "a: [");
        Files.write(folder.resolve("m.json"), new byte[] {'{', (byte) 0xFF});
        assertEquals(List.of("a.json [the document ends before everything in it is closed]",
                "m.json [the document is not in UTF-8: the byte 0xFF is no character here]", "sound.json []",
                "z.yaml [the bracket that opens here is never closed]"), toldCatalog());
    }

    @Test
    void links_are_followed_but_nothing_is_read_twice() throws IOException {
        write("real/x.json", "{}");
        Files.createSymbolicLink(folder.resolve("also-x.json"), folder.resolve("real/x.json"));
        Files.createSymbolicLink(folder.resolve("zreal"), folder.resolve("real"));
        assertEquals(List.of("also-x.json []", "sound.json []"), toldCatalog());
    }

    @Test
    void links_in_a_circle_and_links_to_nothing_are_told() throws IOException {
        Files.createDirectories(folder.resolve("sub"));
        Files.createSymbolicLink(folder.resolve("sub/up"), folder);
        Files.createSymbolicLink(folder.resolve("loop.json"), folder.resolve("loop.json"));
        Files.createSymbolicLink(folder.resolve("dangling.yaml"), folder.resolve("nothing.yaml"));
        assertEquals(List.of("dangling.yaml [this link leads nowhere, or round in a circle]",
                "loop.json [this link leads nowhere, or round in a circle]", "sound.json []",
                "sub/up [this link leads back to a folder above it]"), toldCatalog());
    }

    @Test
    void the_mark_of_an_editor_that_holds_a_file_is_no_document() throws IOException {
        Files.createSymbolicLink(folder.resolve(".#sound.json"), folder.resolve("someone@host.1"));
        assertEquals(List.of("sound.json []"), toldCatalog());
        assertEquals(List.of(folder.resolve("sound.json").toString()), List.copyOf(SavedFiles.catalog(folder).stamps().keySet()));
    }

    @Test
    void many_links_among_folders_do_not_multiply_the_work() throws IOException {
        for (int i = 0; i < 40; i++) {
            Files.createDirectories(folder.resolve("d" + i));
            for (String name : List.of("a", "b", "c")) {
                Files.createSymbolicLink(folder.resolve("d" + i + "/" + name), folder.resolve("d" + (i + 1)));
            }
        }
        write("d40/x.json", "{}");
        assertEquals(2, toldCatalog().size());
    }

    @Test
    void a_pipe_is_told_and_never_waited_for() throws Exception {
        Path pipe = folder.resolve("pipe.json");
        assertEquals(0, new ProcessBuilder("mkfifo", pipe.toString()).start().waitFor());
        Duration endOfPatience = Duration.ofMinutes(1);
        assertEquals(List.of("pipe.json [this is not an ordinary file]", "sound.json []"), assertTimeoutPreemptively(endOfPatience, this::toldCatalog));
        assertEquals(List.of("pipe.json [this is not an ordinary file]"), told(Documents.builds(List.of(pipe), input(""))));
    }

    @Test
    void a_folder_whose_name_ends_like_a_document_is_a_folder() throws IOException {
        write("x.json/y.json", "{}");
        assertEquals(List.of("sound.json []", "x.json/y.json []"), toldCatalog());
        assertEquals("this is a folder, but a file is expected",
                DocumentFile.read("x.json", folder.resolve("x.json")).problems().get(0).what());
    }

    @Test
    void what_is_too_much_together_is_told_of_and_the_rest_is_read() throws IOException {
        long half = DocumentFile.MOST_BYTES / 2;
        blanks("a.yaml", half);
        blanks("b.yaml", half - 2);
        blanks("c.yaml", half);
        blanks("d.yaml", DocumentFile.MOST_BYTES + 1L);
        String refused = "c.yaml [with the documents before it, by name, this one comes to more than 16 MiB, so that it was not read]";
        assertEquals(List.of("a.yaml []", "b.yaml []", refused, "d.yaml [the document is larger than 16 MiB]", "sound.json []"), toldCatalog());
        assertEquals(List.of("c.yaml []"), told(Documents.builds(List.of(folder.resolve("c.yaml")), input(""))));
    }

    private void blanks(String name, long bytes) throws IOException {
        write(name, "{}" + " ".repeat((int) bytes - 2));
    }

    @Test
    void a_file_that_is_too_large_is_not_even_opened() throws IOException {
        try (RandomAccessFile file = new RandomAccessFile(folder.resolve("large.json").toFile(), "rw")) {
            file.setLength(DocumentFile.MOST_BYTES + 1L);
        }
        assertEquals(List.of("large.json [the document is larger than 16 MiB]", "sound.json []"), toldCatalog());
    }

    @Test
    void what_may_not_be_read_is_told_where_permissions_hold() throws IOException {
        Path secret = write("secret.json", "{}");
        Path closed = write("closed/x.json", "{}").getParent();
        Files.setPosixFilePermissions(secret, PosixFilePermissions.fromString("---------"));
        Files.setPosixFilePermissions(closed, PosixFilePermissions.fromString("---------"));
        List<String> expected = Files.isReadable(secret)
                ? List.of("closed/x.json []", "secret.json []", "sound.json []") // the superuser may read everything
                : List.of("closed [reading it is not permitted]", "secret.json [reading it is not permitted]", "sound.json []");
        assertEquals(expected, toldCatalog());
        Files.setPosixFilePermissions(closed, PosixFilePermissions.fromString("rwx------"));
    }

    @Test
    void reasons_of_the_system_are_put_in_words() {
        Path file = folder.resolve("x.json");
        assertEquals("reading it is not permitted",
                DocumentFile.refused("x.json", file, new AccessDeniedException("x.json")).problems().get(0).what());
        assertEquals("it cannot be read: the device is gone",
                DocumentFile.refused("x.json", folder, new IOException("the device is gone")).problems().get(0).what());
        assertEquals("it cannot be read: the system gives no reason",
                DocumentFile.refused("x.json", folder, new IOException()).problems().get(0).what());
    }

    @Test
    void file_names_in_no_known_encoding_do_no_harm() throws Exception {
        Process process = new ProcessBuilder("sh", "-c", "cd \"$0\" && printf '{}' > \"$(printf 'gr\\366\\337e.json')\" && printf '{' > \"$(printf 'gr\\377.json')\"",
                folder.toString()).start();
        assertEquals(0, process.waitFor());
        DocumentSet documents = Documents.catalog(folder);
        assertEquals(3, documents.documents().size());
        assertEquals(1, documents.problems().count());
    }

    @Test
    void builds_are_files_folders_and_standard_input() throws IOException {
        Path one = write("one.build", "{\"build\": {}}");
        write("set/builds/x.json", "{}");
        write("set/y.yaml", "build: {}");
        DocumentSet documents = Documents.builds(List.of(one, folder.resolve("set"), Path.of("-"), folder.resolve("gone.json")), input("build: {id: b}"));
        assertEquals(List.of("- []", "gone.json [there is no such file or folder]", "one.build []", "set/builds/x.json []", "set/y.yaml []"), told(documents));
        assertEquals("{build={id='b'}}", documents.documents().get(0).root().map(Trees::bare).orElseThrow());
    }

    @Test
    void a_build_named_twice_is_read_once() throws IOException {
        Path one = write("set/one.json", "{}");
        Path detour = folder.resolve("set/../set/one.json");
        assertEquals(List.of("- []", "set/one.json []"),
                told(Documents.builds(List.of(one, one, detour, one.getParent(), Path.of("-"), Path.of("-")), input("{}"))));
    }

    @Test
    void standard_input_tells_json_from_yaml_by_its_first_character() {
        assertEquals("a comma stands before '}'", Documents.builds(List.of(Path.of("-")), input(" {\"a\": 1,}")).documents().get(0).problems().get(0).what());
        assertEquals("{a=1}", Documents.builds(List.of(Path.of("-")), input("a: 1")).documents().get(0).root().map(Trees::bare).orElseThrow());
    }

    @Test
    void standard_input_that_fails_is_told() {
        InputStream failing = new InputStream() {
            @Override
            public int read() throws IOException {
                throw new IOException("gone");
            }
        };
        assertEquals(List.of("- [standard input cannot be read]"), told(Documents.builds(List.of(Path.of("-")), failing)));
    }

    @Test
    void an_empty_folder_of_builds_is_told_beside_a_full_one() throws IOException {
        Files.createDirectories(folder.resolve("empty"));
        write("full/b.json", "{}");
        assertEquals(List.of("empty [no document is in this folder]", "full/b.json []"),
                told(Documents.builds(List.of(folder.resolve("full"), folder.resolve("empty")), input(""))));
    }
}

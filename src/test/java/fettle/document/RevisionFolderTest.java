package fettle.document;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Tests how the folder of a revision is named. */
class RevisionFolderTest {

    @TempDir
    private Path top;

    @BeforeEach
    void commit() throws IOException, InterruptedException {
        Files.createDirectories(top.resolve("cat/parts"));
        Files.writeString(top.resolve("cat/parts/kinds.yaml"), "kinds: [{ id: k }]\n");
        git("init", "-q");
        git("add", ".");
        git("-c", "user.name=n", "-c", "user.email=n@example.org", "-c", "commit.gpgsign=false", "commit", "-q", "-m", "first");
    }

    private void git(String... words) throws IOException, InterruptedException {
        List<String> command = new ArrayList<>(List.of("git"));
        command.addAll(List.of(words));
        assertEquals(0, new ProcessBuilder(command).directory(top.toFile()).inheritIO().start().waitFor(), command.toString());
    }

    private List<String> found(String name, String from) {
        return RevisionFolder.find(name, List.of(top.resolve(from))).catalog().documents().stream().map(Document::file).toList();
    }

    @Test
    void a_path_may_be_the_current_directory_or_one_around_it() {
        assertEquals(List.of("HEAD:./cat/parts/kinds.yaml"), found("HEAD:./", ""));
        assertEquals(List.of("HEAD:./parts/kinds.yaml"), found("HEAD:./", "cat"));
        assertEquals(List.of("HEAD:./parts/kinds.yaml"), found("HEAD:.", "cat"));
        assertEquals(List.of("HEAD:../parts/kinds.yaml"), found("HEAD:..", "cat/parts"));
        assertEquals(List.of("HEAD:./parts/kinds.yaml"), found("HEAD:./parts/", "cat"));
    }

    @Test
    void or_begin_at_the_top_of_the_repository() {
        assertEquals(List.of("HEAD:cat/parts/kinds.yaml"), found("HEAD:cat/", "cat"));
        assertEquals(List.of("HEAD:cat/parts/kinds.yaml"), found("HEAD:", "cat"));
    }
}

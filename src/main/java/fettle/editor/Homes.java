package fettle.editor;

import fettle.document.Document;
import fettle.document.Documents;
import fettle.document.Node;
import java.io.IOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;

/** Finds the catalog that a document belongs to: the nearest folder around it in which a document says what the catalog is. */
final class Homes {

    private static final int DEEPEST = 6;
    private static final long LARGEST = 1 << 20;

    private final Optional<Path> named;
    private final List<Path> workspace;

    /**
     * @param named the catalog that was named when the server was started
     * @param workspace the folders that the editor has open
     */
    Homes(Optional<Path> named, List<Path> workspace) {
        this.named = named;
        this.workspace = List.copyOf(workspace);
    }

    /** The folder of the catalog that a file is part of, or whose builds it holds. */
    Optional<Path> of(Path file) {
        if (named.isPresent()) {
            return named;
        }
        Path folder = file.getParent();
        for (int up = 0; up < DEEPEST && folder != null; up++) {
            if (heads(folder)) {
                return Optional.of(folder);
            }
            if (workspace.contains(folder)) {
                break;
            }
            folder = folder.getParent();
        }
        List<Path> all = below();
        return all.size() == 1 ? Optional.of(all.get(0)) : Optional.empty();
    }

    /** Whether a file is a build file rather than a document of its catalog. */
    static boolean holdsBuilds(Path home, Path file) {
        if (!file.startsWith(home)) {
            return true;
        }
        Path inside = home.relativize(file);
        for (int i = 0; i + 1 < inside.getNameCount(); i++) {
            if (inside.getName(i).toString().equals("builds")) {
                return true;
            }
        }
        return false;
    }

    /** The catalogs in the folders that the editor has open. */
    private List<Path> below() {
        List<Path> found = new ArrayList<>();
        for (Path folder : workspace) {
            try (Stream<Path> all = Files.walk(folder, DEEPEST)) {
                all.filter(Files::isDirectory).filter(Homes::heads).limit(2).forEach(found::add);
            } catch (IOException | java.io.UncheckedIOException gone) {
                continue;
            }
        }
        return found;
    }

    private static boolean heads(Path folder) {
        try (DirectoryStream<Path> files = Files.newDirectoryStream(folder, Homes::small)) {
            for (Path file : files) {
                byte[] bytes = Files.readAllBytes(file);
                if (new String(bytes, java.nio.charset.StandardCharsets.UTF_8).contains("catalog")) {
                    Document read = Documents.content(file.toString(), bytes);
                    if (read.root().orElse(null) instanceof Node.Obj root && root.members().containsKey("catalog")) {
                        return true;
                    }
                }
            }
        } catch (IOException | java.nio.file.DirectoryIteratorException unreadable) {
            return false;
        }
        return false;
    }

    private static boolean small(Path file) throws IOException {
        String name = file.getFileName().toString().toLowerCase(Locale.ROOT);
        return (name.endsWith(".json") || name.endsWith(".yaml") || name.endsWith(".yml")) && Files.isRegularFile(file) && Files.size(file) <= LARGEST;
    }
}

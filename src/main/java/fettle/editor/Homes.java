package fettle.editor;

import fettle.document.Document;
import fettle.document.Documents;
import fettle.document.Node;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.DirectoryIteratorException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Predicate;
import java.util.function.Supplier;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * Finds the catalog that a document belongs to: the nearest folder around it in which a document says what the catalog is. What the editor holds of
 * a document counts before what is on disk.
 */
final class Homes {

    private static final int DEEPEST = 6;

    /** As many bytes as a document may have. */
    private static final long LARGEST = 64 << 20;

    /** How a catalog says what it is, for a document that can't be read to its end just now. */
    private static final Pattern HEAD = Pattern.compile("(?m)^\\s*\\{?\\s*\"catalog\"\\s*:|^catalog\\s*:");

    private final Optional<Path> named;
    private final List<Path> workspace;
    private final Map<Path, OpenText> open;
    private final Map<Path, Looked> looked = new ConcurrentHashMap<>();
    private final Map<Path, Path> heads = new ConcurrentHashMap<>();

    /** Whether a file says what its catalog is; {@code state} is of the text that was looked at. */
    private record Looked(Object state, boolean head) {}

    /**
     * @param named the catalog that was named when the server was started
     * @param workspace the folders that the editor has open
     * @param open what the editor holds, which may change
     */
    Homes(Optional<Path> named, List<Path> workspace, Map<Path, OpenText> open) {
        this.named = named;
        this.workspace = List.copyOf(workspace);
        this.open = open;
    }

    /** The folder of the catalog that a file is part of, or whose builds it holds. */
    Optional<Path> of(Path file) {
        if (named.isPresent()) {
            return named;
        }
        return nearest(file, this::headed).or(() -> nearest(file, this::wasHeaded)).or(() -> {
            Set<Path> all = below();
            return all.size() == 1 ? all.stream().findFirst() : Optional.empty();
        });
    }

    /** Whether a folder is still that of a catalog. */
    boolean holds(Path home) {
        return named.filter(home::equals).isPresent() || headed(home) || wasHeaded(home);
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

    private Optional<Path> nearest(Path file, Predicate<Path> wanted) {
        Path folder = file.getParent();
        for (int up = 0; up < DEEPEST && folder != null; up++) {
            if (wanted.test(folder)) {
                return Optional.of(folder);
            }
            if (workspace.contains(folder)) {
                break;
            }
            folder = folder.getParent();
        }
        return Optional.empty();
    }

    /** The catalogs in the folders that the editor has open: all, where there are fewer than two. */
    private Set<Path> below() {
        Set<Path> found = new LinkedHashSet<>();
        open.keySet().stream().map(Path::getParent).distinct()
                .filter(folder -> workspace.stream().anyMatch(folder::startsWith)).filter(this::headed).forEach(found::add);
        for (Path folder : workspace) {
            try (Stream<Path> all = Files.walk(folder, DEEPEST)) {
                all.filter(Files::isDirectory).filter(this::headed).limit(2).forEach(found::add);
            } catch (IOException | java.io.UncheckedIOException gone) {
                continue;
            }
        }
        return found;
    }

    /** Whether the document is still there that said what the catalog is: while it says nothing of the kind, it is being written. */
    private boolean wasHeaded(Path folder) {
        Path head = heads.get(folder);
        return head != null && (open.containsKey(head) || Files.isRegularFile(head));
    }

    private boolean headed(Path folder) {
        Optional<Path> head = open.values().stream().filter(text -> folder.equals(text.file().getParent()) && Documents.hasDocumentName(text.file()))
                .filter(text -> looked(text.file(), text.lines(), text::bytes)).map(OpenText::file).findFirst()
                .or(() -> headOnDisk(folder));
        head.ifPresent(file -> heads.put(folder, file));
        return head.isPresent();
    }

    private Optional<Path> headOnDisk(Path folder) {
        try (DirectoryStream<Path> files = Files.newDirectoryStream(folder, file -> Documents.hasDocumentName(file) && !open.containsKey(file))) {
            for (Path file : files) {
                BasicFileAttributes state = Files.readAttributes(file, BasicFileAttributes.class);
                if (state.isRegularFile() && state.size() <= LARGEST
                        && looked(file, List.of(state.lastModifiedTime(), state.size()), () -> bytes(file))) {
                    return Optional.of(file);
                }
            }
        } catch (IOException | DirectoryIteratorException unreadable) {
            return Optional.empty();
        }
        return Optional.empty();
    }

    private boolean looked(Path file, Object state, Supplier<byte[]> text) {
        Looked before = looked.get(file);
        if (before == null || !before.state().equals(state)) {
            before = new Looked(state, heads(file, text.get()));
            looked.put(file, before);
        }
        return before.head();
    }

    private static byte[] bytes(Path file) {
        try {
            return Files.readAllBytes(file);
        } catch (IOException unreadable) {
            return new byte[0];
        }
    }

    private static boolean heads(Path file, byte[] bytes) {
        String text = new String(bytes, StandardCharsets.UTF_8);
        if (!text.contains("catalog")) {
            return false;
        }
        Document read = Documents.content(file.toString(), bytes);
        return read.root().isPresent() ? read.root().get() instanceof Node.Obj root && root.members().containsKey("catalog") : HEAD.matcher(text).find();
    }
}

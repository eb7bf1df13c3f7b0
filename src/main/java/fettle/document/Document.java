package fettle.document;

import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * One file as read.
 *
 * @param file the file as people named it, with forward slashes; {@code -} for standard input
 * @param name its path within its catalog or, from the folder {@code builds} on, among builds: the same however people named the folder
 * @param root what could be read and trusted; empty where that is nothing
 * @param problems what kept it from being read in full, in reading order; empty for a sound document
 * @param cutShort whether reading stopped before the end, so that anything may stand behind what was read
 */
public record Document(String file, String name, Optional<Node> root, List<DocumentProblem> problems, boolean cutShort) {

    /** A document that was read to its end, or of which nothing could be. */
    public Document(String file, Optional<Node> root, List<DocumentProblem> problems) {
        this(file, root, problems, false);
    }

    /** A document that nothing is known of but its file. */
    Document(String file, Optional<Node> root, List<DocumentProblem> problems, boolean cutShort) {
        this(file, nameOf(file), root, problems, cutShort);
    }

    public Document {
        Objects.requireNonNull(file);
        Objects.requireNonNull(name);
        Objects.requireNonNull(root);
        problems = List.copyOf(problems);
    }

    /** The same document, under a name. */
    Document named(String other) {
        return new Document(file, other, root, problems, cutShort);
    }

    /** What a file is called: from its last folder {@code builds} on where it is in one, and else by its own name. */
    static String nameOf(String file) {
        int builds = ("/" + file).lastIndexOf("/" + Documents.BUILDS_FOLDER + "/");
        return file.substring(builds >= 0 ? builds : file.lastIndexOf('/') + 1);
    }
}

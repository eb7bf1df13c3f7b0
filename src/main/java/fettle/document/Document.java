package fettle.document;

import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * One file as read.
 *
 * @param file the file as people named it, with forward slashes; {@code -} for standard input
 * @param root what could be read and trusted; empty where that is nothing
 * @param problems what kept it from being read in full, in reading order; empty for a sound document
 * @param cutShort whether reading stopped before the end, so that anything may stand behind what was read
 */
public record Document(String file, Optional<Node> root, List<DocumentProblem> problems, boolean cutShort) {

    /** A document that was read to its end, or of which nothing could be. */
    public Document(String file, Optional<Node> root, List<DocumentProblem> problems) {
        this(file, root, problems, false);
    }

    public Document {
        Objects.requireNonNull(file);
        Objects.requireNonNull(root);
        problems = List.copyOf(problems);
    }
}

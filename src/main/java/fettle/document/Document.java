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
 */
public record Document(String file, Optional<Node> root, List<DocumentProblem> problems) {
    public Document {
        Objects.requireNonNull(file);
        Objects.requireNonNull(root);
        problems = List.copyOf(problems);
    }
}

package fettle.document;

import java.util.List;
import java.util.Set;
import java.util.stream.Stream;

/**
 * All documents that were found in one place, sound or not, sorted by file name.
 *
 * <p>What is no document at all but should have been (a missing file, a folder that may not be listed) stands among them
 * as a document without a root, so that it is never silently left out.
 */
public record DocumentSet(List<Document> documents) {

    /** The steps to an entry, the empty one before the first slash included: a section, and a place in it. */
    private static final int ENTRY = 3;

    private static final Set<String> OF_THE_CATALOG = Set.of("catalog", "label", "note", "$schema");

    public DocumentSet {
        documents = List.copyOf(documents);
    }

    /** The problems of all documents, in order of file and place. */
    public Stream<DocumentProblem> problems() {
        return documents.stream().flatMap(document -> document.problems().stream());
    }

    /** The files that could not be read in full, and may hold an entry that seems absent. */
    public List<String> unread() {
        return documents.stream().filter(document -> document.problems().stream().anyMatch(DocumentSet::hides)).map(Document::file).toList();
    }

    /** Whether something is left out that may be an entry, and not a piece of one, or of what a catalog says of itself. */
    private static boolean hides(DocumentProblem problem) {
        List<String> steps = List.of(problem.origin().pointer().split("/"));
        return steps.size() <= ENTRY && (steps.size() < 2 || !OF_THE_CATALOG.contains(steps.get(1)));
    }

    /** Whether there is not one document with anything in it. */
    public boolean holdsNothing() {
        return documents.stream().allMatch(document -> document.root().isEmpty());
    }
}

package fettle.document;

import java.util.List;
import java.util.stream.Stream;

/**
 * All documents that were found in one place, sound or not, sorted by file name.
 *
 * <p>What is no document at all but should have been (a missing file, a folder that may not be listed) stands among them
 * as a document without a root, so that it is never silently left out.
 */
public record DocumentSet(List<Document> documents) {
    public DocumentSet {
        documents = List.copyOf(documents);
    }

    /** The problems of all documents, in order of file and place. */
    public Stream<DocumentProblem> problems() {
        return documents.stream().flatMap(document -> document.problems().stream());
    }

    /** Whether there is not one document with anything in it. */
    public boolean holdsNothing() {
        return documents.stream().allMatch(document -> document.root().isEmpty());
    }
}

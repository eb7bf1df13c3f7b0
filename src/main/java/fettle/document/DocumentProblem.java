package fettle.document;

import java.util.Objects;

/**
 * A reason why a document, or a piece of it, could not be read.
 *
 * @param what what is wrong, one sentence without its full stop
 * @param remedy what to do about it, one sentence without its full stop
 */
public record DocumentProblem(Origin origin, String what, String remedy) {
    public DocumentProblem {
        Objects.requireNonNull(origin);
        Objects.requireNonNull(what);
        Objects.requireNonNull(remedy);
    }
}

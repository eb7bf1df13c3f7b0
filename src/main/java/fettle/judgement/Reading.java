package fettle.judgement;

import fettle.document.Document;
import fettle.document.Origin;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * That a whole catalog was read and is being judged. Rules that judge by what is absent match it, since elsewhere absence means nothing.
 *
 * @param start where the first document starts, for what stands nowhere
 * @param headed whether a document holds the catalog object, however little of that could be read
 * @param unread the documents that could not be read in full, and may hold what seems absent
 * @param flawed these, and those that state something of a part, or of what decides about parts, that could not be read
 */
public record Reading(Origin start, boolean headed, List<String> unread, List<String> flawed) {

    static Reading of(CatalogReading reading) {
        List<Document> all = reading.documents().documents();
        return new Reading(Origin.startOf(all.isEmpty() ? "" : all.get(0).file()), reading.headed(), reading.unread(),
                Stream.concat(reading.unread().stream(), reading.halfRead().files().stream()).distinct().sorted().toList());
    }

    /** The documents of which so little could be read that less may be ruled out, or outdone, than would be; empty where there are none. */
    public Optional<List<String>> flaws() {
        return Optional.of(flawed).filter(files -> !files.isEmpty());
    }

    /** The documents that could not be read in full; empty where all could. */
    public Optional<List<String>> doubt() {
        return Optional.of(unread).filter(files -> !files.isEmpty());
    }
}

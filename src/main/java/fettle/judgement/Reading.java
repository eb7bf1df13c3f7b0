package fettle.judgement;

import fettle.document.Document;
import fettle.document.Origin;
import java.util.List;
import java.util.Optional;

/**
 * That a whole catalog was read and is being judged. Rules that judge by what is absent match it, since elsewhere absence means nothing.
 *
 * @param start where the first document starts, for what stands nowhere
 * @param unread the documents that could not be read in full, and may hold what seems absent
 */
public record Reading(Origin start, List<String> unread) {

    static Reading of(CatalogReading reading) {
        List<Document> all = reading.documents().documents();
        return new Reading(Origin.startOf(all.isEmpty() ? "" : all.get(0).file()), reading.unread());
    }

    /** The documents that could not be read in full; empty where all could. */
    public Optional<List<String>> doubt() {
        return Optional.of(unread).filter(files -> !files.isEmpty());
    }
}

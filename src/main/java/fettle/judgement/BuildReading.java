package fettle.judgement;

import java.util.List;
import java.util.Optional;

/** How far the catalog by which builds are judged could be read, which rules that judge a catalog by itself don't ask about. */
public record BuildReading(Reading catalog) {

    /** The documents that could not be read in full, and may hold what a build names; empty where all could. */
    public Optional<List<String>> doubt() {
        return catalog.doubt();
    }
}

package fettle.judgement;

import java.util.List;
import java.util.Optional;

/** How far the catalog after a patch could be read, which rules that judge a catalog by itself don't ask about. */
public record PatchReading(Reading after) {

    /** The documents that could not be read in full; empty where all could. */
    public Optional<List<String>> doubt() {
        return after.doubt();
    }
}

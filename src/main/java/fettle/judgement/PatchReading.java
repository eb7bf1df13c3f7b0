package fettle.judgement;

import java.util.List;
import java.util.Optional;

/** How far the catalogs before and after a patch could be read, which rules that judge a catalog by itself don't ask about. */
public record PatchReading(Reading before, Reading after) {

    /** The documents of the new catalog that could not be read in full; empty where all could. */
    public Optional<List<String>> doubt() {
        return after.doubt();
    }

    /** The documents of the old catalog that could not be read in full; empty where all could. */
    public Optional<List<String>> doubtBefore() {
        return before.doubt();
    }
}

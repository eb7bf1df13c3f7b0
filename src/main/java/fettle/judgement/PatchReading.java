package fettle.judgement;

import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * How far the catalogs before and after a patch could be read, which rules that judge a catalog by itself don't ask about, and whose builds are compared.
 *
 * @param profiles the access profiles that the builds name; empty where no builds are compared
 */
public record PatchReading(Reading before, Reading after, Optional<Set<String>> profiles) {

    /** Those of these access profiles that builds are bought with, or all of them where no builds are compared; empty where there are none. */
    public Optional<List<String>> bought(List<String> some) {
        return Optional.of(some.stream().filter(profile -> profiles.isEmpty() || profiles.get().contains(profile)).toList()).filter(bought -> !bought.isEmpty());
    }


    /** The documents of the new catalog that could not be read in full; empty where all could. */
    public Optional<List<String>> doubt() {
        return after.doubt();
    }

    /** The documents of the old catalog that could not be read in full; empty where all could. */
    public Optional<List<String>> doubtBefore() {
        return before.doubt();
    }
}

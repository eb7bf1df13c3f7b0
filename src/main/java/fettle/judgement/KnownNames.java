package fettle.judgement;

import fettle.document.Nearest;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** All ids that a mention of one sort may use. */
public record KnownNames(String space, Set<String> names) {

    /** The names nearest to a wrong one, best first; empty where none is near. */
    public Optional<List<String>> near(String wrong) {
        return Optional.of(Nearest.names(wrong, names)).filter(found -> !found.isEmpty());
    }
}

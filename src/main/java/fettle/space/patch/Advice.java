package fettle.space.patch;

import fettle.catalog.Build;
import fettle.relation.Relations;
import java.util.List;
import java.util.Optional;

/** Tells which parts have become, or are no longer, dominated. What dominance is, and for which parts it is worth the work, is for those who provide it. */
public interface Advice {

    /** Where nothing can tell dominance, nothing is claimed about it. */
    Advice UNTOLD = (old, now, builds) -> Optional.empty();

    /**
     * What changed between two catalogs, in order, for the parts that these builds use; empty where it was not looked into, which is
     * another thing than that nothing changed.
     */
    Optional<List<AdviceShift>> shifts(Relations old, Relations now, List<Build> builds);
}

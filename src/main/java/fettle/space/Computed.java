package fettle.space;

import fettle.document.Origin;
import java.util.Optional;

/** A result computed from relations, as a reason for a finding; closed, so that every one can be put into words in one place. */
public sealed interface Computed permits BetweenRungs, Cause, Chain, Change, FormerName, Unresolved, Violation {

    /** The one place that it speaks of, where there is one. */
    default Optional<Origin> origin() {
        return Optional.empty();
    }
}

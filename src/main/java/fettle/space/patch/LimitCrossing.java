package fettle.space.patch;

import fettle.catalog.Limit;
import fettle.space.Change;
import fettle.space.LimitMargin;
import java.util.List;
import java.util.Optional;

/**
 * A limit that a build kept before a patch and exceeds after it, or the other way round; or a new one that it exceeds.
 *
 * @param before how it stood to the limit, which may have gone by another id; empty where there was no such limit
 * @param after how it stands to the limit
 * @param blame the differences that did it: undoing them takes the build back, and none can be left out
 */
public record LimitCrossing(Optional<LimitMargin> before, LimitMargin after, List<Change> blame) {

    public LimitCrossing {
        blame = List.copyOf(blame);
    }

    /** Whether the build now exceeds the limit. */
    public boolean outward() {
        return !after.holds();
    }

    /** Whether there was no such limit before. */
    public boolean added() {
        return before.isEmpty();
    }

    /** The limit as it is now. */
    public Limit limit() {
        return after.limit();
    }
}

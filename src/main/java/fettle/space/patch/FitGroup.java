package fettle.space.patch;

import fettle.space.Change;
import java.util.List;

/**
 * Fits that were all lost, or all gained, for one cause.
 *
 * @param entries whether the cause is that a part, a host or a slot as a whole is there on one side only
 * @param by what the part and the slot no longer have, or now have, in common: the name of a mount or a selector; empty where {@code entries}
 * @param causes the differences that did it, in order; more than one where the same was done to several entries, or where it took more than one
 * @param fits in order
 */
public record FitGroup(boolean lost, boolean entries, List<String> by, List<Change> causes, List<FitShift> fits) {

    public FitGroup {
        by = List.copyOf(by);
        causes = List.copyOf(causes);
        fits = List.copyOf(fits);
    }
}

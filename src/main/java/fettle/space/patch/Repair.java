package fettle.space.patch;

import fettle.space.PathMove;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;

/**
 * A way to make a broken build valid again.
 *
 * @param steps the paths that change, in order; those at which a part only gives up its notch among them, which don't count as changed
 * @param cost what the repaired build costs; empty where a part of it cannot be had, or the access profile is unknown
 * @param outside the limits that the repaired build doesn't keep
 * @param rewritten what is to be written at another path before all else, since slots go by other ids now
 * @param movedUp what is to be written at another path then, since parts before it were taken out of a list
 * @param others how many other repairs change as few paths
 */
public record Repair(List<PathChange> steps, Optional<BigDecimal> cost, List<String> outside, List<PathMove> rewritten, List<PathMove> movedUp, int others) {

    public Repair {
        steps = List.copyOf(steps);
        outside = List.copyOf(outside);
        rewritten = List.copyOf(rewritten);
        movedUp = List.copyOf(movedUp);
    }
}

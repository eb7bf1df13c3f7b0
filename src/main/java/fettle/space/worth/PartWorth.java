package fettle.space.worth;

import java.util.Optional;
import java.util.stream.Stream;

/**
 * How a part stands to the others in one slot of one platform.
 *
 * @param worseThanEmpty whether each of its assemblies is dominated by the empty choice, cost ignored
 */
public record PartWorth(Verdict ignoringCost, Verdict withCost, boolean worseThanEmpty) {

    /** That it is dominated, cost ignored or else counted; empty where it is not, or not known to be. */
    public Optional<Verdict.Dominated> dominated() {
        return Stream.of(ignoringCost, withCost).filter(Verdict.Dominated.class::isInstance).map(Verdict.Dominated.class::cast).findFirst();
    }
}

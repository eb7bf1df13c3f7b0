package fettle.space.worth;

import fettle.space.Assembly;
import fettle.space.Undecided;
import java.util.Optional;

/** How a part stands to the others in a slot, by one way of comparing. */
public sealed interface Verdict {

    /**
     * Each of its assemblies is dominated by one that it does not head.
     *
     * @param shown the smallest of its assemblies
     * @param by one that dominates that; empty for the empty choice
     */
    record Dominated(Assembly shown, Optional<Assembly> by) implements Verdict {}

    /** One of its assemblies is dominated by none that it does not head. */
    record Undominated(Assembly best) implements Verdict {}

    /** None of its assemblies takes part in the comparison, since each holds something that is not sold. */
    record Unsold() implements Verdict {}

    /** The work was broken off. */
    record Open(Undecided undecided) implements Verdict {}
}

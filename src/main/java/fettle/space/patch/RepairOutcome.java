package fettle.space.patch;

import java.util.Optional;

/** What a search for the nearest repair came to. */
public sealed interface RepairOutcome {

    /** No repair changes fewer paths. */
    record Found(Repair repair) implements RepairOutcome {}

    /**
     * There is none, whatever is changed.
     *
     * @param unbuildable the platform, where nothing can be built on it; empty where there is no such platform any more
     */
    record None(Optional<String> unbuildable) implements RepairOutcome {}

    /** The work that one build may take did not suffice; a repair, if there is one, changes at least so many paths. */
    record CutShort(int atLeast) implements RepairOutcome {}
}

package fettle.space.patch;

/** What a search for the nearest repair came to. */
public sealed interface RepairOutcome {

    /** No repair changes fewer paths. */
    record Found(Repair repair) implements RepairOutcome {}

    /** There is none, whatever is changed. */
    record None() implements RepairOutcome {}

    /** The work that one build may take did not suffice; a repair, if there is one, changes at least so many paths. */
    record CutShort(int atLeast) implements RepairOutcome {}
}

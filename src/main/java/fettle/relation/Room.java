package fettle.relation;

import fettle.catalog.Fact;
import fettle.catalog.SlotId;

/** What a slot asks of the list of parts in it. The rule that derived it also names the finding that a build draws by breaking it. */
public sealed interface Room {

    SlotId slot();

    String rule();

    Fact because();

    /** How many it speaks of; 0 where it speaks of no number. */
    default int figure() {
        return 0;
    }

    /** At most {@code most} parts. */
    record Holds(String rule, SlotId slot, int most, Fact because) implements Room {
        @Override
        public int figure() {
            return most;
        }
    }

    /** The spans of the parts sum to at most {@code notches}. */
    record Length(String rule, SlotId slot, int notches, Fact because) implements Room {
        @Override
        public int figure() {
            return notches;
        }
    }

    /** Parts with a stated first notch lie inside {@code notches} and apart, and the others fit into the runs left free. */
    record Places(String rule, SlotId slot, int notches, Fact because) implements Room {
        @Override
        public int figure() {
            return notches;
        }
    }

    /** No part twice. */
    record Distinct(String rule, SlotId slot, Fact because) implements Room {}

    /** At least one part. */
    record Filled(String rule, SlotId slot, Fact because) implements Room {}
}

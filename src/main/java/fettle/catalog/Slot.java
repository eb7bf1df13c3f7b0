package fettle.catalog;

import fettle.document.Origin;
import java.util.List;
import java.util.OptionalInt;

/** A place on a part or platform where parts can sit, as written; what follows from it is for the rules to say. */
public record Slot(
        SlotId id,
        String label,
        List<SlotHasMount> mounts,
        List<SlotAccepts> accepts,
        List<SlotRejects> rejects,
        boolean required,
        List<SlotHasTag> tags,
        OptionalInt units,
        OptionalInt most,
        boolean repeats,
        Origin origin)
        implements Fact {

    /** The most notches that a slot is long or a part takes, and the most parts that a slot holds, as the schema has it. */
    static final int LONGEST = 10_000;

    /** Whether a length in notches is given. */
    public boolean measured() {
        return units.isPresent();
    }

    /** Whether a number of parts is given. */
    public boolean counted() {
        return most.isPresent();
    }

    /** The length in notches; only where {@link #measured()}. */
    public int length() {
        return units.getAsInt();
    }

    /** The number of parts; only where {@link #counted()}. */
    public int number() {
        return most.getAsInt();
    }
}

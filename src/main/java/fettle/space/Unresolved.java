package fettle.space;

import fettle.catalog.BuildEntry;
import java.util.List;

/** A part of a build that could not be placed, since something that it names does not exist. */
public sealed interface Unresolved {

    /** The entry as written. */
    BuildEntry entry();

    /** The catalog has no such part. */
    record NoSuchPart(BuildEntry entry) implements Unresolved {}

    /**
     * The host has no such slot.
     *
     * @param host the part or platform that the path leads to
     * @param slot the slot asked for
     * @param known the slots that the host has
     */
    record NoSuchSlot(BuildEntry entry, String host, String slot, List<String> known) implements Unresolved {}

    /** The path goes on through a slot, or a position in one, that holds nothing in this build. */
    record NothingThere(BuildEntry entry, String through) implements Unresolved {}

    /** The path goes on through a slot that holds several parts without naming a position. */
    record Ambiguous(BuildEntry entry, String through, int parts) implements Unresolved {}
}

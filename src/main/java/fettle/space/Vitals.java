package fettle.space;

import fettle.catalog.SlotId;
import java.util.Collections;
import java.util.Optional;
import java.util.SortedSet;
import java.util.TreeSet;

/**
 * What is used in some valid build of a platform and what in none.
 *
 * @param reachable the parts to which a chain of fits leads from the platform
 * @param empty whether it is certain that the platform has no valid build; then all that it reaches is dead
 * @param dead reachable parts that are in no valid build
 * @param deadSlots slots, of the platform and of reachable parts, in which no valid build holds a part
 * @param open reachable parts of which it was not decided
 * @param undecided why that was left open, where something was
 */
public record Vitals(
        String platform,
        SortedSet<String> reachable,
        boolean empty,
        SortedSet<String> dead,
        SortedSet<SlotId> deadSlots,
        SortedSet<String> open,
        Optional<Undecided> undecided) {

    public Vitals {
        reachable = Collections.unmodifiableSortedSet(new TreeSet<>(reachable));
        dead = Collections.unmodifiableSortedSet(new TreeSet<>(dead));
        deadSlots = Collections.unmodifiableSortedSet(new TreeSet<>(deadSlots));
        open = Collections.unmodifiableSortedSet(new TreeSet<>(open));
    }
}

package fettle.space.best;

import fettle.space.Occurrence;
import fettle.space.Placement;
import fettle.space.SlotUse;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;

/** What must be found at a place of a new build: a kept part, or kept parts further out. Told apart by identity. */
final class Kept {

    private final Optional<String> part;
    private final SortedMap<String, List<Kept>> slots;

    private Kept(Optional<String> part, SortedMap<String, List<Kept>> slots) {
        this.part = part;
        this.slots = Collections.unmodifiableSortedMap(slots);
    }

    /**
     * The demand that these paths of a build keep what they hold.
     *
     * @throws NothingKept where a path holds nothing
     */
    static Kept of(Placement before, Set<String> paths) {
        Set<String> open = new TreeSet<>(paths);
        before.parts().forEach(part -> open.remove(part.path()));
        if (!open.isEmpty()) {
            throw new NothingKept(open);
        }
        return of(before, Placement.PLATFORM, Optional.empty(), paths);
    }

    private static Kept of(Placement before, int owner, Optional<String> part, Set<String> paths) {
        SortedMap<String, List<Kept>> slots = new TreeMap<>();
        for (SlotUse use : before.slots()) {
            if (use.owner() != owner) {
                continue;
            }
            List<Kept> held = new ArrayList<>();
            for (int occupant : use.occupants()) {
                Occurrence there = before.parts().get(occupant);
                Optional<String> kept = paths.contains(there.path()) ? Optional.of(there.part()) : Optional.empty();
                Kept below = of(before, occupant, kept, paths);
                if (kept.isPresent() || !below.slots.isEmpty()) {
                    held.add(below);
                }
            }
            if (!held.isEmpty()) {
                slots.put(use.slot().slot(), List.copyOf(held));
            }
        }
        return new Kept(part, slots);
    }

    /** Whether a part may stand where this is demanded. */
    boolean allows(String placed) {
        return part.isEmpty() || part.get().equals(placed);
    }

    SortedMap<String, List<Kept>> slots() {
        return slots;
    }
}

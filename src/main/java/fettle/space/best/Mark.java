package fettle.space.best;

import fettle.relation.Relations;
import fettle.space.Placement;
import fettle.space.SlotUse;
import java.util.ArrayList;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;

/** A part of the build before, or its platform, at its place: what a new build is compared with. Told apart by identity. */
final class Mark {

    private final String part;
    private final SortedMap<String, List<Mark>> slots = new TreeMap<>();
    private final SortedMap<String, Boolean> numbered = new TreeMap<>();

    private Mark(String part) {
        this.part = part;
    }

    static Mark of(Relations relations, Placement placement) {
        List<Mark> marks = new ArrayList<>();
        Mark platform = new Mark(placement.platform());
        placement.parts().forEach(part -> marks.add(new Mark(part.part())));
        for (SlotUse use : placement.slots()) {
            Mark owner = use.owner() == Placement.PLATFORM ? platform : marks.get(use.owner());
            if (!use.occupants().isEmpty()) {
                owner.slots.put(use.slot().slot(), use.occupants().stream().map(marks::get).toList());
                owner.numbered.put(use.slot().slot(), relations.room(use.slot()).most() > 1);
            }
        }
        return platform;
    }

    String part() {
        return part;
    }

    /** What was in a slot, as far as a slot of the same name that is numbered, or not, has the same paths. */
    List<Mark> in(String slot, boolean nowNumbered) {
        return slots.containsKey(slot) && numbered.get(slot) == nowNumbered ? slots.get(slot) : List.of();
    }
}

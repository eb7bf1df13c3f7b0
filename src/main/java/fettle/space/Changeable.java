package fettle.space;

import fettle.relation.Relations;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * What a build can change of the things that break a relation: the platform is what it is a build of, and no part that could be replaced.
 *
 * @param parts the placed parts that break the relation, and {@link Placement#PLATFORM} for the platform
 * @param slots the slots in use that break it
 */
record Changeable(Relations relations, Placement placement, List<Integer> parts, List<Integer> slots) {

    /**
     * The names that remedies are given: {@code replaceable} for the parts that can be replaced; {@code fixed} for the platform where no part can;
     * {@code emptiable} for a slot that may be empty, {@code needy} for one that must be filled, or {@code bearer} where the part that brings such a one can be replaced.
     */
    SortedMap<String, Object> names() {
        SortedMap<String, Object> names = new TreeMap<>();
        List<String> replaceable = parts.stream().filter(part -> part != Placement.PLATFORM).map(this::id).distinct().toList();
        if (replaceable.isEmpty()) {
            names.put("fixed", placement.platform());
        } else {
            names.put("replaceable", replaceable);
        }
        for (int index : slots) {
            SlotUse use = placement.slots().get(index);
            if (!relations.room(use.slot()).filled()) {
                names.put("emptiable", use.slot().toString());
            } else if (replaceable.isEmpty() && use.owner() != Placement.PLATFORM) {
                names.put("bearer", id(use.owner()));
            } else {
                names.put("needy", use.slot().toString());
            }
        }
        return names;
    }

    private String id(int part) {
        return placement.parts().get(part).part();
    }
}

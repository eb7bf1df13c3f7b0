package fettle.space.worth;

import fettle.catalog.SlotId;
import java.util.Collections;
import java.util.List;
import java.util.SortedMap;

/**
 * How the parts in one slot of one platform stand to each other.
 *
 * @param parts by part that stands there in some valid build; slots that hold the same share one map, which nobody changes
 * @param twins pairs of parts that are alike in all that is compared, the smaller id first
 */
public record SlotWorth(String platform, SlotId slot, SortedMap<String, PartWorth> parts, List<Twins> twins) {

    public SlotWorth {
        parts = Collections.unmodifiableSortedMap(parts);
        twins = List.copyOf(twins);
    }

    /** Two parts without slots that can be swapped either way in every valid build, with equal roles and figures. */
    public record Twins(String one, String other) {}
}

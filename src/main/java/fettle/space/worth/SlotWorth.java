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
 * @param sideBySide pairs that would be, were it not that both can be there, and neither twice
 */
public record SlotWorth(String platform, SlotId slot, SortedMap<String, PartWorth> parts, List<Twins> twins, List<Twins> sideBySide) {

    public SlotWorth {
        parts = Collections.unmodifiableSortedMap(parts);
        twins = List.copyOf(twins);
        sideBySide = List.copyOf(sideBySide);
    }

    /** Two parts without slots, with equal roles and figures, that can be swapped either way in every valid build. */
    public record Twins(String one, String other) {}
}

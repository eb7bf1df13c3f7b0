package fettle.space.worth;

import fettle.catalog.SlotId;
import java.util.Collections;
import java.util.Optional;
import java.util.SortedMap;

/**
 * How one part stands in one slot of one platform.
 *
 * @param merit what speaks for it where it is not dominated, cost ignored
 * @param meritForPrice what speaks for it where it is dominated, but not when cost counts
 * @param alike the parts without slots that stand there too, with equal roles and figures; of each whether the two can be swapped
 */
public record Placing(
        String platform, SlotId slot, PartWorth worth, Optional<Merit> merit, Optional<Merit> meritForPrice, SortedMap<String, Likeness> alike) {

    public Placing {
        alike = Collections.unmodifiableSortedMap(alike);
    }
}

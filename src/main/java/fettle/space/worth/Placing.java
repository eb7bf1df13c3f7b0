package fettle.space.worth;

import fettle.catalog.SlotId;
import java.util.Optional;

/**
 * How one part stands in one slot of one platform.
 *
 * @param merit what speaks for it where it is not dominated, cost ignored
 * @param meritForPrice what speaks for it where it is dominated, but not when cost counts
 */
public record Placing(String platform, SlotId slot, PartWorth worth, Optional<Merit> merit, Optional<Merit> meritForPrice) {}

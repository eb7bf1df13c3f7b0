package fettle.space;

import fettle.catalog.SlotId;
import java.util.List;

/**
 * One slot of a placed part or of the platform, with what sits in it.
 *
 * @param index its number among the slots of the build, from 0
 * @param owner the number of the placed part that bears it, or {@link Placement#PLATFORM}
 * @param path slot ids from the platform outward
 * @param occupants the numbers of the placed parts in it, in the order written
 * @param doubtful whether the build also puts something there that the catalog doesn't have, or something by a path that may mean this slot
 */
public record SlotUse(int index, int owner, SlotId slot, String path, List<Integer> occupants, boolean doubtful) {}

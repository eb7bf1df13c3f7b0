package fettle.space.patch;

import fettle.catalog.Build;
import fettle.space.BuildResult;
import fettle.space.Change;
import fettle.space.FormerName;
import java.util.List;
import java.util.Optional;

/**
 * What a patch did to one build.
 *
 * @param figures the totals and the cost that moved, totals first
 * @param crossings the limits crossed
 * @param blame of a build broken or mended, the differences that did it: without them it would be as before, and none can be left out; empty where
 *     none of those that touch the build account for it
 * @param renamed the ids in it that probably changed
 * @param renamedSlots the slots in it that hold something and probably go by other ids now
 * @param formerNames what it names by new ids, and so was judged by old ones before
 * @param repair of a broken build, the nearest repair
 * @param unread of a build that isn't as it was, the entries that it rests on and that seem gone, though they may stand in what could not be read of the new catalog: nothing
 *     can be said of it then, nor is a repair sought
 * @param keeping of a broken build whose nearest repair throws parts out that there still are, the nearest one found that has them too
 */
public record BuildShift(
        Build build,
        BuildResult before,
        BuildResult after,
        Verdict verdict,
        List<FigureShift> figures,
        List<LimitCrossing> crossings,
        List<Change> blame,
        List<RenamedUse> renamed,
        List<SlotRename> renamedSlots,
        List<FormerName> formerNames,
        List<Change> unread,
        Optional<RepairOutcome> repair,
        Optional<Repair> keeping) {

    public BuildShift {
        figures = List.copyOf(figures);
        crossings = List.copyOf(crossings);
        blame = List.copyOf(blame);
        renamed = List.copyOf(renamed);
        renamedSlots = List.copyOf(renamedSlots);
        formerNames = List.copyOf(formerNames);
        unread = List.copyOf(unread);
    }

    /** Whether it broke. */
    public boolean broken() {
        return verdict == Verdict.BROKEN;
    }

    /** Whether it shifted. */
    public boolean shifted() {
        return verdict == Verdict.SHIFTED;
    }
}

package fettle.space.worth;

import fettle.space.Contents;
import fettle.space.Stand;
import java.util.List;

/**
 * Where a part stands among what a slot can hold.
 *
 * @param stands the stands of assemblies that it heads and of which some can be bought
 * @param sets the sets of roles that these serve, the smallest first
 * @param contested the same, but for those that nothing else there serves; the ones that the fewest other parts serve first
 */
record Place(Contents contents, int head, List<Stand> stands, List<Long> sets, List<Long> contested) {

    Place {
        stands = List.copyOf(stands);
        sets = List.copyOf(sets);
        contested = List.copyOf(contested);
    }

    /** Whether for some set of roles there is nothing else. */
    boolean alone() {
        return contested.size() < sets.size();
    }

    /** Whether the slot may hold nothing, so that nothing is a choice among what serves no role. */
    static boolean orNothing(Contents contents) {
        return !contents.room().filled();
    }
}

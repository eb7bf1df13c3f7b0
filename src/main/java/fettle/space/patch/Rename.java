package fettle.space.patch;

import fettle.space.Change;
import fettle.space.EntryName;
import java.util.List;

/**
 * A guess that an entry of the old catalog goes by another id in the new one.
 *
 * @param equal how many properties both state alike, the kind not counted
 * @param differing how many properties only one states, or both in different ways; neither label nor offers count
 * @param labelled whether both state the same label
 * @param namesNear whether the ids or the labels are alike
 * @param changes in what they differ, offers and label included
 */
public record Rename(EntryName from, EntryName to, int equal, int differing, boolean labelled, boolean namesNear, List<Change> changes) {

    public Rename {
        changes = List.copyOf(changes);
    }
}

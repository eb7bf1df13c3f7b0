package fettle.space.best;

import fettle.catalog.BuildEntry;
import fettle.space.Occurrence;
import fettle.space.Placement;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/** Finds what of an old assembly falls off a new one: a part that stays in another place, as the new head or at the end of a chain, does not. */
record FallenOff(Placement placement) {

    /**
     * The paths of what falls off, each with all that hangs on it, unless that stays.
     *
     * @param below what hung directly on the old head
     * @param whole the paths of what is carried over with all that hangs on it
     * @param made the new assembly without that
     */
    List<String> of(List<Occurrence> below, Set<String> whole, List<BuildEntry> made) {
        List<String> left = new ArrayList<>(made.stream().map(BuildEntry::part).toList());
        List<String> fallen = new ArrayList<>();
        below.stream().filter(old -> !whole.contains(old.path())).forEach(old -> walk(old, left, fallen));
        return List.copyOf(fallen);
    }

    private void walk(Occurrence old, List<String> left, List<String> fallen) {
        if (left.remove(old.part())) {
            placement.parts().stream().filter(part -> placement.hostOf(part) == old.index()).forEach(part -> walk(part, left, fallen));
        } else {
            fallen.add(old.path());
        }
    }
}

package fettle.space.worth;

import fettle.space.Contents;
import fettle.space.Stand;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;

/** Where each part that can be bought stands, whatever the lens. */
final class Places {

    private final RoleSets roles;
    private final SortedMap<Integer, List<Place>> byHead = new TreeMap<>();
    private final Map<Contents, List<Place>> byContents = new IdentityHashMap<>();

    Places(Collection<Contents> all, RoleSets roles) {
        this.roles = roles;
        all.forEach(this::gather);
        byHead.values().forEach(places -> places.sort(Comparator.<Place>comparingInt(place -> place.sets().size()).thenComparingInt(place -> place.contents().stands().size())));
    }

    /** By part, the places in which some of its assemblies can be bought, those with the fewest sets of roles first. */
    SortedMap<Integer, List<Place>> byHead() {
        return byHead;
    }

    /** All that can be bought among what a slot can hold, the parts with the fewest stands first. */
    List<Place> in(Contents contents) {
        return byContents.get(contents);
    }

    private void gather(Contents contents) {
        SortedMap<Integer, List<Stand>> stands = new TreeMap<>();
        contents.stands().stream().filter(stand -> roles.served(stand.node()).size() > 0)
                .forEach(stand -> stands.computeIfAbsent(stand.head(), unused -> new ArrayList<>()).add(stand));
        Map<Long, Integer> rivals = new HashMap<>();
        if (Place.orNothing(contents)) {
            rivals.put(0L, 1);
        }
        SortedMap<Integer, List<Long>> sets = new TreeMap<>();
        stands.forEach((head, some) -> {
            List<Long> served = sets(some);
            sets.put(head, served);
            served.forEach(set -> rivals.merge(set, 1, Integer::sum));
        });
        List<Place> here = new ArrayList<>();
        stands.forEach((head, some) -> {
            List<Long> contested = sets.get(head).stream().filter(set -> rivals.get(set) > 1).sorted(Comparator.<Long>comparingInt(rivals::get).thenComparing(SmallestFirst.ORDER)).toList();
            Place place = new Place(contents, head, some, sets.get(head), contested);
            here.add(place);
            byHead.computeIfAbsent(head, unused -> new ArrayList<>()).add(place);
        });
        here.sort(Comparator.comparingInt(place -> place.stands().size()));
        byContents.put(contents, here);
    }

    private List<Long> sets(List<Stand> stands) {
        return Arrays.stream(stands.stream().map(stand -> roles.served(stand.node()).sets()).reduce(new long[0], SmallestFirst::either)).boxed().toList();
    }
}

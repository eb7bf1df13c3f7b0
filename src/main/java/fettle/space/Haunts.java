package fettle.space;

import fettle.catalog.SlotId;
import fettle.relation.Relations;
import fettle.relation.SlotRoom;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Where chains of fits lead on one platform, by which it is seen what can't come about there: things that never meet, or that have one place only. */
public final class Haunts {

    private final Relations relations;
    private final Set<String> hosts;
    private final Map<String, Set<SlotId>> seats = new HashMap<>();
    private final Map<String, Boolean> several = new HashMap<>();

    private Haunts(Relations relations, Set<String> hosts) {
        this.relations = relations;
        this.hosts = hosts;
    }

    /** Those of each platform that leads to a part, or is the one asked of; where none does, those of a catalog in which all could meet. */
    public static List<Haunts> of(Relations relations, String id) {
        List<Haunts> found = new ArrayList<>();
        Terrain terrain = Terrain.of(relations);
        for (String platform : relations.catalog().platforms().keySet()) {
            Set<String> hosts = Reach.of(terrain, terrain.number(platform)).partNames();
            hosts.add(platform);
            if (hosts.contains(id)) {
                found.add(new Haunts(relations, hosts));
            }
        }
        if (found.isEmpty()) {
            Set<String> all = new HashSet<>(relations.catalog().parts().keySet());
            all.addAll(relations.catalog().platforms().keySet());
            found.add(new Haunts(relations, all));
        }
        return List.copyOf(found);
    }

    /** Whether a part is led to, or a platform is this one. */
    public boolean holds(String host) {
        return hosts.contains(host);
    }

    /** Whether anything can sit in a slot. */
    public boolean used(SlotId slot) {
        return hosts.contains(slot.host()) && !relations.candidates(slot).isEmpty();
    }

    /** Whether a part can sit in a slot. */
    public boolean fits(SlotId slot, String part) {
        return hosts.contains(slot.host()) && relations.fits(slot, part);
    }

    /** Whether a part can sit elsewhere than in one occurrence of a slot; a platform sits in none. */
    public boolean elsewhere(String host, SlotId slot) {
        return hosts.contains(host) && (!fits(slot, host) || seats(host).size() > 1 || several(slot.host()));
    }

    /** Whether there are places for more than one occurrence of a part. */
    public boolean several(String host) {
        Boolean known = several.get(host);
        if (known == null) {
            // A part that leads back to itself is not counted on for another place.
            several.put(host, false);
            known = seats(host).size() > 1 || seats(host).stream().anyMatch(slot -> twice(slot, host) || several(slot.host()));
            several.put(host, known);
        }
        return known;
    }

    private boolean twice(SlotId slot, String part) {
        SlotRoom room = relations.room(slot);
        return room.most() > 1 && !room.distinct() && (room.notches().isEmpty() || room.notches().getAsInt() >= 2 * relations.span(part));
    }

    private Set<SlotId> seats(String part) {
        return seats.computeIfAbsent(part, unused -> {
            Set<SlotId> found = new LinkedHashSet<>();
            hosts.stream().map(relations::slots).flatMap(Collection::stream).filter(slot -> relations.fits(slot, part)).forEach(found::add);
            return found;
        });
    }
}

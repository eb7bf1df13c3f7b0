package fettle.space.patch;

import fettle.catalog.SlotId;
import fettle.space.Occurrence;
import fettle.space.PathMove;
import fettle.space.Placement;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * A build laid out as the new catalog has it, all parts where they were: what sat in a renamed slot sits in it by its new id.
 *
 * @param start the build so laid out
 * @param paths by each seat of it that was another before, how the build writes its slot, and how it is to be written
 * @param notches the first notch of the part in a seat, for those whose notch the build states
 */
record MovedSlots(Arrangement start, Map<String, PathMove> paths, SortedMap<String, Integer> notches) {

    MovedSlots {
        paths = Map.copyOf(paths);
        notches = Collections.unmodifiableSortedMap(new TreeMap<>(notches));
    }

    /** A build as it was placed, by old ids of its parts or by new ones. */
    static MovedSlots of(Placement before, Collection<SlotRename> renames) {
        Map<SlotId, String> now = new HashMap<>();
        renames.forEach(rename -> {
            now.put(new SlotId(rename.formerHost(), rename.from()), rename.to());
            now.put(new SlotId(rename.host().id(), rename.from()), rename.to());
        });
        List<String> seats = new ArrayList<>();
        Map<String, String> held = new TreeMap<>();
        Map<String, PathMove> paths = new TreeMap<>();
        SortedMap<String, Integer> notches = new TreeMap<>();
        for (Occurrence part : before.parts()) {
            int host = before.hostOf(part);
            SlotId slot = before.slotOf(part).slot();
            String bearer = host == Placement.PLATFORM ? before.platform() : before.parts().get(host).part();
            String above = host == Placement.PLATFORM ? "" : seats.get(host) + "/";
            String seat = above + now.getOrDefault(new SlotId(bearer, slot.slot()), slot.slot()) + ":" + part.entry().position();
            seats.add(seat);
            held.put(seat, part.part());
            part.at().ifPresent(at -> notches.put(seat, at));
            String written = part.entry().path();
            String rewritten = rewritten(written, seat);
            if (!rewritten.equals(written)) {
                paths.put(seat, new PathMove(written, rewritten));
            }
        }
        return new MovedSlots(new Arrangement(new TreeMap<>(held)), paths, notches);
    }

    /** A path with the slots of a seat, and a position wherever it has one. */
    private static String rewritten(String path, String seat) {
        String[] written = path.split("/");
        String[] segments = seat.split("/");
        List<String> steps = new ArrayList<>();
        for (int i = 0; i < segments.length; i++) {
            int colon = written[i].indexOf(':');
            steps.add(Arrangement.slot(segments[i]) + (colon < 0 ? "" : written[i].substring(colon)));
        }
        return String.join("/", steps);
    }

    /** What is to be written at another path, of what still sits there once a build is repaired, each slot once. */
    List<PathMove> kept(Arrangement repaired) {
        Set<PathMove> kept = new LinkedHashSet<>();
        paths.entrySet().stream().sorted(Map.Entry.comparingByKey()).filter(path -> repaired.at(path.getKey()).isPresent()).forEach(path -> kept.add(path.getValue()));
        return List.copyOf(kept);
    }
}

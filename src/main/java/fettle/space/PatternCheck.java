package fettle.space;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Whether a build breaks a pattern of clauses, found by trying every way to meet its conditions. */
final class PatternCheck {

    /**
     * Something placed: a part, the platform, or a slot in use.
     *
     * @param number of the host, or of the slot in the terrain
     * @param index tells parts from parts, and slots in use from each other
     * @param use the slot in use that it is, or is directly in
     */
    private record Thing(boolean slot, int number, int index, int use) {

        /** A part and the slot that it sits in itself are not different. */
        boolean different(Thing other) {
            return slot == other.slot ? index != other.index : use != other.use;
        }
    }

    private final List<Thing> things = new ArrayList<>();

    PatternCheck(int platform, Specimen specimen) {
        things.add(new Thing(false, platform, -1, -1));
        Map<List<Integer>, Integer> uses = new HashMap<>();
        for (int i = 0; i < specimen.placed().size(); i++) {
            Specimen.Placed part = specimen.placed().get(i);
            Integer known = uses.putIfAbsent(List.of(part.host(), part.slot()), uses.size());
            int use = known == null ? uses.size() - 1 : known;
            if (known == null) {
                things.add(new Thing(true, part.slot(), use, use));
            }
            things.add(new Thing(false, part.part(), i, use));
        }
    }

    boolean breaks(Pattern pattern) {
        List<List<Thing>> when = new ArrayList<>();
        for (Things wanted : pattern.when()) {
            List<Thing> meeting = meeting(wanted);
            if (meeting.isEmpty()) {
                return false;
            }
            when.add(meeting);
        }
        return breaks(pattern, when, meeting(pattern.need()), new ArrayList<>());
    }

    private List<Thing> meeting(Things wanted) {
        return things.stream().filter(thing -> wanted.has(thing.slot, thing.number)).toList();
    }

    private static boolean breaks(Pattern pattern, List<List<Thing>> when, List<Thing> need, List<Thing> chosen) {
        if (chosen.size() == when.size()) {
            return need.stream().noneMatch(thing -> !pattern.apart() || chosen.stream().allMatch(thing::different));
        }
        for (Thing thing : when.get(chosen.size())) {
            if (!pattern.apart() || chosen.stream().allMatch(thing::different)) {
                chosen.add(thing);
                boolean broken = breaks(pattern, when, need, chosen);
                chosen.remove(chosen.size() - 1);
                if (broken) {
                    return true;
                }
            }
        }
        return false;
    }
}

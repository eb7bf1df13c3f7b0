package fettle.space;

import fettle.catalog.BuildEntry;
import fettle.catalog.SlotId;
import fettle.document.Origin;
import fettle.relation.Relations;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * Seeks a valid build of a platform that has some parts, by hanging each on the shortest chains of fits that lead to it and filling what must hold something. What is found is
 * proof, since it is checked like any build; that nothing is found says nothing.
 */
final class Muster {

    private static final int MOST_TRIED = 3_000;
    private static final int MOST_CHAINS = 8;
    private static final String FIRST = ":0";
    private static final Origin NOWHERE = Origin.startOf("");

    private final Relations relations;
    private final Violations violations;
    private final Chains chains;
    private final String platform;
    private int tried;

    Muster(Relations relations, String platform) {
        this.relations = relations;
        this.violations = new Violations(relations);
        this.chains = new Chains(relations);
        this.platform = platform;
    }

    /** A valid build with these parts, by path. */
    Optional<SortedMap<String, String>> with(List<String> parts) {
        return with(new TreeMap<>(), parts);
    }

    private Optional<SortedMap<String, String>> with(SortedMap<String, String> placed, List<String> parts) {
        if (parts.isEmpty()) {
            return filled(placed);
        }
        List<String> others = parts.subList(1, parts.size());
        if (placed.containsValue(parts.get(0))) {
            return with(placed, others);
        }
        for (Map.Entry<String, SlotId> free : free(placed).entrySet()) {
            for (List<Chains.Link> chain : chains.shortest(free.getValue(), parts.get(0), MOST_CHAINS)) {
                if (++tried > MOST_TRIED) {
                    return Optional.empty();
                }
                SortedMap<String, String> more = new TreeMap<>(placed);
                String path = free.getKey();
                for (Chains.Link link : chain) {
                    path = more.containsKey(path) ? path + "/" + segment(link.slot()) : path;
                    more.put(path, link.part());
                }
                Optional<SortedMap<String, String>> found = with(more, others);
                if (found.isPresent()) {
                    return found;
                }
            }
        }
        return Optional.empty();
    }

    private Optional<SortedMap<String, String>> filled(SortedMap<String, String> placed) {
        Optional<Map.Entry<String, SlotId>> lacking = free(placed).entrySet().stream().filter(free -> relations.room(free.getValue()).filled()).findFirst();
        if (lacking.isEmpty()) {
            return valid(placed) ? Optional.of(placed) : Optional.empty();
        }
        for (String part : relations.candidates(lacking.get().getValue())) {
            if (++tried > MOST_TRIED) {
                return Optional.empty();
            }
            SortedMap<String, String> more = new TreeMap<>(placed);
            more.put(lacking.get().getKey(), part);
            Optional<SortedMap<String, String>> found = filled(more);
            if (found.isPresent()) {
                return found;
            }
        }
        return Optional.empty();
    }

    /** The slots that hold nothing, by the path of what would be in them. */
    private SortedMap<String, SlotId> free(SortedMap<String, String> placed) {
        SortedMap<String, SlotId> free = new TreeMap<>();
        relations.slots(platform).forEach(slot -> free.put(segment(slot), slot));
        placed.forEach((path, part) -> relations.slots(part).forEach(slot -> free.put(path + "/" + segment(slot), slot)));
        free.keySet().removeAll(placed.keySet());
        return free;
    }

    /** A position is named where a slot can hold several. */
    private String segment(SlotId slot) {
        return slot.slot() + (relations.room(slot).most() > 1 ? FIRST : "");
    }

    private boolean valid(SortedMap<String, String> placed) {
        List<BuildEntry> entries = new ArrayList<>();
        placed.forEach((path, part) -> entries.add(new BuildEntry(
                path.endsWith(FIRST) ? path.substring(0, path.length() - FIRST.length()) : path, 0, part, OptionalInt.empty(), NOWHERE, NOWHERE)));
        Placement placement = Placement.of(relations, platform, entries);
        return placement.unresolved().isEmpty() && violations.none(placement);
    }
}

package fettle.space.patch;

import fettle.catalog.SlotId;
import fettle.relation.Relations;
import java.util.ArrayDeque;
import java.util.Collection;
import java.util.Deque;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;

/** Tells which platforms a chain of fits leads from to a part. */
public final class Reach {

    private Reach() {}

    /** The platforms of each of these parts, in either of two catalogs; none for a part that no platform leads to. */
    public static SortedMap<String, SortedSet<String>> of(Collection<String> parts, Relations old, Relations now) {
        SortedMap<String, SortedSet<String>> reach = new TreeMap<>();
        parts.forEach(part -> reach.put(part, new TreeSet<>()));
        if (!reach.isEmpty()) {
            for (Relations relations : List.of(old, now)) {
                for (String platform : relations.catalog().platforms().keySet()) {
                    Set<String> reached = reached(relations, platform);
                    reach.forEach((part, platforms) -> {
                        if (reached.contains(part)) {
                            platforms.add(platform);
                        }
                    });
                }
            }
        }
        return reach;
    }

    /** Slots share their lists of parts, so each list is walked once. */
    private static Set<String> reached(Relations relations, String platform) {
        Set<String> reached = new HashSet<>();
        Map<List<String>, Boolean> walked = new IdentityHashMap<>();
        Deque<String> hosts = new ArrayDeque<>(List.of(platform));
        while (!hosts.isEmpty()) {
            for (SlotId slot : relations.slots(hosts.pop())) {
                List<String> candidates = relations.candidates(slot);
                if (walked.put(candidates, true) == null) {
                    candidates.stream().filter(reached::add).filter(part -> !relations.slots(part).isEmpty()).forEach(hosts::push);
                }
            }
        }
        return reached;
    }
}

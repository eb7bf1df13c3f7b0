package fettle.space;

import fettle.catalog.Part;
import fettle.catalog.SlotId;
import fettle.relation.Relations;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.Stream;

/** Tells from which slots one part can be reached through fits, and by which shortest chains. Worked out once, outward from the part. */
public final class Approach {

    private final Relations relations;
    private final String part;
    private final Map<SlotId, Integer> steps = new HashMap<>();

    public Approach(Relations relations, String part) {
        this.relations = relations;
        this.part = part;
        Set<SlotId> open = new LinkedHashSet<>();
        Stream.concat(relations.catalog().platforms().values().stream(), relations.catalog().parts().values().stream())
                .map(Part::id)
                .forEach(host -> open.addAll(relations.slots(host)));
        Set<String> seen = new HashSet<>(Set.of(part));
        Set<String> reached = Set.of(part);
        for (int step = 1; !reached.isEmpty(); step++) {
            Set<String> hosts = new HashSet<>();
            for (SlotId slot : List.copyOf(open)) {
                if (relations.candidates(slot).stream().anyMatch(reached::contains)) {
                    steps.put(slot, step);
                    open.remove(slot);
                    hosts.add(slot.host());
                }
            }
            hosts.removeAll(seen);
            seen.addAll(hosts);
            reached = hosts;
        }
    }

    /** The number of parts in a shortest chain from a slot to the part, the part included; empty where there is no chain. */
    public OptionalInt steps(SlotId slot) {
        return steps.containsKey(slot) ? OptionalInt.of(steps.get(slot)) : OptionalInt.empty();
    }

    /** The shortest chains from a slot to the part, up to {@code most}, in order of the ids on the way. */
    public List<Chain> chains(SlotId slot, int most) {
        List<Chain> found = new ArrayList<>();
        extend(slot, new ArrayList<>(), found, most);
        return List.copyOf(found);
    }

    private void extend(SlotId slot, List<Chains.Link> chain, List<Chain> found, int most) {
        int left = steps.getOrDefault(slot, 0);
        for (String candidate : left == 0 ? List.<String>of() : relations.candidates(slot)) {
            if (found.size() == most) {
                return;
            }
            chain.add(new Chains.Link(slot, candidate));
            if (candidate.equals(part)) {
                found.add(new Chain(chain));
            } else if (left > 1) {
                for (SlotId next : relations.slots(candidate)) {
                    if (steps.getOrDefault(next, 0) == left - 1) {
                        extend(next, chain, found, most);
                    }
                }
            }
            chain.remove(chain.size() - 1);
        }
    }
}

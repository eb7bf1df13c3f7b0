package fettle.space;

import fettle.catalog.SlotId;
import fettle.relation.Relations;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/** Finds chains of adapters: how a part can be brought into a slot through other parts. */
public final class Chains {

    /** A part in a slot of the one before it in the chain. */
    public record Link(SlotId slot, String part) {}

    private final Relations relations;

    public Chains(Relations relations) {
        this.relations = relations;
    }

    /**
     * The chains of fits that take a part to a slot, each from the slot outward and ending with the part: the shortest, up to {@code most} of them in order
     * of the parts' ids; none where there is no chain. A part that fits straight away is a chain of one link. No part stands twice in a chain.
     */
    public List<List<Link>> shortest(SlotId slot, String part, int most) {
        List<List<Link>> level = new ArrayList<>();
        level.add(List.of());
        Set<String> passed = new HashSet<>();
        while (!level.isEmpty()) {
            List<List<Link>> found = new ArrayList<>();
            List<List<Link>> next = new ArrayList<>();
            Set<String> reached = new HashSet<>();
            for (List<Link> chain : level) {
                for (SlotId open : chain.isEmpty() ? List.of(slot) : relations.slots(chain.get(chain.size() - 1).part())) {
                    for (String candidate : relations.candidates(open)) {
                        List<Link> longer = new ArrayList<>(chain);
                        longer.add(new Link(open, candidate));
                        if (candidate.equals(part)) {
                            found.add(List.copyOf(longer));
                        } else if (!passed.contains(candidate) && !relations.slots(candidate).isEmpty() && reached.add(candidate)) {
                            next.add(List.copyOf(longer));
                        }
                    }
                }
            }
            if (!found.isEmpty()) {
                return List.copyOf(found.subList(0, Math.min(most, found.size())));
            }
            passed.addAll(reached);
            level = next;
        }
        return List.of();
    }
}

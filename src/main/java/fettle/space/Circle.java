package fettle.space;

import fettle.catalog.SlotId;
import fettle.relation.Relations;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Parts of which each can come to stand, directly or through others, on any other of them and on itself.
 *
 * @param parts all of them, in order
 * @param round a shortest way from a slot of the first part back to that part
 */
public record Circle(List<String> parts, Chain round) {

    public Circle {
        parts = List.copyOf(parts);
    }

    /** The part that they are told under. */
    public String first() {
        return parts.get(0);
    }

    /** All circles, each part in at most one. */
    static List<Circle> of(Relations relations, Terrain terrain) {
        int[][] carries = new int[terrain.parts()][];
        for (int part = 0; part < terrain.parts(); part++) {
            Set<Integer> next = new LinkedHashSet<>();
            for (int slot : terrain.slotsOf()[part]) {
                for (int candidate : terrain.candidates()[slot]) {
                    next.add(candidate);
                }
            }
            carries[part] = next.stream().mapToInt(Integer::intValue).toArray();
        }
        Components components = new Components(carries);
        Chains chains = new Chains(relations);
        List<Circle> circles = new ArrayList<>();
        for (int i = 0; i < components.count(); i++) {
            int[] members = components.members(i);
            if (members.length > 1 || Arrays.stream(carries[members[0]]).anyMatch(next -> next == members[0])) {
                List<String> parts = Arrays.stream(members).mapToObj(terrain.hosts()::get).sorted().toList();
                circles.add(new Circle(parts, new Chain(back(relations, chains, parts.get(0)))));
            }
        }
        circles.sort(Comparator.comparing(circle -> circle.parts().get(0)));
        return circles;
    }

    private static List<Chains.Link> back(Relations relations, Chains chains, String part) {
        Optional<List<Chains.Link>> shortest = Optional.empty();
        for (SlotId slot : relations.slots(part)) {
            for (List<Chains.Link> chain : chains.shortest(slot, part, 1)) {
                if (shortest.isEmpty() || chain.size() < shortest.get().size()) {
                    shortest = Optional.of(chain);
                }
            }
        }
        return shortest.orElseThrow();
    }
}

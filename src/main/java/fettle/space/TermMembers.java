package fettle.space;

import fettle.catalog.SlotId;
import fettle.relation.Relations;
import fettle.relation.Term;
import java.util.HashMap;
import java.util.Map;

/** Which hosts and slots meet a term, by number; each term is looked up once. */
final class TermMembers {

    private final Relations relations;
    private final Terrain terrain;
    private final Map<SlotId, Integer> slotNumbers = new HashMap<>();
    private final Map<Term, int[]> hosts = new HashMap<>();
    private final Map<Term, int[]> slots = new HashMap<>();

    TermMembers(Relations relations, Terrain terrain) {
        this.relations = relations;
        this.terrain = terrain;
        for (SlotId slot : terrain.slots()) {
            slotNumbers.put(slot, slotNumbers.size());
        }
    }

    /** The parts and platforms that meet a term; none for a term that speaks of slots. */
    int[] hosts(Term term) {
        return hosts.computeIfAbsent(term, wanted -> relations.members(wanted).keySet().stream()
                .filter(terrain.numbers()::containsKey).mapToInt(terrain.numbers()::get).toArray());
    }

    /** The slots that meet a term when in use. */
    int[] slots(Term term) {
        return slots.computeIfAbsent(term, wanted -> relations.slots(wanted).keySet().stream()
                .filter(slotNumbers::containsKey).mapToInt(slotNumbers::get).toArray());
    }

    int slot(SlotId slot) {
        return slotNumbers.get(slot);
    }
}

package fettle.space;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;

/** What a pattern of clauses sees of each host and slot of a terrain, and the sorts of things that can be placed on it. */
final class ClauseMonitor {

    /** As many conditions as bits of a whole number can be told apart, beside those for the need and for the platform. */
    private static final int MOST_CONDITIONS = 29;

    private final Terrain terrain;
    private final int when;
    private final boolean need;
    private final boolean apart;
    private final boolean unconditional;
    private final boolean wanted;
    private final Map<Integer, Integer> hostBits = new TreeMap<>();
    private final Map<Integer, Integer> slotBits = new TreeMap<>();
    private final boolean bundled;

    ClauseMonitor(Pattern pattern, Terrain terrain) {
        this.terrain = terrain;
        // A clause without conditions is one whose condition each platform meets by itself.
        this.unconditional = pattern.when().isEmpty();
        this.when = Math.max(1, pattern.when().size());
        this.need = pattern.needed();
        this.apart = pattern.apart();
        this.wanted = pattern.wanted();
        if (when > MOST_CONDITIONS) {
            throw new TooLarge(TooLarge.What.RELATION, 1L << MOST_CONDITIONS);
        }
        for (int i = 0; i < pattern.when().size(); i++) {
            note(pattern.when().get(i), 1 << i);
        }
        note(pattern.need(), 1 << when);
        this.bundled = apart && !slotBits.isEmpty() && hostBits.keySet().stream().anyMatch(terrain::isPart);
    }

    private void note(Things things, int bit) {
        things.hosts().forEach(host -> hostBits.merge(host, bit, (one, other) -> one | other));
        things.slots().forEach(slot -> slotBits.merge(slot, bit, (one, other) -> one | other));
    }

    /** What it sees of hosts, by number, where it sees anything. */
    Map<Integer, Integer> hostBits() {
        return hostBits;
    }

    /** What it sees of slots, by number, where it sees anything. */
    Map<Integer, Integer> slotBits() {
        return slotBits;
    }

    /** Whether it takes a slot and the parts directly in it as one. */
    boolean bundled() {
        return bundled;
    }

    /** What it sees of each platform just because it is one; 0 where that is nothing. */
    int platformBits() {
        return (unconditional ? 1 : 0) | (wanted ? ClauseShape.platform(when) : 0);
    }

    /** How many parts that look the same matter in one slot. */
    int enough() {
        return ClauseShape.enough(when);
    }

    /** What remembers all that it must; see {@link ClauseShape}. */
    ClauseShape shape() {
        TreeSet<Bundle> things = new TreeSet<>();
        hostBits.values().forEach(bits -> things.add(Bundle.part(bits)));
        if (platformBits() != 0) {
            things.add(Bundle.part(platformBits()));
        }
        Map<List<Object>, Boolean> done = new HashMap<>();
        slotBits.forEach((slot, bits) -> {
            things.add(Bundle.slot(bits));
            if (bundled && done.put(List.of(terrain.candidates()[slot], terrain.room()[slot], bits), true) == null) {
                things.addAll(bundles(slot, bits));
            }
        });
        return new ClauseShape(when, need, apart, wanted, List.copyOf(things));
    }

    /** Every way in which a slot can be seen with the parts in it. */
    private List<Bundle> bundles(int slot, int bits) {
        Map<Integer, Integer> copies = new TreeMap<>();
        for (int part : terrain.candidates()[slot]) {
            Integer head = hostBits.get(part);
            if (head != null) {
                copies.merge(head, terrain.room()[slot].distinct() ? 1 : enough(), (one, other) -> Math.min(enough(), one + other));
            }
        }
        List<List<Integer>> heads = new ArrayList<>(List.of(List.of()));
        copies.forEach((head, most) -> {
            for (List<Integer> before : List.copyOf(heads)) {
                List<Integer> more = before;
                for (int i = 0; i < most && more.size() < terrain.room()[slot].most(); i++) {
                    more = new ArrayList<>(more);
                    more.add(head);
                    heads.add(more);
                }
            }
        });
        return heads.stream().map(list -> new Bundle(bits, list)).toList();
    }
}

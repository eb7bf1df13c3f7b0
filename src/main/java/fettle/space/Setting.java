package fettle.space;

import fettle.relation.Clause;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** A platform with all that can be on it. */
final class Setting {

    private final Terrain terrain;
    private final TermMembers members;
    private final Bounds bounds;
    private final Map<Object, Monoid> shapes;
    private final int platform;
    private final BitSet reachable;
    private final List<Integer> hosts = new ArrayList<>();
    private final List<Integer> slots = new ArrayList<>();
    private final Takers takers;
    private final Map<Clause, Pattern> patterns = new HashMap<>();

    Setting(Terrain terrain, Takers takers, TermMembers members, Bounds bounds, Map<Object, Monoid> shapes, int platform) {
        this.terrain = terrain;
        this.takers = takers;
        this.members = members;
        this.bounds = bounds;
        this.shapes = shapes;
        this.platform = platform;
        this.reachable = Reach.of(terrain, platform).parts();
        hosts.add(platform);
        reachable.stream().forEach(hosts::add);
        for (int host : hosts) {
            for (int slot : terrain.slotsOf()[host]) {
                slots.add(slot);
            }
        }
    }

    Terrain terrain() {
        return terrain;
    }

    TermMembers members() {
        return members;
    }

    Bounds bounds() {
        return bounds;
    }

    Map<Object, Monoid> shapes() {
        return shapes;
    }

    int platform() {
        return platform;
    }

    /** Whether a chain of fits leads from the platform to a part. */
    boolean reachable(int part) {
        return reachable.get(part);
    }

    /** The platform and the parts to which chains of fits lead from it. */
    List<Integer> hosts() {
        return hosts;
    }

    /** Their slots. */
    List<Integer> slots() {
        return slots;
    }

    /** The number of a slot of no host, for parts that stand by themselves. */
    int loose() {
        return terrain.slots().size();
    }

    /** The slots, of the platform and of parts that can be on it, that a part fits. */
    int[] takers(int part) {
        return Arrays.stream(takers.of(part)).filter(slot -> terrain.owner()[slot] == platform || reachable.get(terrain.owner()[slot])).toArray();
    }

    Pattern pattern(Clause clause) {
        return patterns.computeIfAbsent(clause, unused -> Pattern.of(clause, members));
    }

    /** These parts, those in these slots, and all that can carry one of either. */
    BitSet carrying(BitSet parts, BitSet slotsMeant) {
        BitSet useful = new BitSet();
        Deque<Integer> open = new ArrayDeque<>();
        parts.stream().filter(terrain::isPart).forEach(open::push);
        slotsMeant.stream().filter(slot -> slot < loose()).forEach(slot -> open.push(terrain.owner()[slot]));
        while (!open.isEmpty()) {
            int part = open.pop();
            if (terrain.isPart(part) && !useful.get(part)) {
                useful.set(part);
                for (int slot : takers(part)) {
                    open.push(terrain.owner()[slot]);
                }
            }
        }
        return useful;
    }
}

package fettle.space;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * A terrain under its monitors, made ready for folding: slots that are alike in all that counts share a shape, and for each host and shape it is known
 * which events can happen in it.
 *
 * <p>Hosts and shapes are the nodes of a graph: hosts come first, by number, then shapes. A host leads to the shapes of its slots, a shape to its candidates.
 */
final class Ground {

    private record Key(int[] candidates, Capacity room, Object look) {
        @Override
        public boolean equals(Object other) {
            return other instanceof Key key && candidates == key.candidates && room.equals(key.room) && look.equals(key.look);
        }

        @Override
        public int hashCode() {
            return 31 * (31 * System.identityHashCode(candidates) + room.hashCode()) + look.hashCode();
        }
    }

    private final Terrain terrain;
    private final Monitors monitors;
    private final int[] nodeOfSlot;
    private final List<Integer> slotOfShape = new ArrayList<>();
    private final int[][] edges;
    private final Components components;
    private final int[][] inside;
    private final int[][] insideMonitors;
    private final int[][] joint;
    private final boolean[] circular;

    Ground(Terrain terrain, Monitors monitors) {
        this.terrain = terrain;
        this.monitors = monitors;
        int hosts = terrain.hosts().size();
        nodeOfSlot = new int[terrain.slots().size()];
        Map<Key, Integer> shapes = new HashMap<>();
        for (int[] slots : terrain.slotsOf()) {
            for (int slot : slots) {
                nodeOfSlot[slot] = shapes.computeIfAbsent(new Key(terrain.candidates()[slot], terrain.room()[slot], monitors.lookOf(slot)), unused -> {
                    slotOfShape.add(slot);
                    return hosts + slotOfShape.size() - 1;
                });
            }
        }
        int nodes = hosts + slotOfShape.size();
        edges = new int[nodes][];
        for (int host = 0; host < hosts; host++) {
            edges[host] = Arrays.stream(terrain.slotsOf()[host]).map(slot -> nodeOfSlot[slot]).distinct().toArray();
        }
        for (int node = hosts; node < nodes; node++) {
            edges[node] = terrain.candidates()[slotOfShape.get(node - hosts)];
        }
        components = new Components(edges);
        joint = new int[nodes][];
        inside = new int[nodes][];
        insideMonitors = new int[nodes][];
        circular = new boolean[components.count()];
        for (int c = 0; c < components.count(); c++) {
            circular[c] = components.members(c).length > 1;
            gather(components.members(c));
        }
    }

    /** Components come after all that they lead to, so that what those hold is known. */
    private void gather(int[] members) {
        if (members.length == 1 && edges[members[0]].length == 0 && isHost(members[0])) {
            int host = members[0];
            joint[host] = Numbers.NONE;
            inside[host] = Numbers.distinct(monitors.own(host));
            insideMonitors[host] = monitors.monitorsOf(inside[host]);
            return;
        }
        BitSet all = new BitSet();
        int[] only = Numbers.NONE;
        for (int node : members) {
            int[] own = isHost(node) ? Numbers.distinct(monitors.own(node)) : monitors.possible(slotOf(node), edges[node]);
            joint[node] = isHost(node) ? Numbers.NONE : own;
            only = own;
            for (int event : own) {
                all.set(event);
            }
            for (int next : edges[node]) {
                if (inside[next] != null) {
                    for (int event : inside[next]) {
                        all.set(event);
                    }
                }
            }
        }
        int[] events = all.cardinality() == only.length ? only : all.stream().toArray();
        int[] touched = monitors.monitorsOf(events);
        for (int node : members) {
            inside[node] = events;
            insideMonitors[node] = touched;
        }
    }

    Terrain terrain() {
        return terrain;
    }

    Monitors monitors() {
        return monitors;
    }

    int nodes() {
        return edges.length;
    }

    boolean isHost(int node) {
        return node < terrain.hosts().size();
    }

    /** The node of a slot's shape. */
    int nodeOf(int slot) {
        return nodeOfSlot[slot];
    }

    /** One of the slots of a shape. */
    int slotOf(int node) {
        return slotOfShape.get(node - terrain.hosts().size());
    }

    Capacity room(int node) {
        return terrain.room()[slotOf(node)];
    }

    /** The nodes that a node leads to. */
    int[] next(int node) {
        return edges[node];
    }

    /** The events that can happen in a node or below it. */
    int[] inside(int node) {
        return inside[node];
    }

    /** The monitors of the events that can happen in a node or below it, in rising order. */
    int[] insideMonitors(int node) {
        return insideMonitors[node];
    }

    /** The events of a shape that come about between a slot and the parts directly in it. */
    int[] joint(int shape) {
        return joint[shape];
    }

    Components components() {
        return components;
    }

    /** Whether a node can come back below itself. */
    boolean circular(int node) {
        return circular[components.of(node)];
    }

    /** All nodes that can be reached from a platform, itself included, each before those it leads to save in a circle. */
    int[] reachable(int platform) {
        BitSet seen = new BitSet();
        List<Integer> found = new ArrayList<>(List.of(platform));
        seen.set(platform);
        for (int i = 0; i < found.size(); i++) {
            for (int next : edges[found.get(i)]) {
                if (!seen.get(next)) {
                    seen.set(next);
                    found.add(next);
                }
            }
        }
        return found.stream().sorted((one, other) -> {
            int byComponent = Integer.compare(components.of(other), components.of(one));
            return byComponent != 0 ? byComponent : Integer.compare(one, other);
        }).mapToInt(Integer::intValue).toArray();
    }
}

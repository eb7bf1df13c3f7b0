package fettle.space;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * Folds the builds of platforms into a {@link Circuit}. Each slot is folded into classes of assemblies with the same signature; the slots of a host are
 * then combined one by one, and a relation is forgotten as soon as nothing that is left can touch it. What was folded once is used wherever the rest of the
 * build looks the same from inside, on this platform or another.
 *
 * <p>Where parts can hold each other in a circle, a fold also depends on the parts of the circle that stand above it.
 */
final class Fold {

    /** What a fold depends on: the node, the parts above that could come back below it, sorted, and how it is seen from outside. */
    private record Key(int node, List<Integer> above, Lens outlook) {
        @Override
        public boolean equals(Object other) {
            return other instanceof Key key && node == key.node && outlook == key.outlook && above.equals(key.above);
        }

        @Override
        public int hashCode() {
            return 31 * (31 * node + System.identityHashCode(outlook)) + above.hashCode();
        }
    }

    /** A node below some parts, sorted. */
    private record Under(int node, List<Integer> above) {
        @Override
        public boolean equals(Object other) {
            return other instanceof Under under && node == under.node && above.equals(under.above);
        }

        @Override
        public int hashCode() {
            return 31 * node + above.hashCode();
        }
    }

    private final Ground ground;
    private final Terrain terrain;
    private final Monitors monitors;
    private final Circuit circuit;
    private final Lenses lenses;
    private final Signatures signatures;
    private final Combining combining;
    private final Filling filling;
    private final boolean existenceOnly;
    private final Map<Key, Classes> done = new HashMap<>();
    private final Map<Under, List<Integer>> returning = new HashMap<>();

    private Outlook outlook;
    private Lens[] lensOfNode;

    Fold(Ground ground, Circuit circuit, Bounds bounds) {
        this(ground, circuit, bounds, false);
    }

    /**
     * A fold.
     *
     * @param existenceOnly whether one build of each sort is enough; then slots may be without bound, and sums have one term
     */
    Fold(Ground ground, Circuit circuit, Bounds bounds, boolean existenceOnly) {
        this.ground = ground;
        this.terrain = ground.terrain();
        this.monitors = ground.monitors();
        this.circuit = circuit;
        this.existenceOnly = existenceOnly;
        this.lenses = new Lenses(monitors);
        this.signatures = new Signatures(monitors);
        this.combining = new Combining(circuit, signatures, bounds);
        this.filling = new Filling(ground, lenses, combining);
    }

    /**
     * The node of all valid builds of a platform, {@link Circuit#NONE} where there are none.
     *
     * @throws TooLarge where the bounds are exceeded
     */
    int platform(int platform) {
        outlook = new Outlook(ground, platform);
        lensOfNode = new Lens[ground.nodes()];
        combining.reset();
        refuseEndless();
        Key root = new Key(platform, List.of(), Lens.CLEAR);
        Deque<Key> open = new ArrayDeque<>();
        open.push(root);
        while (!open.isEmpty()) {
            Key next = open.peek();
            if (done.containsKey(next)) {
                open.pop();
                continue;
            }
            List<Key> missing = missing(next);
            if (missing.isEmpty()) {
                open.pop();
                done.put(next, fold(next));
            } else {
                missing.forEach(open::push);
            }
        }
        Classes all = done.get(root);
        return all.size() == 0 ? Circuit.NONE : all.nodes()[0];
    }

    private Classes fold(Key key) {
        try {
            return ground.isHost(key.node) ? host(key) : shape(key);
        } catch (TooLarge tooLarge) {
            throw tooLarge.at(name(key.node));
        }
    }

    /** A path without end, or a slot that takes the same part any number of times, has no last build to count. */
    private void refuseEndless() {
        for (int node : outlook.nodes()) {
            boolean free = !ground.isHost(node) && !existenceOnly && ground.room(node).endless() && ground.next(node).length > 0;
            if (free || ground.circular(node) && endless(node)) {
                throw new TooLarge(TooLarge.What.ENDLESS, 0).at(name(node));
            }
        }
    }

    /** Whether a path can come back to this node through nothing but parts that may come back. */
    private boolean endless(int start) {
        BitSet seen = new BitSet();
        Deque<Integer> open = new ArrayDeque<>(List.of(start));
        while (!open.isEmpty()) {
            for (int next : ground.next(open.pop())) {
                boolean free = !ground.isHost(next) || terrain.turns()[next] == Terrain.ENDLESS;
                if (next == start && free) {
                    return true;
                }
                if (free && ground.components().of(next) == ground.components().of(start) && !seen.get(next)) {
                    seen.set(next);
                    open.push(next);
                }
            }
        }
        return false;
    }

    private String name(int node) {
        return ground.isHost(node) ? terrain.hosts().get(node) : terrain.slots().get(ground.slotOf(node)).toString();
    }

    private List<Key> missing(Key key) {
        List<Key> missing = new ArrayList<>();
        if (ground.isHost(key.node)) {
            for (int slot : terrain.slotsOf()[key.node]) {
                note(shapeKey(key, slot), missing);
            }
        } else {
            for (int part : ground.next(key.node)) {
                if (open(key, part)) {
                    note(partKey(key, part), missing);
                }
            }
        }
        return missing;
    }

    private void note(Key key, List<Key> missing) {
        if (!done.containsKey(key)) {
            missing.add(key);
        }
    }

    /** Whether a part may stand in a slot, given what stands above. */
    private boolean open(Key shape, int part) {
        return turnsLeft(part, shape.above);
    }

    private Key partKey(Key shape, int part) {
        return new Key(part, stillBelow(part, shape.above), lens(part));
    }

    private Key shapeKey(Key host, int slot) {
        int shape = ground.nodeOf(slot);
        List<Integer> above = host.above;
        if (ground.circular(host.node) && terrain.isPart(host.node) && terrain.turns()[host.node] != Terrain.ENDLESS) {
            above = new ArrayList<>(above);
            above.add(host.node);
            above.sort(null);
        }
        return new Key(shape, stillBelow(shape, above), lens(shape));
    }

    /** Those of the parts above that could come back below a node. Asked over and over for the same, where parts stand on each other in a circle. */
    private List<Integer> stillBelow(int node, List<Integer> above) {
        if (above.isEmpty() || !ground.circular(node)) {
            return List.of();
        }
        return returning.computeIfAbsent(new Under(node, above), this::returning);
    }

    private List<Integer> returning(Under under) {
        int component = ground.components().of(under.node);
        BitSet seen = new BitSet();
        Deque<Integer> open = new ArrayDeque<>(List.of(under.node));
        while (!open.isEmpty()) {
            for (int next : ground.next(open.pop())) {
                combining.spend(1);
                if (ground.components().of(next) == component && !seen.get(next)) {
                    seen.set(next);
                    boolean barred = ground.isHost(next) && !turnsLeft(next, under.above);
                    if (!barred) {
                        open.push(next);
                    }
                }
            }
        }
        return under.above.stream().filter(seen::get).toList();
    }

    private boolean turnsLeft(int part, List<Integer> above) {
        int left = terrain.turns()[part];
        for (int each : above) {
            if (each == part) {
                left--;
            }
        }
        return left > 0;
    }

    private Lens lens(int node) {
        if (lensOfNode[node] == null) {
            lensOfNode[node] = lenses.lens(ground.insideMonitors(node), outlook.base(), ground.inside(node), outlook.outside(node));
        }
        return lensOfNode[node];
    }

    /** The classes of a part with all that can be on it, or of a platform's builds. */
    private Classes host(Key key) {
        int host = key.node;
        boolean part = terrain.isPart(host);
        SlotOrder order = new SlotOrder(ground, host, part ? outlook.outside(host) : Numbers.NONE);
        int[] base = part ? outlook.base() : new int[monitors.count()];
        int[] events = monitors.own(host);
        Lens first = lenses.lens(monitors.monitorsOf(events), base, order.behind(), order.ahead());
        int own = signatures.see(first, signatures.plus(Signatures.NOTHING, events));
        if (own == Signatures.HOPELESS) {
            return Classes.NONE;
        }
        Classes combined = Classes.of(own, Circuit.ONE);
        while (order.more()) {
            int slot = order.next(open -> done.get(shapeKey(key, open)).size());
            Classes choices = choices(slot, done.get(shapeKey(key, slot)));
            if (!part && !order.more()) {
                int all = Join.of(combining, monitors, combined, choices);
                return all == Circuit.NONE ? Classes.NONE : Classes.of(Signatures.NOTHING, all);
            }
            Lens lens = lenses.lens(ground.insideMonitors(ground.nodeOf(slot)), base, order.behind(), order.ahead());
            combined = combining.both(combined, choices, lens);
        }
        return part ? new Classes(combined.signatures(), Arrays.stream(combined.nodes()).map(node -> circuit.part(host, node)).toArray()) : combined;
    }

    /** What may be in one slot of a host, nothing included where it need not be filled. */
    private Classes choices(int slot, Classes filled) {
        Gathering gathered = combining.gathering();
        if (!terrain.room()[slot].filled()) {
            gathered.add(Signatures.NOTHING, Circuit.ONE);
        }
        for (int i = 0; i < filled.size(); i++) {
            gathered.add(filled.signatures()[i], circuit.slot(slot, filled.nodes()[i]));
        }
        return gathered.classes();
    }

    /** The classes of what can be in a slot of some shape, other than nothing. */
    private Classes shape(Key key) {
        Capacity room = ground.room(key.node);
        List<Filling.Item> items = new ArrayList<>();
        for (int part : ground.next(key.node)) {
            if (open(key, part) && terrain.span()[part] <= room.notches()) {
                Classes assemblies = done.get(partKey(key, part));
                if (assemblies.size() > 0) {
                    items.add(new Filling.Item(part, terrain.span()[part], assemblies));
                }
            }
        }
        if (room.most() == 0 || items.isEmpty()) {
            return Classes.NONE;
        }
        return room.most() == 1 ? alone(key, items) : filling.fill(key.node, items, outlook);
    }

    private Classes alone(Key key, List<Filling.Item> items) {
        int slot = ground.slotOf(key.node);
        Gathering gathered = combining.gathering();
        for (Filling.Item item : items) {
            Classes assemblies = item.assemblies();
            combining.spend(assemblies.size());
            int[] events = monitors.alone(slot, item.part());
            for (int i = 0; i < assemblies.size(); i++) {
                int seen = signatures.see(key.outlook, signatures.plus(assemblies.signatures()[i], events));
                if (seen != Signatures.HOPELESS) {
                    gathered.add(seen, assemblies.nodes()[i]);
                }
            }
        }
        return gathered.classes();
    }
}

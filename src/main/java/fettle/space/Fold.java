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

    private final Ground ground;
    private final Terrain terrain;
    private final Monitors monitors;
    private final Circuit circuit;
    private final Bounds bounds;
    private final Lenses lenses;
    private final boolean existenceOnly;
    private final Map<Key, Classes> done = new HashMap<>();

    private Outlook outlook;
    private Lens[] lensOfNode;
    private long work;

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
        this.bounds = bounds;
        this.existenceOnly = existenceOnly;
        this.lenses = new Lenses(monitors);
    }

    /**
     * The node of all valid builds of a platform, {@link Circuit#NONE} where there are none.
     *
     * @throws TooLarge where the bounds are exceeded
     */
    int platform(int platform) {
        outlook = new Outlook(ground, platform);
        lensOfNode = new Lens[ground.nodes()];
        work = 0;
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
                done.put(next, ground.isHost(next.node) ? host(next) : shape(next));
            } else {
                missing.forEach(open::push);
            }
        }
        Classes all = done.get(root);
        return all.size() == 0 ? Circuit.NONE : all.nodes()[0];
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
        int turns = terrain.turns()[part];
        return turns == Terrain.ENDLESS || shape.above.stream().filter(above -> above == part).count() < turns;
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

    /** Those of the parts above that could come back below a node. */
    private List<Integer> stillBelow(int node, List<Integer> above) {
        if (above.isEmpty() || !ground.circular(node)) {
            return List.of();
        }
        int component = ground.components().of(node);
        BitSet seen = new BitSet();
        Deque<Integer> open = new ArrayDeque<>(List.of(node));
        while (!open.isEmpty()) {
            for (int next : ground.next(open.pop())) {
                spend(1);
                if (ground.components().of(next) == component && !seen.get(next)) {
                    seen.set(next);
                    boolean barred = ground.isHost(next) && above.stream().filter(part -> part == next).count() >= terrain.turns()[next];
                    if (!barred) {
                        open.push(next);
                    }
                }
            }
        }
        return above.stream().filter(seen::get).toList();
    }

    private Lens lens(int node) {
        if (lensOfNode[node] == null) {
            lensOfNode[node] = lenses.lens(ground.insideMonitors(node), outlook.base(), ground.inside(node), outlook.outside(node));
        }
        return lensOfNode[node];
    }

    private void spend(long amount) {
        work += amount;
        if (work > bounds.work()) {
            throw new TooLarge(TooLarge.What.WORK, bounds.work());
        }
    }

    private Classes classes(Classes.Gathered gathered, int node) {
        if (gathered.size() > bounds.states()) {
            throw new TooLarge(TooLarge.What.STATES, bounds.states()).at(name(node));
        }
        return gathered.classes(circuit::either);
    }

    /** The classes of a part with all that can be on it, or of a platform's builds. */
    private Classes host(Key key) {
        int host = key.node;
        boolean part = terrain.isPart(host);
        SlotOrder order = new SlotOrder(ground, host, part ? outlook.outside(host) : Numbers.NONE);
        int[] base = part ? outlook.base() : new int[monitors.count()];
        Signature own = monitors.plus(Signature.NOTHING, monitors.own(host));
        Signature start = lenses.lens(monitors.monitorsOf(monitors.own(host)), base, order.behind(), order.ahead()).see(own);
        if (start == null) {
            return Classes.NONE;
        }
        Classes combined = Classes.of(start, Circuit.ONE);
        while (order.more()) {
            int slot = order.next(shape -> done.get(shapeKey(key, shape)).size());
            Classes choices = choices(slot, done.get(shapeKey(key, slot)));
            Lens lens = lenses.lens(ground.insideMonitors(ground.nodeOf(slot)), base, order.behind(), order.ahead());
            combined = combine(combined, choices, lens, host);
        }
        if (!part) {
            return combined;
        }
        int[] nodes = Arrays.stream(combined.nodes()).map(node -> circuit.part(host, node)).toArray();
        return new Classes(combined.signatures(), nodes);
    }

    /** What may be in one slot of a host, nothing included where it need not be filled. */
    private Classes choices(int slot, Classes filled) {
        Classes.Gathered gathered = new Classes.Gathered();
        if (!terrain.room()[slot].filled()) {
            gathered.add(Signature.NOTHING, Circuit.ONE);
        }
        for (int i = 0; i < filled.size(); i++) {
            gathered.add(filled.signatures().get(i), circuit.slot(slot, filled.nodes()[i]));
        }
        return gathered.classes(circuit::either);
    }

    private Classes combine(Classes one, Classes other, Lens lens, int node) {
        spend((long) one.size() * other.size());
        Classes.Gathered gathered = new Classes.Gathered();
        for (int i = 0; i < one.size(); i++) {
            for (int j = 0; j < other.size(); j++) {
                Signature both = lens.see(monitors.plus(one.signatures().get(i), other.signatures().get(j)));
                if (both != null) {
                    gathered.add(both, circuit.both(one.nodes()[i], other.nodes()[j]));
                }
            }
            if (gathered.size() > bounds.states()) {
                throw new TooLarge(TooLarge.What.STATES, bounds.states()).at(name(node));
            }
        }
        return classes(gathered, node);
    }

    /** The classes of what can be in a slot of some shape, other than nothing. */
    private Classes shape(Key key) {
        Capacity room = ground.room(key.node);
        int slot = ground.slotOf(key.node);
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
        if (room.most() == 1) {
            return alone(key, slot, items);
        }
        Filling filling = new Filling(ground, key.node, circuit, lenses, outlook, bounds, this::spend);
        return filling.fill(items);
    }

    private Classes alone(Key key, int slot, List<Filling.Item> items) {
        Classes.Gathered gathered = new Classes.Gathered();
        for (Filling.Item item : items) {
            Classes assemblies = item.assemblies();
            spend(assemblies.size());
            int[] events = monitors.alone(slot, item.part());
            for (int i = 0; i < assemblies.size(); i++) {
                Signature seen = key.outlook.see(monitors.plus(assemblies.signatures().get(i), events));
                if (seen != null) {
                    gathered.add(seen, assemblies.nodes()[i]);
                }
            }
        }
        return classes(gathered, key.node);
    }
}

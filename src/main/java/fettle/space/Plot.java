package fettle.space;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.IntSupplier;

/**
 * One platform's valid builds, slot by slot, and what the rest of them can hold around each part and slot: for each relation the set of states that the rest brings about.
 *
 * <p>One relation at a time is enough to tell what may be swapped: a build is broken when some relation is, and each state in such a set is brought about by a valid build.
 */
public final class Plot {

    private final Ground ground;
    private final Circuit circuit;
    private final Watches watches;
    private final Uplinks uplinks;
    private final int platform;
    private final int[] base;
    private final int root;
    private final BitSet nodes;
    private final Map<Integer, NodeTable> outside = new HashMap<>();
    /** By monitor, by slot. */
    private final Map<Integer, Map<Integer, Vicinity>> vicinities = new HashMap<>();
    /** The slots that a part's node stands in. */
    private final Ancestry standing;
    /** The parts that may not stand below themselves and stand above a node in some valid build. */
    private final Ancestry above;
    private final List<Site> sites = new ArrayList<>();

    Plot(Ground ground, Circuit circuit, Watches watches, Uplinks uplinks, Stock stock, int platform, int[] base, int root) {
        this.ground = ground;
        this.circuit = circuit;
        this.watches = watches;
        this.uplinks = uplinks;
        this.platform = platform;
        this.base = base;
        this.root = root;
        this.nodes = Evaluation.below(circuit, root);
        this.standing = new Ancestry(uplinks, nodes, this::slotOrNothing, node -> circuit.kind(node) == Circuit.Kind.SLOT);
        this.above = new Ancestry(uplinks, nodes, this::turningOrNothing, node -> false);
        Map<Integer, List<Integer>> uses = new TreeMap<>();
        for (int node = nodes.nextSetBit(0); node >= 0; node = nodes.nextSetBit(node + 1)) {
            if (circuit.kind(node) == Circuit.Kind.SLOT) {
                uses.computeIfAbsent(circuit.first(node), unused -> new ArrayList<>()).add(node);
            }
        }
        uses.forEach((slot, inUse) -> {
            inUse.sort((one, other) -> Integer.compare(circuit.second(one), circuit.second(other)));
            List<Integer> classes = inUse.stream().map(circuit::second).toList();
            boolean circular = ground.circular(ground.nodeOf(slot));
            List<BitSet> turning = inUse.stream().map(use -> circular ? above.of(use) : new BitSet()).toList();
            sites.add(new Site(this, watches, stock.of(slot, classes, turning), slot, inUse));
        });
    }

    /** The platform's number. */
    public int platform() {
        return platform;
    }

    /** The slots that hold something in some valid build, by number. */
    public List<Site> sites() {
        return List.copyOf(sites);
    }

    /** The number of the set of states that the rest of a valid build can bring to a monitor, around a part, a slot in use, or another node of a host's slots. */
    int outside(int monitor, int node) {
        if (node == root) {
            return watches.of(monitor).states().of(base[monitor]);
        }
        NodeTable known = outside.computeIfAbsent(monitor, unused -> new NodeTable());
        int states = known.get(node);
        if (states == NodeTable.NONE) {
            states = circuit.kind(node) == Circuit.Kind.PART ? aroundPart(monitor, node) : aroundShare(monitor, node);
            known.put(node, states);
        }
        return states;
    }

    private int aroundShare(int monitor, int node) {
        Watch watch = watches.of(monitor);
        int all = StateSets.EMPTY;
        for (int i = 0; i < uplinks.count(node); i++) {
            int parent = uplinks.parent(node, i);
            if (nodes.get(parent)) {
                int more = outside(monitor, parent);
                all = watch.states().union(all, switch (circuit.kind(parent)) {
                    case EITHER -> more;
                    case BOTH -> watch.states().sums(more, watch.inside(circuit.first(parent) == node ? circuit.second(parent) : circuit.first(parent)));
                    case PART -> watch.states().sums(more, watch.states().of(watch.own(circuit.first(parent))));
                    case ONE, SLOT, SEVERAL -> throw new IllegalStateException("a slot stands in a slot without a part between");
                });
            }
        }
        return all;
    }

    /** What is around a part as a host: whatever slot it stands in. */
    private int aroundPart(int monitor, int part) {
        Watch watch = watches.of(monitor);
        int all = StateSets.EMPTY;
        BitSet slots = standing.of(part);
        for (int slot = slots.nextSetBit(0); slot >= 0; slot = slots.nextSetBit(slot + 1)) {
            int before = watch.filling().sums(around(monitor, slot, part), watch.filling().of(watch.brought(slot, circuit.first(part))));
            all = watch.states().union(all, watch.closed(slot, before));
        }
        return all;
    }

    /** The number of the set of states, before a slot is full, of all that can be around a part or lot in it. */
    int around(int monitor, int slot, int node) {
        return vicinities.computeIfAbsent(monitor, unused -> new HashMap<>()).computeIfAbsent(slot, unused -> new Vicinity(monitor, slot)).around(node);
    }

    /** What can be around the parts and lots in one slot, for one monitor. */
    private final class Vicinity {

        private final Watch watch;
        private final int monitor;
        private final int slot;
        private final IntTable known = new IntTable();

        Vicinity(int monitor, int slot) {
            this.watch = watches.of(monitor);
            this.monitor = monitor;
            this.slot = slot;
        }

        int around(int node) {
            int states = known.get(node);
            if (states == IntTable.NONE) {
                states = StateSets.EMPTY;
                for (int i = 0; i < uplinks.count(node); i++) {
                    int parent = uplinks.parent(node, i);
                    if (nodes.get(parent)) {
                        states = watch.filling().union(states, within(parent, node));
                    }
                }
                known.put(node, states);
            }
            return states;
        }

        private int within(int parent, int node) {
            int first = circuit.first(parent);
            int second = circuit.second(parent);
            return switch (circuit.kind(parent)) {
                case SLOT -> first == slot ? watch.opened(outside(monitor, parent)) : StateSets.EMPTY;
                case EITHER -> around(parent);
                case SEVERAL -> beside(around(parent), () -> watch.times(watch.within(slot, first), second - 1));
                case BOTH -> beside(around(parent), () -> watch.within(slot, first == node ? second : first));
                case ONE, PART -> throw new IllegalStateException("a part stands on a part without a slot between");
            };
        }

        /** Lots that stand in other slots have nothing around them here, and may not even be possible here. */
        private int beside(int around, IntSupplier others) {
            return around == StateSets.EMPTY ? StateSets.EMPTY : watch.filling().sums(around, others.getAsInt());
        }
    }

    private int slotOrNothing(int node) {
        return circuit.kind(node) == Circuit.Kind.SLOT ? circuit.first(node) : Ancestry.NOTHING;
    }

    /** A part that may not stand below itself as often as one likes, and could. */
    private int turningOrNothing(int node) {
        int part = circuit.first(node);
        boolean turning = circuit.kind(node) == Circuit.Kind.PART && ground.circular(part) && ground.terrain().turns()[part] != Terrain.ENDLESS;
        return turning ? part : Ancestry.NOTHING;
    }
}

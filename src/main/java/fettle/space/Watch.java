package fettle.space;

import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * What the nodes of a circuit bring to one monitor: for each the set of states that its assemblies have.
 *
 * <p>Until a slot is full, a monitor may have to tell what the parts in it have brought so far from what has been gathered of the parts directly in it; both
 * are then written as one number.
 */
final class Watch {

    private final Ground ground;
    private final Monitors monitors;
    private final Circuit circuit;
    private final int monitor;
    private final Monoid monoid;
    private final int gatherer;
    private final int width;
    private final StateSets states;
    private final StateSets filling;
    private final NodeTable inside = new NodeTable();
    private final Map<Integer, IntTable> within = new HashMap<>();
    private final PairTable closed = new PairTable();
    private final PairTable brought = new PairTable();
    private final PairTable noWorse = new PairTable();

    Watch(Ground ground, Circuit circuit, int monitor) {
        this.ground = ground;
        this.monitors = ground.monitors();
        this.circuit = circuit;
        this.monitor = monitor;
        this.monoid = monitors.monoid(monitor);
        this.gatherer = monitors.gatherer(monitor);
        this.width = gatherer < 0 ? 1 : monitors.monoid(gatherer).states();
        this.states = new StateSets(monoid::plus);
        this.filling = width == 1 ? states : new StateSets(this::plus);
    }

    private int plus(int one, int other) {
        return monoid.plus(one / width, other / width) * width + monitors.monoid(gatherer).plus(one % width, other % width);
    }

    /** Sets of the monitor's states. */
    StateSets states() {
        return states;
    }

    /** Sets of states in a slot that is not yet full. */
    StateSets filling() {
        return filling;
    }

    Monoid monoid() {
        return monoid;
    }

    /** Whether something in a node of the ground, or below it, concerns the monitor. */
    private boolean touches(int groundNode) {
        return Arrays.binarySearch(ground.insideMonitors(groundNode), monitor) >= 0;
    }

    /** What a part brings by itself, whatever slot it is in. */
    int own(int part) {
        return monitors.plus(Signature.NOTHING, monitors.own(part)).stateOf(monitor);
    }

    /** The set of the states that the assemblies of a part, of a slot in use, or of a host's slots bring. */
    int inside(int node) {
        int first = circuit.first(node);
        switch (circuit.kind(node)) {
            case ONE:
                return StateSets.ZERO;
            case PART:
                if (!touches(first)) {
                    return StateSets.ZERO;
                }
                break;
            case SLOT:
                if (!touches(ground.nodeOf(first))) {
                    return StateSets.ZERO;
                }
                break;
            case BOTH, EITHER, SEVERAL:
                break;
        }
        int known = inside.get(node);
        if (known == NodeTable.NONE) {
            known = switch (circuit.kind(node)) {
                case PART -> states.sums(states.of(own(first)), inside(circuit.second(node)));
                case SLOT -> closed(first, within(first, circuit.second(node)));
                case BOTH -> states.sums(inside(first), inside(circuit.second(node)));
                case EITHER -> {
                    int all = StateSets.EMPTY;
                    for (int i = 0; i < circuit.width(node); i++) {
                        all = states.union(all, inside(circuit.alternative(node, i)));
                    }
                    yield all;
                }
                case ONE, SEVERAL -> throw new IllegalStateException("a part stands on a part without a slot between");
            };
            inside.put(node, known);
        }
        return known;
    }

    /** The set of the states that a node of a slot's contents brings before the slot is full. */
    int within(int slot, int node) {
        IntTable table = within.computeIfAbsent(ground.nodeOf(slot), unused -> new IntTable());
        int known = table.get(node);
        if (known == IntTable.NONE) {
            int first = circuit.first(node);
            known = switch (circuit.kind(node)) {
                case ONE -> StateSets.ZERO;
                case PART -> filling.sums(opened(inside(node)), filling.of(brought(slot, first)));
                case BOTH -> filling.sums(within(slot, first), within(slot, circuit.second(node)));
                case SEVERAL -> times(within(slot, first), circuit.second(node));
                case EITHER -> {
                    int all = StateSets.EMPTY;
                    for (int i = 0; i < circuit.width(node); i++) {
                        all = filling.union(all, within(slot, circuit.alternative(node, i)));
                    }
                    yield all;
                }
                case SLOT -> throw new IllegalStateException("a slot stands in a slot without a part between");
            };
            table.put(node, known);
        }
        return known;
    }

    /** So many of a set, in no order. */
    int times(int set, int copies) {
        int all = StateSets.ZERO;
        for (int i = 0; i < copies; i++) {
            all = filling.sums(all, set);
        }
        return all;
    }

    /** States as they are in a slot in which nothing was gathered. */
    int opened(int set) {
        return width == 1 ? set : filling.of(Arrays.stream(states.get(set)).map(state -> state * width).toArray());
    }

    /** What a part directly in a slot brings there, whatever is on it, before the slot is full. */
    int brought(int slot, int head) {
        int look = ground.nodeOf(slot);
        int known = brought.get(look, head);
        if (known == PairTable.NONE) {
            Signature joint = monitors.plus(Signature.NOTHING, monitors.among(slot, head));
            known = joint.stateOf(monitor) * width + (width == 1 ? 0 : joint.stateOf(gatherer));
            brought.put(look, head, known);
        }
        return known;
    }

    /** The states once a slot is full and in use. */
    int closed(int slot, int before) {
        int look = ground.nodeOf(slot);
        int known = closed.get(look, before);
        if (known == PairTable.NONE) {
            known = states.of(Arrays.stream(filling.get(before))
                    .map(state -> monoid.plus(state / width, monitors.used(slot, monitor, state % width))).sorted().distinct().toArray());
            closed.put(look, before, known);
        }
        return known;
    }

    /** Whether some state of one set in place of some of another never breaks the relation where the other would not; those of each set being alike. */
    boolean noWorse(int set, int other) {
        for (int one : states.get(set)) {
            for (int before : states.get(other)) {
                if (stateNoWorse(one, before)) {
                    return true;
                }
            }
        }
        return false;
    }

    private boolean stateNoWorse(int one, int before) {
        if (one == before || monoid.states() > MOST_COMPARED) {
            return one == before;
        }
        int known = noWorse.get(one, before);
        if (known == PairTable.NONE) {
            known = monoid.noWorse(one, before) ? 1 : 0;
            noWorse.put(one, before, known);
        }
        return known == 1;
    }

    private static final int MOST_COMPARED = 1024;

    /** Whether two parts directly in a slot are gathered alike. */
    boolean sameGathered(int brought, int other) {
        return brought % width == other % width;
    }

    /** A set with what a part directly in a slot brings, leaving aside what is gathered. */
    int plusFilling(int set, int brought) {
        return states.sums(set, states.of(brought / width));
    }

    /**
     * Whether what is made from assemblies with another head never breaks the relation where those would not, whatever is kept and whatever stands around.
     */
    boolean rehungNoWorse(int slot, int head, Rehung to) {
        int before = brought(slot, head);
        int after = brought(slot, to.head());
        if (!sameGathered(before, after)) {
            return false;
        }
        int made = added(to, monoid.plus(own(to.head()), after / width));
        int had = monoid.plus(own(head), before / width);
        int[] choices = states.get(choices(to.dropped()));
        for (int choice : choices) {
            if (!stateNoWorse(made, monoid.plus(had, choice))) {
                return false;
            }
        }
        return true;
    }

    /**
     * The same where both fill a slot of one part by themselves.
     *
     * @param placed by state that something in the slot has in some valid build, sets of states that are alike there
     */
    boolean rehungAmong(int slot, int head, Rehung to, Map<Integer, List<Integer>> placed) {
        int made = added(to, own(to.head()));
        int[] dropped = states.get(choices(to.dropped()));
        for (int kept : states.get(choices(to.kept()))) {
            List<Integer> after = placed.get(full(slot, to.head(), monoid.plus(made, kept)));
            for (int choice : dropped) {
                List<Integer> before = placed.get(full(slot, head, monoid.plus(monoid.plus(own(head), choice), kept)));
                // What nothing valid has need not be served.
                if (before != null && (after == null || after.stream().noneMatch(set -> before.stream().anyMatch(other -> noWorse(set, other))))) {
                    return false;
                }
            }
        }
        return true;
    }

    /** The state of a slot that is full with a part and what is on it. */
    private int full(int slot, int head, int state) {
        return states.get(closed(slot, filling.sums(opened(states.of(state)), filling.of(brought(slot, head)))))[0];
    }

    /** The set of the states that what some slots hold can have together. */
    private int choices(List<Held> slots) {
        int all = StateSets.ZERO;
        for (Held held : slots) {
            all = states.sums(all, choices(held));
        }
        return all;
    }

    private int choices(Held held) {
        int all = held.orNothing() ? StateSets.ZERO : StateSets.EMPTY;
        for (int use : held.uses()) {
            all = states.union(all, inside(use));
        }
        return all;
    }

    /** A state with one of those of what is added, which are alike. */
    private int added(Rehung to, int state) {
        int all = state;
        for (Held held : to.added()) {
            all = monoid.plus(all, states.get(inside(held.uses().get(0)))[0]);
        }
        return all;
    }

    /** Every state that what was made brings before its slot is full. */
    int madeOf(int slot, Rehung to) {
        int all = states.sums(states.of(added(to, own(to.head()))), choices(to.kept()));
        return filling.sums(opened(all), filling.of(brought(slot, to.head())));
    }

    /** Whether some of a set of states outside breaks the relation together with some of another set. */
    boolean breaks(int outside, int brought) {
        for (int around : states.get(outside)) {
            for (int state : states.get(brought)) {
                if (monoid.broken(monoid.plus(around, state))) {
                    return true;
                }
            }
        }
        return false;
    }
}

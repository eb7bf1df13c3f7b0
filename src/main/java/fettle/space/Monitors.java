package fettle.space;

import fettle.relation.Agreement;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * Every relation between placed things as a monitor: a state that each thing placed may change. An event is one sort of thing being placed as one
 * monitor sees it; events are numbered in the order of their monitors.
 *
 * <p>Monitors that see a slot and the parts directly in it as one have a second monitor that gathers what those parts are while a slot is being filled.
 */
final class Monitors {

    private static final int[] NO_EVENTS = {};

    private record Seen(int monitor, int bits) {
        // Written out, as in SlotId.
        @Override
        public boolean equals(Object other) {
            return other instanceof Seen that && monitor == that.monitor && bits == that.bits;
        }

        @Override
        public int hashCode() {
            return 31 * monitor + bits;
        }
    }

    private final Bounds bounds;
    private final Map<Object, Monoid> shapes;
    private final Terrain terrain;
    private final List<Monoid> monoids = new ArrayList<>();
    private final List<Map<Bundle, Integer>> events = new ArrayList<>();
    private final List<Integer> enough = new ArrayList<>();
    private final List<Integer> first = new ArrayList<>();
    private final Map<Integer, List<Integer>> own = new HashMap<>();
    private final Map<Integer, List<Seen>> heads = new HashMap<>();
    private final Map<Integer, List<Seen>> slots = new HashMap<>();
    private final Map<Integer, Gathered> gathering = new TreeMap<>();
    private int[] monitorOf;
    private int[] generatorOf;
    private int[][] ownEvents;
    private int relations;

    /** Gathers the parts that stand directly in a slot, as one monitor sees them. */
    private record Gathered(int monitor, Monoid monoid, List<List<Integer>> states, List<Integer> sorts) {}

    private Monitors(Terrain terrain, Bounds bounds, Map<Object, Monoid> shapes) {
        this.terrain = terrain;
        this.bounds = bounds;
        this.shapes = shapes;
    }

    /**
     * Sets up the monitors that can ever see their relation broken.
     *
     * @param shapes monoids by shape, to be shared
     * @throws TooLarge where one would need more states than the bounds allow
     */
    static Monitors of(Rules rules, Terrain terrain, TermMembers members, Bounds bounds, Map<Object, Monoid> shapes) {
        return of(rules.clauses().stream().map(clause -> Pattern.of(clause, members)).toList(), rules.agreements(), terrain, bounds, shapes);
    }

    /** The same for clauses that have been numbered already. */
    static Monitors of(List<Pattern> patterns, List<Agreement> agreed, Terrain terrain, Bounds bounds, Map<Object, Monoid> shapes) {
        Monitors monitors = new Monitors(terrain, bounds, shapes);
        Pattern.merged(patterns).forEach(pattern -> monitors.watch(new ClauseMonitor(pattern, terrain)));
        Map<String, List<Agreement>> traits = new TreeMap<>();
        agreed.forEach(agreement -> traits.computeIfAbsent(agreement.trait(), unused -> new ArrayList<>()).add(agreement));
        traits.forEach((trait, agreements) -> {
            try {
                monitors.watch(agreements);
            } catch (TooLarge tooLarge) {
                throw tooLarge.at(trait);
            }
        });
        monitors.finish();
        return monitors;
    }

    private void watch(ClauseMonitor clause) {
        ClauseShape shape = clause.shape();
        Monoid monoid = shapes.computeIfAbsent(shape, unused -> shape.states(bounds.relationStates()));
        if (monoid.states() == 1) {
            return;
        }
        int monitor = add(monoid, clause.enough());
        for (int g = 0; g < shape.things().size(); g++) {
            if (!monoid.idle(g)) {
                events.get(monitor).put(shape.things().get(g), first.get(monitor) + g);
            }
        }
        clause.hostBits().forEach((host, bits) -> {
            if (clause.bundled() && terrain.isPart(host)) {
                heads.computeIfAbsent(host, unused -> new ArrayList<>()).add(new Seen(monitor, bits));
            } else {
                own(host, monitor, Bundle.part(bits));
            }
        });
        if (clause.platformBits() != 0) {
            for (int platform = terrain.parts(); platform < terrain.hosts().size(); platform++) {
                own(platform, monitor, Bundle.part(clause.platformBits()));
            }
        }
        clause.slotBits().forEach((slot, bits) -> slots.computeIfAbsent(slot, unused -> new ArrayList<>()).add(new Seen(monitor, bits)));
        if (clause.bundled()) {
            gathering.put(monitor, null);
        }
    }

    private void own(int host, int monitor, Bundle thing) {
        Integer event = events.get(monitor).get(thing);
        if (event != null) {
            own.computeIfAbsent(host, unused -> new ArrayList<>()).add(event);
        }
    }

    private void watch(List<Agreement> agreements) {
        List<Collection<String>> lists = new ArrayList<>(new java.util.LinkedHashSet<>(agreements.stream().map(Agreement::values).toList()));
        AgreementShape shape = AgreementShape.of(lists);
        Monoid monoid = shapes.computeIfAbsent(shape, unused -> shape.states(bounds.relationStates()));
        if (monoid.states() == 1) {
            return;
        }
        int monitor = add(monoid, 0);
        for (Agreement agreement : agreements) {
            int g = lists.indexOf(agreement.values());
            Integer host = terrain.numbers().get(agreement.part());
            if (host != null && !monoid.idle(g)) {
                own.computeIfAbsent(host, unused -> new ArrayList<>()).add(first.get(monitor) + g);
            }
        }
    }

    private int add(Monoid monoid, int copies) {
        int monitor = monoids.size();
        first.add(monitor == 0 ? 0 : first.get(monitor - 1) + monoids.get(monitor - 1).generators());
        monoids.add(monoid);
        events.add(new HashMap<>());
        enough.add(copies);
        return monitor;
    }

    private void finish() {
        relations = monoids.size();
        for (int monitor : List.copyOf(gathering.keySet())) {
            TreeSet<Integer> sorts = new TreeSet<>();
            heads.values().forEach(seen -> seen.stream().filter(one -> one.monitor == monitor).forEach(one -> sorts.add(one.bits)));
            List<Integer> list = List.copyOf(sorts);
            int cap = enough.get(monitor);
            Monoid.Explored<List<Integer>> all = Monoid.every(List.of(), list.size(), (held, sort) -> {
                List<Integer> more = new ArrayList<>(held);
                more.add(list.get(sort));
                more.sort(null);
                return held.stream().filter(list.get(sort)::equals).count() == cap ? held : List.copyOf(more);
            }, held -> false, bounds.relationStates());
            gathering.put(monitor, new Gathered(add(all.monoid(), cap), all.monoid(), all.states(), list));
        }
        int count = monoids.isEmpty() ? 0 : first.get(first.size() - 1) + monoids.get(monoids.size() - 1).generators();
        monitorOf = new int[count];
        generatorOf = new int[count];
        for (int m = 0; m < monoids.size(); m++) {
            for (int g = 0; g < monoids.get(m).generators(); g++) {
                monitorOf[first.get(m) + g] = m;
                generatorOf[first.get(m) + g] = g;
            }
        }
        ownEvents = new int[terrain.hosts().size()][];
        for (int host = 0; host < ownEvents.length; host++) {
            ownEvents[host] = sorted(own.getOrDefault(host, List.of()));
        }
    }

    private static int[] sorted(Collection<Integer> events) {
        return events.isEmpty() ? NO_EVENTS : events.stream().mapToInt(Integer::intValue).sorted().toArray();
    }

    /** How many monitors there are, without those that gather. */
    int count() {
        return relations;
    }

    Monoid monoid(int monitor) {
        return monoids.get(monitor);
    }

    /** How many events there are. */
    int events() {
        return monitorOf.length;
    }

    /** The number of a monitor's first event; its others follow. */
    int firstEvent(int monitor) {
        return monitor == first.size() ? monitorOf.length : first.get(monitor);
    }

    int monitorOf(int event) {
        return monitorOf[event];
    }

    int generatorOf(int event) {
        return generatorOf[event];
    }

    /** The events of a part or platform being placed, whatever slot it is in; sorted, and one twice where it counts twice. */
    int[] own(int host) {
        return ownEvents[host];
    }

    /** Whether some monitor takes a part and its slot as one. */
    boolean sticky(int part) {
        return heads.containsKey(part);
    }

    /** What monitors see of a slot in use, as a key that is equal for slots that look the same. */
    Object lookOf(int slot) {
        return slots.getOrDefault(slot, List.of());
    }

    /** The further events of a slot being in use with this part alone in it. */
    int[] alone(int slot, int part) {
        List<Seen> seenSlot = slots.getOrDefault(slot, List.of());
        List<Seen> seenPart = heads.getOrDefault(part, List.of());
        if (seenSlot.isEmpty() && seenPart.isEmpty()) {
            return NO_EVENTS;
        }
        List<Integer> found = new ArrayList<>();
        for (Seen head : seenPart) {
            put(found, head.monitor, new Bundle(bits(seenSlot, head.monitor), List.of(head.bits)));
        }
        for (Seen use : seenSlot) {
            if (bits(seenPart, use.monitor) == 0) {
                put(found, use.monitor, Bundle.slot(use.bits));
            }
        }
        return sorted(found);
    }

    /** The further events of a part being one of several in a slot; where the slot counts with its parts, they are gathered first. */
    int[] among(int slot, int part) {
        List<Seen> seenPart = heads.getOrDefault(part, List.of());
        if (seenPart.isEmpty()) {
            return NO_EVENTS;
        }
        List<Seen> seenSlot = slots.getOrDefault(slot, List.of());
        List<Integer> found = new ArrayList<>();
        for (Seen head : seenPart) {
            if (bits(seenSlot, head.monitor) == 0) {
                put(found, head.monitor, Bundle.part(head.bits));
            } else {
                Gathered gather = gathering.get(head.monitor);
                found.add(first.get(gather.monitor) + gather.sorts.indexOf(head.bits));
            }
        }
        return sorted(found);
    }

    /** Every event that a slot being in use may be or gather into, whatever is in it. */
    int[] possible(int slot, int[] candidates) {
        List<Seen> seenSlot = slots.getOrDefault(slot, List.of());
        if (seenSlot.isEmpty() && heads.isEmpty()) {
            return NO_EVENTS;
        }
        TreeSet<Integer> found = new TreeSet<>();
        for (Seen use : seenSlot) {
            events.get(use.monitor).forEach((bundle, event) -> {
                if (bundle.slot() == use.bits) {
                    found.add(event);
                }
            });
        }
        for (int part : candidates) {
            for (Seen head : heads.getOrDefault(part, List.of())) {
                if (bits(seenSlot, head.monitor) == 0) {
                    put(found, head.monitor, Bundle.part(head.bits));
                }
            }
        }
        return sorted(found);
    }

    private void put(Collection<Integer> found, int monitor, Bundle thing) {
        Integer event = events.get(monitor).get(thing);
        if (event != null) {
            found.add(event);
        }
    }

    private static int bits(List<Seen> seen, int monitor) {
        for (Seen one : seen) {
            if (one.monitor == monitor) {
                return one.bits;
            }
        }
        return 0;
    }

    /** Turns what was gathered in a slot that is now full into events of the slot with its parts. */
    Signature close(int slot, Signature gathered) {
        List<Seen> seenSlot = slots.getOrDefault(slot, List.of());
        if (seenSlot.isEmpty()) {
            return gathered;
        }
        List<Integer> found = new ArrayList<>();
        for (Seen use : seenSlot) {
            Gathered gather = gathering.get(use.monitor);
            List<Integer> held = gather == null ? List.of() : gather.states.get(gathered.stateOf(gather.monitor));
            put(found, use.monitor, new Bundle(use.bits, held));
        }
        int[] kept = new int[2 * gathered.size()];
        int length = 0;
        for (int i = 0; i < gathered.size() && gathered.monitor(i) < relations; i++) {
            kept[length++] = gathered.monitor(i);
            kept[length++] = gathered.state(i);
        }
        return plus(Signature.of(kept, length), sorted(found));
    }

    /** The monitor that gathers for a monitor the parts directly in a slot; -1 where none does. */
    int gatherer(int monitor) {
        Gathered gather = gathering.get(monitor);
        return gather == null ? -1 : gather.monitor;
    }

    /** The monitor for which a monitor gathers. */
    int gathersFor(int gatherer) {
        return gathering.entrySet().stream().filter(entry -> entry.getValue().monitor == gatherer).findFirst().orElseThrow().getKey();
    }

    /** The state that a slot in use brings to one monitor with the parts that were gathered for it. */
    int used(int slot, int monitor, int gathered) {
        int bits = bits(slots.getOrDefault(slot, List.of()), monitor);
        if (bits == 0) {
            return 0;
        }
        Gathered gather = gathering.get(monitor);
        List<Integer> held = gather == null ? List.of() : gather.states.get(gathered);
        Integer event = events.get(monitor).get(new Bundle(bits, held));
        return event == null ? 0 : monoids.get(monitor).add(0, generatorOf[event]);
    }

    /** The sum of two signatures. */
    Signature plus(Signature one, Signature other) {
        if (one.isNothing()) {
            return other;
        }
        if (other.isNothing()) {
            return one;
        }
        int[] pairs = new int[2 * (one.size() + other.size())];
        return Signature.of(pairs, plus(one, other, pairs));
    }

    /** Puts the pairs of the sum of two signatures into an array with room for those of both, and tells how many numbers that makes. */
    int plus(Signature one, Signature other, int[] pairs) {
        int length = 0;
        int i = 0;
        int j = 0;
        while (i < one.size() || j < other.size()) {
            int monitor;
            int state;
            if (j == other.size() || i < one.size() && one.monitor(i) < other.monitor(j)) {
                monitor = one.monitor(i);
                state = one.state(i++);
            } else if (i == one.size() || other.monitor(j) < one.monitor(i)) {
                monitor = other.monitor(j);
                state = other.state(j++);
            } else {
                monitor = one.monitor(i);
                state = monoids.get(monitor).plus(one.state(i++), other.state(j++));
            }
            if (state != 0) {
                pairs[length++] = monitor;
                pairs[length++] = state;
            }
        }
        return length;
    }

    /** A signature after some events; these are sorted, and one twice counts twice. */
    Signature plus(Signature one, int[] happened) {
        if (happened.length == 0) {
            return one;
        }
        int[] pairs = new int[2 * happened.length];
        int length = 0;
        for (int i = 0; i < happened.length;) {
            int monitor = monitorOf[happened[i]];
            int state = 0;
            for (; i < happened.length && monitorOf[happened[i]] == monitor; i++) {
                state = monoids.get(monitor).add(state, generatorOf[happened[i]]);
            }
            if (state != 0) {
                pairs[length++] = monitor;
                pairs[length++] = state;
            }
        }
        return plus(one, Signature.of(pairs, length));
    }

    /** Whether a signature of everything placed breaks a relation. */
    boolean broken(Signature all) {
        for (int i = 0; i < all.size(); i++) {
            if (monoids.get(all.monitor(i)).broken(all.state(i))) {
                return true;
            }
        }
        return false;
    }

    int[] monitorsOf(int[] sortedEvents) {
        return sortedEvents.length == 0 ? NO_EVENTS : Arrays.stream(sortedEvents).map(event -> monitorOf[event]).distinct().toArray();
    }
}

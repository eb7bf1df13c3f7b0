package fettle.space.best;

import fettle.catalog.SlotId;
import fettle.relation.Relations;
import fettle.space.Circuit;
import fettle.space.Folded;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;

/** Writes a circuit out as a plan: beside each place, what stood there before and what must be kept there. */
final class PlanMaker {

    /** So many parts of one slot can be compared with so many before. */
    static final int MOST_MARKS = 10;

    /** What is hung on a host, which stands where something stood before or must be kept, or on neither. */
    private record OnHost(int node, Optional<Mark> mark, SortedMap<String, List<Kept>> due) {}

    /** What is in a slot, with what may still be compared with it and what must still be found in it. */
    private record InSlot(int node, List<Mark> marks, List<Kept> due) {}

    private final Folded folded;
    private final Circuit circuit;
    private final boolean[] numbered;
    private final IntPredicate available;
    private final Plan plan = new Plan();
    private final int[] fresh;
    private final Map<OnHost, Integer> onHost = new HashMap<>();
    private final Map<InSlot, Integer> inSlot = new HashMap<>();
    private final Map<Integer, Set<String>> slotsIn = new HashMap<>();

    /**
     * A maker of one plan.
     *
     * @param available which parts, by number, can be had
     */
    PlanMaker(Folded folded, Relations relations, IntPredicate available) {
        this.folded = folded;
        this.circuit = folded.circuit();
        this.available = available;
        this.fresh = new int[circuit.size()];
        this.numbered = new boolean[folded.slots().size()];
        for (int slot = 0; slot < numbered.length; slot++) {
            numbered[slot] = relations.room(folded.slots().get(slot)).most() > 1;
        }
    }

    Plan plan() {
        return plan;
    }

    boolean numbered(int slot) {
        return numbered[slot];
    }

    /** The plan's node of all builds; {@link Plan#NONE} where none is left. */
    int root(Optional<Mark> before, Optional<Kept> kept) {
        if (folded.root() == Circuit.NONE) {
            return Plan.NONE;
        }
        makeFresh();
        return host(new OnHost(folded.root(), before, kept.map(Kept::slots).orElse(new TreeMap<>())));
    }

    /** Nodes where nothing stood before and nothing must be kept, each after what it is made of. */
    private void makeFresh() {
        for (int node = 0; node < fresh.length; node++) {
            int first = circuit.first(node);
            int second = circuit.second(node);
            fresh[node] = switch (circuit.kind(node)) {
                case ONE -> Plan.ONE;
                case PART -> available.test(first) ? plan.part(first, fresh[second], 1) : Plan.NONE;
                case SLOT -> plan.slot(first, fresh[second]);
                case BOTH -> plan.both(fresh[first], fresh[second]);
                case SEVERAL -> {
                    int all = fresh[first];
                    for (int i = 1; i < second; i++) {
                        all = plan.both(fresh[first], all);
                    }
                    yield all;
                }
                case EITHER -> {
                    List<Integer> some = new ArrayList<>();
                    for (int i = 0; i < second; i++) {
                        some.add(fresh[circuit.alternative(node, i)]);
                    }
                    yield plan.either(some);
                }
            };
        }
    }

    private int host(OnHost key) {
        if (key.mark.isEmpty() && key.due.isEmpty()) {
            return fresh[key.node];
        }
        Integer known = onHost.get(key);
        if (known == null) {
            known = hostMade(key);
            onHost.put(key, known);
        }
        return known;
    }

    private int hostMade(OnHost key) {
        int first = circuit.first(key.node);
        int second = circuit.second(key.node);
        return switch (circuit.kind(key.node)) {
            case ONE -> key.due.isEmpty() ? Plan.ONE : Plan.NONE;
            case SLOT -> slot(key, first, second);
            case BOTH -> {
                SortedMap<String, List<Kept>> here = new TreeMap<>(key.due);
                if (!here.isEmpty()) {
                    here.keySet().retainAll(slotsIn(first));
                }
                SortedMap<String, List<Kept>> there = new TreeMap<>(key.due);
                there.keySet().removeAll(here.keySet());
                yield plan.both(host(new OnHost(first, key.mark, here)), host(new OnHost(second, key.mark, there)));
            }
            case EITHER -> {
                List<Integer> some = new ArrayList<>();
                for (int i = 0; i < second; i++) {
                    some.add(host(new OnHost(circuit.alternative(key.node, i), key.mark, key.due)));
                }
                yield plan.either(some);
            }
            case PART, SEVERAL -> throw new IllegalStateException("parts sit in slots");
        };
    }

    private int slot(OnHost key, int slot, int content) {
        SlotId name = folded.slots().get(slot);
        if (key.due.keySet().stream().anyMatch(due -> !due.equals(name.slot()))) {
            return Plan.NONE;
        }
        List<Mark> marks = key.mark.map(mark -> mark.in(name.slot(), numbered[slot])).orElse(List.of());
        if (marks.size() > MOST_MARKS) {
            throw new TooMany(name.toString(), MOST_MARKS);
        }
        return plan.slot(slot, content(new InSlot(content, marks, key.due.getOrDefault(name.slot(), List.of()))));
    }

    /** The names of the slots that can be in use in what is hung on a host. */
    private Set<String> slotsIn(int node) {
        Set<String> known = slotsIn.get(node);
        if (known == null) {
            known = new TreeSet<>();
            switch (circuit.kind(node)) {
                case SLOT -> known.add(folded.slots().get(circuit.first(node)).slot());
                case BOTH -> {
                    known.addAll(slotsIn(circuit.first(node)));
                    known.addAll(slotsIn(circuit.second(node)));
                }
                case EITHER -> {
                    for (int i = 0; i < circuit.width(node); i++) {
                        known.addAll(slotsIn(circuit.alternative(node, i)));
                    }
                }
                case ONE, PART, SEVERAL -> { }
            }
            slotsIn.put(node, known);
        }
        return known;
    }

    private int content(InSlot key) {
        if (key.marks.isEmpty() && key.due.isEmpty()) {
            return fresh[key.node];
        }
        Integer known = inSlot.get(key);
        if (known == null) {
            known = contentMade(key);
            inSlot.put(key, known);
        }
        return known;
    }

    private int contentMade(InSlot key) {
        int first = circuit.first(key.node);
        int second = circuit.second(key.node);
        return switch (circuit.kind(key.node)) {
            case ONE -> key.due.isEmpty() ? Plan.ONE : Plan.NONE;
            case PART -> available.test(first) ? part(key, first, second) : Plan.NONE;
            case BOTH -> shared(key, (marks, due) -> content(new InSlot(first, marks, due)), (marks, due) -> content(new InSlot(second, marks, due)));
            case SEVERAL -> several(new InSlot(first, key.marks, key.due), second);
            case EITHER -> {
                List<Integer> some = new ArrayList<>();
                for (int i = 0; i < second; i++) {
                    some.add(content(new InSlot(circuit.alternative(key.node, i), key.marks, key.due)));
                }
                yield plan.either(some);
            }
            case SLOT -> throw new IllegalStateException("slots are on parts");
        };
    }

    /** A part in the place of one of those before; to compare it with one is always better than with none. */
    private int part(InSlot key, int part, int on) {
        String id = folded.hosts().get(part);
        if (key.due.size() > 1 || !key.due.stream().allMatch(due -> due.allows(id))) {
            return Plan.NONE;
        }
        SortedMap<String, List<Kept>> inside = key.due.isEmpty() ? new TreeMap<>() : key.due.get(0).slots();
        if (key.marks.isEmpty()) {
            return plan.part(part, host(new OnHost(on, Optional.empty(), inside)), 1);
        }
        List<Integer> some = new ArrayList<>();
        for (Mark mark : key.marks) {
            some.add(plan.part(part, host(new OnHost(on, Optional.of(mark), inside)), mark.part().equals(id) ? -1 : 0));
        }
        return plan.either(some);
    }

    private int several(InSlot each, int copies) {
        if (copies == 1) {
            return content(each);
        }
        return shared(each, (marks, due) -> content(new InSlot(each.node, marks, due)), (marks, due) -> several(new InSlot(each.node, marks, due), copies - 1));
    }

    private interface Share {
        int node(List<Mark> marks, List<Kept> due);
    }

    /** Both of two contents, over all ways to share out what was before and what must be kept. */
    private int shared(InSlot key, Share one, Share other) {
        List<Integer> some = new ArrayList<>();
        for (int marks = 0; marks < 1 << key.marks.size(); marks++) {
            for (int due = 0; due < 1 << key.due.size(); due++) {
                int here = one.node(chosen(key.marks, marks), chosen(key.due, due));
                if (here != Plan.NONE) {
                    some.add(plan.both(here, other.node(chosen(key.marks, ~marks), chosen(key.due, ~due))));
                }
            }
        }
        return plan.either(some);
    }

    private static <T> List<T> chosen(List<T> from, int bits) {
        return IntStream.range(0, from.size()).filter(i -> (bits >> i & 1) == 1).mapToObj(from::get).toList();
    }
}

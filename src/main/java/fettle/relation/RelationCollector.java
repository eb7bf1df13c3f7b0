package fettle.relation;

import fettle.catalog.Catalog;
import fettle.catalog.Fact;
import fettle.catalog.Slot;
import fettle.catalog.SlotId;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.concurrent.ConcurrentHashMap;

/** Takes down what relation rules say, in whatever order they fire, and gives it back in a fixed one. */
final class RelationCollector implements RelationSink {

    private static final Comparator<Clause> CLAUSE_ORDER = Comparator.comparing(Clause::rule)
            .thenComparing(Clause::when, RelationCollector::compareTerms)
            .thenComparing(Clause::need, RelationCollector::compareTerms)
            .thenComparing(Clause::because, RelationCollector::compareOrigins)
            .thenComparing(Clause::apart);

    private static final Comparator<Agreement> AGREEMENT_ORDER = Comparator.comparing(Agreement::trait)
            .thenComparing(Agreement::part)
            .thenComparing(agreement -> agreement.because().origin())
            .thenComparing(Agreement::rule)
            .thenComparing(agreement -> String.join(" ", agreement.values()));

    private static final Comparator<Room> ROOM_ORDER = Comparator.comparing(Room::rule)
            .thenComparing(room -> room.getClass().getSimpleName())
            .thenComparingInt(Room::figure);

    private final Catalog catalog;
    private final Shapes shapes;
    private final Map<Integer, Map<Integer, SortedSet<Fit>>> fits = new HashMap<>();
    private final Map<Integer, Map<Integer, SortedSet<String>>> refusals = new HashMap<>();
    private final Map<Integer, Map<Integer, SortedSet<String>>> rejections = new HashMap<>();
    private final Map<SlotId, Map<String, SortedSet<Fit>>> single = new HashMap<>();
    private final Map<SlotId, Set<String>> barred = new HashMap<>();
    private final Map<SlotId, SortedSet<Room>> rooms = new HashMap<>();
    private final Map<String, Integer> spans = new HashMap<>();
    private final Map<String, NoReentry> noReentry = new TreeMap<>();
    private final Map<Term, SortedMap<String, Fact>> members = new HashMap<>();
    private final Map<Term, SortedMap<SlotId, Fact>> slots = new HashMap<>();
    private final Map<SlotId, Set<String>> tags = new HashMap<>();
    private final SortedSet<Clause> clauses = new TreeSet<>(CLAUSE_ORDER);
    private final SortedSet<Agreement> agreements = new TreeSet<>(AGREEMENT_ORDER);

    // Answers are worked out when first asked for, by whichever thread asks.
    private final Map<Integer, List<String>> candidatesOfShape = new ConcurrentHashMap<>();
    private final Map<SlotId, SlotRoom> roomOfSlot = new ConcurrentHashMap<>();
    private volatile List<Clause> sortedClauses;
    private volatile List<Agreement> sortedAgreements;

    RelationCollector(Catalog catalog, Shapes shapes) {
        this.catalog = catalog;
        this.shapes = shapes;
    }

    @Override
    public void fits(String rule, int slotShape, int partShape, String by) {
        fits.computeIfAbsent(slotShape, unused -> new HashMap<>()).computeIfAbsent(partShape, unused -> new TreeSet<>()).add(new Fit(rule, by));
    }

    @Override
    public void fits(String rule, SlotId slot, String part, String by) {
        single.computeIfAbsent(slot, unused -> new HashMap<>()).computeIfAbsent(part, unused -> new TreeSet<>()).add(new Fit(rule, by));
    }

    @Override
    public void bars(String rule, SlotId slot, String part, Fact because) {
        barred.computeIfAbsent(slot, unused -> new TreeSet<>()).add(part);
    }

    @Override
    public void refuses(String rule, int slotShape, int partShape, String name) {
        refusals.computeIfAbsent(slotShape, unused -> new HashMap<>()).computeIfAbsent(partShape, unused -> new TreeSet<>()).add(name);
    }

    @Override
    public void rejects(String rule, int slotShape, int partShape, String name) {
        rejections.computeIfAbsent(slotShape, unused -> new HashMap<>()).computeIfAbsent(partShape, unused -> new TreeSet<>()).add(name);
    }

    @Override
    public void holds(String rule, Slot slot, int most) {
        room(new Room.Holds(rule, slot.id(), most, slot));
    }

    @Override
    public void length(String rule, Slot slot, int notches) {
        room(new Room.Length(rule, slot.id(), notches, slot));
    }

    @Override
    public void places(String rule, Slot slot, int notches) {
        room(new Room.Places(rule, slot.id(), notches, slot));
    }

    @Override
    public void distinct(String rule, Slot slot) {
        room(new Room.Distinct(rule, slot.id(), slot));
    }

    @Override
    public void filled(String rule, Slot slot) {
        room(new Room.Filled(rule, slot.id(), slot));
    }

    private void room(Room room) {
        rooms.computeIfAbsent(room.slot(), unused -> new TreeSet<>(ROOM_ORDER)).add(room);
    }

    @Override
    public void span(String part, int notches) {
        spans.put(part, notches);
    }

    @Override
    public void noReentry(String rule, String part) {
        noReentry.put(part, new NoReentry(rule, part));
    }

    @Override
    public void member(Term term, String part, Fact because) {
        members.computeIfAbsent(term, unused -> new TreeMap<>()).merge(part, because, RelationCollector::first);
    }

    @Override
    public void member(Term term, SlotId slot, Fact because) {
        slots.computeIfAbsent(term, unused -> new TreeMap<>()).merge(slot, because, RelationCollector::first);
        tags.computeIfAbsent(slot, unused -> new TreeSet<>()).add(term.key());
    }

    private static Fact first(Fact one, Fact other) {
        return one.origin().compareTo(other.origin()) <= 0 ? one : other;
    }

    @Override
    public void clause(String rule, List<Term> when, List<Term> need, boolean apart, List<? extends Fact> because) {
        clauses.add(new Clause(rule, when, need, apart, List.copyOf(because)));
    }

    @Override
    public void agreement(String rule, String trait, String part, Collection<String> values, Fact because) {
        agreements.add(new Agreement(rule, trait, part, Set.copyOf(values), because));
    }

    List<String> candidates(SlotId slot) {
        List<String> byShape = candidatesOfShape.computeIfAbsent(shapes.of(slot), this::candidatesOfShape);
        Map<String, SortedSet<Fit>> more = single.getOrDefault(slot, Map.of());
        Set<String> fewer = barred.getOrDefault(slot, Set.of());
        if (more.isEmpty() && fewer.isEmpty()) {
            return byShape;
        }
        SortedSet<String> parts = new TreeSet<>(byShape);
        parts.addAll(more.keySet());
        parts.removeAll(fewer);
        return List.copyOf(parts);
    }

    private List<String> candidatesOfShape(int slotShape) {
        List<String> parts = new ArrayList<>();
        fits.getOrDefault(slotShape, Map.of()).keySet().forEach(shape -> parts.addAll(shapes.parts(shape)));
        Collections.sort(parts);
        return Collections.unmodifiableList(parts);
    }

    boolean fits(SlotId slot, String part) {
        return !barred.getOrDefault(slot, Set.of()).contains(part)
                && (fits.getOrDefault(shapes.of(slot), Map.of()).containsKey(shapes.of(part)) || single.getOrDefault(slot, Map.of()).containsKey(part));
    }

    List<Fit> ways(SlotId slot, String part) {
        if (barred.getOrDefault(slot, Set.of()).contains(part)) {
            return List.of();
        }
        SortedSet<Fit> ways = new TreeSet<>(fits.getOrDefault(shapes.of(slot), Map.of()).getOrDefault(shapes.of(part), Collections.emptySortedSet()));
        ways.addAll(single.getOrDefault(slot, Map.of()).getOrDefault(part, Collections.emptySortedSet()));
        return List.copyOf(ways);
    }

    SortedSet<String> refusals(SlotId slot, String part) {
        return refusals.getOrDefault(shapes.of(slot), Map.of()).getOrDefault(shapes.of(part), Collections.emptySortedSet());
    }

    SortedSet<String> rejections(SlotId slot, String part) {
        return rejections.getOrDefault(shapes.of(slot), Map.of()).getOrDefault(shapes.of(part), Collections.emptySortedSet());
    }

    SlotRoom room(SlotId slot) {
        return roomOfSlot.computeIfAbsent(slot, this::roomOfSlot);
    }

    private SlotRoom roomOfSlot(SlotId slot) {
        return SlotRoom.of(List.copyOf(rooms.getOrDefault(slot, Collections.emptySortedSet())));
    }

    int span(String part) {
        return spans.getOrDefault(part, 1);
    }

    Optional<NoReentry> noReentry(String part) {
        return Optional.ofNullable(noReentry.get(part));
    }

    List<Clause> clauses() {
        if (sortedClauses == null) {
            sortedClauses = List.copyOf(clauses);
        }
        return sortedClauses;
    }

    List<Agreement> agreements() {
        if (sortedAgreements == null) {
            sortedAgreements = List.copyOf(agreements);
        }
        return sortedAgreements;
    }

    SortedMap<String, Fact> members(Term term) {
        if (term.sort() == Term.Sort.PART) {
            SortedMap<String, Fact> itself = new TreeMap<>();
            catalog.host(term.key()).ifPresent(part -> itself.put(part.id(), part));
            return itself;
        }
        return Collections.unmodifiableSortedMap(members.getOrDefault(term, Collections.emptySortedMap()));
    }

    SortedMap<SlotId, Fact> slots(Term term) {
        return Collections.unmodifiableSortedMap(slots.getOrDefault(term, Collections.emptySortedMap()));
    }

    Set<String> tags(SlotId slot) {
        return Collections.unmodifiableSet(tags.getOrDefault(slot, Set.of()));
    }

    private static int compareTerms(List<Term> one, List<Term> other) {
        return compareLists(one, other, Comparator.naturalOrder());
    }

    private static int compareOrigins(List<Fact> one, List<Fact> other) {
        return compareLists(one, other, Comparator.comparing(Fact::origin));
    }

    private static <T> int compareLists(List<T> one, List<T> other, Comparator<T> order) {
        for (int i = 0; i < Math.min(one.size(), other.size()); i++) {
            int compared = order.compare(one.get(i), other.get(i));
            if (compared != 0) {
                return compared;
            }
        }
        return Integer.compare(one.size(), other.size());
    }
}

package fettle.relation;

import fettle.catalog.Catalog;
import fettle.catalog.Fact;
import fettle.catalog.Part;
import fettle.catalog.Slot;
import fettle.catalog.SlotId;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.SortedSet;

/** What the rules derived from a catalog: all that is needed to say which builds are valid. Lists and sets are in a fixed order. */
public final class Relations {

    private final Catalog catalog;
    private final Shapes shapes;
    private final RelationCollector collected;
    private final Map<SlotId, Slot> slots = new HashMap<>();
    private final Map<String, List<SlotId>> slotsOf = new HashMap<>();

    Relations(Catalog catalog, Shapes shapes, RelationCollector collected) {
        this.catalog = catalog;
        this.shapes = shapes;
        this.collected = collected;
        catalog.parts().values().forEach(this::bear);
        catalog.platforms().values().forEach(this::bear);
    }

    private void bear(Part host) {
        host.slots().forEach(slot -> slots.put(slot.id(), slot));
        slotsOf.putIfAbsent(host.id(), host.slots().stream().map(Slot::id).toList());
    }

    /** The catalog they were derived from. */
    public Catalog catalog() {
        return catalog;
    }

    /** The slot as written, where there is one of that name. */
    public Optional<Slot> slot(SlotId id) {
        return Optional.ofNullable(slots.get(id));
    }

    /** The slots of a part or platform, by id. */
    public List<SlotId> slots(String host) {
        return slotsOf.getOrDefault(host, List.of());
    }

    /** The parts that fit a slot, by id. */
    public List<String> candidates(SlotId slot) {
        return collected.candidates(slot);
    }

    /** Whether a part fits a slot. */
    public boolean fits(SlotId slot, String part) {
        return collected.fits(slot, part);
    }

    /** The ways in which a part fits a slot; none where it doesn't. */
    public List<Fit> ways(SlotId slot, String part) {
        return collected.ways(slot, part);
    }

    /** The names for which a slot turns a part away that would otherwise fit. */
    public SortedSet<String> refusals(SlotId slot, String part) {
        return collected.refusals(slot, part);
    }

    /** The names for which a slot turns a part away, whether or not it would fit otherwise. */
    public SortedSet<String> rejections(SlotId slot, String part) {
        return collected.rejections(slot, part);
    }

    /** The catalog entries behind one way of fitting. */
    public List<Fact> because(SlotId slot, String part, Fit way) {
        List<Fact> facts = new ArrayList<>();
        Optional<Slot> place = slot(slot);
        Optional<Part> fitted = Optional.ofNullable(catalog.parts().get(part));
        place.ifPresent(found -> {
            found.mounts().stream().filter(fact -> fact.mount().equals(way.by())).forEach(facts::add);
            found.accepts().stream().filter(fact -> fact.name().equals(way.by())).forEach(facts::add);
        });
        fitted.ifPresent(found -> {
            found.mounts().stream().filter(fact -> fact.mount().equals(way.by())).forEach(facts::add);
            found.names().stream().filter(fact -> fact.name().equals(way.by())).forEach(facts::add);
        });
        return facts;
    }

    /** The catalog entries behind a name for which a slot turns a part away. */
    public List<Fact> refusing(SlotId slot, String part, String name) {
        List<Fact> facts = new ArrayList<>();
        slot(slot).ifPresent(found -> found.rejects().stream().filter(fact -> fact.name().equals(name)).forEach(facts::add));
        Optional.ofNullable(catalog.parts().get(part)).ifPresent(found -> found.names().stream().filter(fact -> fact.name().equals(name)).forEach(facts::add));
        return facts;
    }

    /** The catalog entries for which a part doesn't fit a slot: what turns it away, or else the mounts it has in vain. */
    public List<Fact> against(SlotId slot, String part) {
        Set<String> names = refusals(slot, part);
        List<Fact> facts = new ArrayList<>();
        slot(slot).ifPresent(found -> found.rejects().stream().filter(fact -> names.contains(fact.name())).forEach(facts::add));
        Optional.ofNullable(catalog.parts().get(part)).ifPresent(found -> {
            found.names().stream().filter(fact -> names.contains(fact.name())).forEach(facts::add);
            if (names.isEmpty()) {
                facts.addAll(found.mounts());
            }
        });
        return facts;
    }

    /** What a slot asks of the list of parts in it. */
    public SlotRoom room(SlotId slot) {
        return collected.room(slot);
    }

    /** The notches a part takes on a slot that is measured, at least 1. */
    public int span(String part) {
        return collected.span(part);
    }

    /** The relation that keeps a part from standing below itself, where there is one. */
    public Optional<NoReentry> noReentry(String part) {
        return collected.noReentry(part);
    }

    /** All clauses. */
    public List<Clause> clauses() {
        return collected.clauses();
    }

    /** All agreements. */
    public List<Agreement> agreements() {
        return collected.agreements();
    }

    /** The parts (or platforms) whose occurrences meet a term, each with the catalog entry that says so; none for a term of sort SLOT. */
    public SortedMap<String, Fact> members(Term term) {
        return collected.members(term);
    }

    /** The slots that meet a term of sort SLOT when in use, each with the catalog entry that says so. */
    public SortedMap<SlotId, Fact> slots(Term term) {
        return collected.slots(term);
    }

    /** The tags under which a slot in use counts. */
    public Set<String> tags(SlotId slot) {
        return collected.tags(slot);
    }

    /** Equal for slots that fit the same parts for the same reasons; -1 for a slot that isn't in the catalog. */
    public int shape(SlotId slot) {
        return shapes.of(slot);
    }
}

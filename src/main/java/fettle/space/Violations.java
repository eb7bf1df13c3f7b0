package fettle.space;

import fettle.catalog.Fact;
import fettle.catalog.FactList;
import fettle.catalog.HasName;
import fettle.catalog.SlotId;
import fettle.relation.Agreement;
import fettle.relation.Clause;
import fettle.relation.NoReentry;
import fettle.relation.Relations;
import fettle.relation.Term;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Supplier;
import java.util.stream.Stream;

/** Finds every relation that a placement breaks, with the placed things that break it. May be shared between threads. */
final class Violations {

    private final Relations relations;
    private final Map<String, List<Agreement>> agreements = new HashMap<>();
    private final Map<Term, Set<String>> members = new ConcurrentHashMap<>();
    private final Map<String, Set<String>> reachable = new ConcurrentHashMap<>();
    private Optional<Terrain> terrain = Optional.empty();
    private final List<Clause> clauses;
    private final List<Integer> always = new ArrayList<>();
    private final Map<String, List<Integer>> clausesOf = new HashMap<>();

    Violations(Relations relations) {
        this.relations = relations;
        relations.agreements().forEach(agreement -> agreements.computeIfAbsent(agreement.part(), unused -> new ArrayList<>()).add(agreement));
        this.clauses = relations.clauses();
        for (int clause = 0; clause < clauses.size(); clause++) {
            index(clause);
        }
    }

    /** A clause can only be broken where its first term is met by a part, so it is filed under the parts that can. */
    private void index(int clause) {
        Optional<Term> first = clauses.get(clause).when().stream().filter(term -> term.sort() != Term.Sort.SLOT).findFirst();
        if (first.isEmpty()) {
            always.add(clause);
        } else {
            members(first.get()).forEach(part -> clausesOf.computeIfAbsent(part, unused -> new ArrayList<>()).add(clause));
        }
    }

    private Set<String> members(Term term) {
        return members.computeIfAbsent(term, wanted -> relations.members(wanted).keySet());
    }

    private Set<String> reachable(String platform) {
        return reachable.computeIfAbsent(platform, from -> Reach.of(terrain(), terrain().number(from)).partNames());
    }

    /** Made when it is first asked for, since most builds break nothing that asks. */
    private synchronized Terrain terrain() {
        terrain = terrain.or(() -> Optional.of(Terrain.of(relations)));
        return terrain.get();
    }

    List<Violation> of(Placement placement) {
        return merged(found(placement).toList());
    }

    /** Whether a placement breaks no relation; looks no further than the first that it breaks. */
    boolean none(Placement placement) {
        return found(placement).findFirst().isEmpty();
    }

    private Stream<Violation> found(Placement placement) {
        RoomCheck room = new RoomCheck(relations);
        ClauseCheck check = new ClauseCheck(relations, placement, this::members, this::reachable);
        return Stream.<Supplier<Stream<Violation>>>of(
                () -> placement.parts().stream().flatMap(part -> Stream.concat(fit(placement, part).stream(), reentry(placement, part).stream())),
                () -> placement.slots().stream().flatMap(use -> room.check(placement, use).stream()),
                () -> asked(placement).stream().flatMap(clause -> check.broken(clauses.get(clause)).stream()),
                () -> disagreements(placement).stream()).flatMap(Supplier::get);
    }

    /** The clauses that a placement may break. */
    private Set<Integer> asked(Placement placement) {
        Set<Integer> asked = new LinkedHashSet<>(always);
        asked.addAll(clausesOf.getOrDefault(placement.platform(), List.of()));
        placement.parts().forEach(part -> asked.addAll(clausesOf.getOrDefault(part.part(), List.of())));
        return asked;
    }

    private Optional<Violation> fit(Placement placement, Occurrence part) {
        SlotUse use = placement.slotOf(part);
        if (relations.fits(use.slot(), part.part())) {
            return Optional.empty();
        }
        SortedMap<String, Object> data = new TreeMap<>();
        data.put("part", part.part());
        data.put("path", part.path());
        data.put("slot", use.slot().toString());
        data.putAll(mismatch(use.slot(), part.part()));
        List<Fact> because = new ArrayList<>();
        because.add(part.entry());
        relations.slot(use.slot()).ifPresent(because::add);
        because.addAll(relations.against(use.slot(), part.part()));
        return Optional.of(new Violation("does-not-fit", List.of(part.index()), List.of(use.index()), because, data));
    }

    /** What the catalog would have to say otherwise for a part to fit a slot: that they match, that it isn't turned away, or both. */
    private Map<String, Object> mismatch(SlotId slot, String part) {
        Set<String> names = relations.rejections(slot, part);
        if (names.isEmpty()) {
            return Map.of("mismatched", slot.toString());
        }
        if (relations.refusals(slot, part).isEmpty()) {
            return Map.of("unlike", slot.toString(), "barred", List.copyOf(names));
        }
        Map<String, Object> data = new TreeMap<>(Map.of("rejected", List.copyOf(names)));
        List<String> tags = relations.catalog().parts().get(part).names().stream()
                .filter(name -> names.contains(name.name()) && name.tag().isPresent()).map(HasName::name).distinct().toList();
        if (tags.size() == names.size()) {
            data.put("tags", tags);
        }
        return data;
    }

    private Optional<Violation> reentry(Placement placement, Occurrence part) {
        Optional<NoReentry> bar = relations.noReentry(part.part());
        if (bar.isEmpty()) {
            return Optional.empty();
        }
        for (int above = placement.hostOf(part); above != Placement.PLATFORM; above = placement.hostOf(placement.parts().get(above))) {
            Occurrence host = placement.parts().get(above);
            if (host.part().equals(part.part())) {
                SortedMap<String, Object> data = new TreeMap<>();
                data.put("part", part.part());
                data.put("path", part.path());
                data.put("above", host.path());
                return Optional.of(new Violation(
                        bar.get().rule(), List.of(part.index(), host.index()), List.of(), List.of(part.entry(), host.entry()), data));
            }
        }
        return Optional.empty();
    }

    /** Traits whose values, over all that declare them, have none in common. */
    private List<Violation> disagreements(Placement placement) {
        Map<String, List<Integer>> declarers = new TreeMap<>();
        Map<String, List<Agreement>> declared = new HashMap<>();
        collect(placement.platform(), Placement.PLATFORM, declarers, declared);
        placement.parts().forEach(part -> collect(part.part(), part.index(), declarers, declared));
        List<Violation> found = new ArrayList<>();
        declarers.forEach((trait, parts) -> {
            List<Agreement> all = declared.get(trait);
            Set<String> left = new TreeSet<>(all.get(0).values());
            all.forEach(agreement -> left.retainAll(agreement.values()));
            if (left.isEmpty()) {
                found.add(disagreement(placement, trait, parts, all));
            }
        });
        return found;
    }

    private void collect(String id, int index, Map<String, List<Integer>> declarers, Map<String, List<Agreement>> declared) {
        for (Agreement agreement : agreements.getOrDefault(id, List.of())) {
            declarers.computeIfAbsent(agreement.trait(), unused -> new ArrayList<>()).add(index);
            declared.computeIfAbsent(agreement.trait(), unused -> new ArrayList<>()).add(agreement);
        }
    }

    /** Keeps to a smallest set that disagrees: a declarer is left out where the rest has no value in common without it. */
    private Violation disagreement(Placement placement, String trait, List<Integer> parts, List<Agreement> all) {
        List<Integer> kept = new ArrayList<>();
        for (int i = 0; i < all.size(); i++) {
            kept.add(i);
        }
        for (int i = all.size() - 1; i >= 0; i--) {
            List<Integer> without = new ArrayList<>(kept);
            without.remove(Integer.valueOf(i));
            Set<String> left = null;
            for (int each : without) {
                if (left == null) {
                    left = new TreeSet<>(all.get(each).values());
                } else {
                    left.retainAll(all.get(each).values());
                }
            }
            if (left != null && left.isEmpty()) {
                kept = without;
            }
        }
        List<Integer> indices = new ArrayList<>();
        List<Fact> because = new ArrayList<>();
        Set<String> names = new LinkedHashSet<>();
        Map<String, Object> values = new TreeMap<>();
        for (int each : kept) {
            indices.add(parts.get(each));
            because.add(all.get(each).because());
            names.add(all.get(each).part());
            values.put(all.get(each).part(), List.copyOf(all.get(each).values()));
        }
        SortedMap<String, Object> data = new TreeMap<>();
        data.put("trait", trait);
        data.put("parts", List.copyOf(names));
        data.put("values", values);
        data.putAll(new Changeable(relations, placement, indices, List.of()).names());
        return new Violation(all.get(0).rule(), indices, List.of(), because, data);
    }

    /** One violation for what several relations of one rule say of the same things. */
    private static List<Violation> merged(List<Violation> found) {
        Map<List<Object>, Violation> merged = new LinkedHashMap<>();
        for (Violation violation : found) {
            Object what = violation.data().getOrDefault("trait", violation.data().getOrDefault("constraint", violation.data().getOrDefault("needed", "")));
            List<Object> same = List.of(violation.rule(), Set.copyOf(violation.parts()), Set.copyOf(violation.slots()), what);
            merged.merge(same, violation, (first, second) -> new Violation(first.rule(), first.parts(), first.slots(),
                    new FactList().addAll(first.because()).addAll(second.because()).list(), first.data()));
        }
        return List.copyOf(merged.values());
    }
}

package fettle.space;

import fettle.catalog.Fact;
import fettle.catalog.SlotId;
import fettle.relation.Agreement;
import fettle.relation.Clause;
import fettle.relation.Relations;
import fettle.relation.Term;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;

/** Tells which two things can stand together in no build, whatever else is in it, and why. */
final class Clashes {

    /** A part, or a platform, meets one term of a clause of two. */
    private record Side(Clause clause, Term met, Term other) {}

    private final Relations relations;
    private final Map<String, List<Side>> sides = new HashMap<>();
    private final Map<String, Map<String, List<Agreement>>> agreements = new HashMap<>();

    Clashes(Relations relations) {
        this.relations = relations;
        for (Clause clause : relations.clauses()) {
            if (clause.need().isEmpty() && clause.when().size() == 2) {
                add(clause, clause.when().get(0), clause.when().get(1));
                add(clause, clause.when().get(1), clause.when().get(0));
            }
        }
        relations.agreements().forEach(agreement -> agreements
                .computeIfAbsent(agreement.part(), unused -> new TreeMap<>())
                .computeIfAbsent(agreement.trait(), unused -> new ArrayList<>())
                .add(agreement));
    }

    private void add(Clause clause, Term met, Term other) {
        if (met.sort() != Term.Sort.SLOT) {
            relations.members(met).keySet().forEach(part -> sides.computeIfAbsent(part, unused -> new ArrayList<>()).add(new Side(clause, met, other)));
        }
    }

    /** The entries for which two occurrences can't stand together, of two parts, of one part, or of a part and a platform; empty where they can. */
    Optional<List<Fact>> between(String one, String other) {
        for (Side side : sides.getOrDefault(one, List.of())) {
            if (side.other().sort() != Term.Sort.SLOT && relations.members(side.other()).containsKey(other)) {
                List<Fact> because = new ArrayList<>(side.clause().because());
                member(side.met(), one).ifPresent(because::add);
                member(side.other(), other).ifPresent(because::add);
                return Optional.of(because);
            }
        }
        return disagreement(one, other);
    }

    /** The entries for which a slot can't be used while a part, not sitting in it, is there; empty where it can. */
    Optional<List<Fact>> of(String part, SlotId slot) {
        for (Side side : sides.getOrDefault(part, List.of())) {
            if (side.other().sort() == Term.Sort.SLOT && relations.slots(side.other()).containsKey(slot)) {
                List<Fact> because = new ArrayList<>(side.clause().because());
                member(side.met(), part).ifPresent(because::add);
                because.add(relations.slots(side.other()).get(slot));
                return Optional.of(because);
            }
        }
        return Optional.empty();
    }

    private Optional<Fact> member(Term term, String part) {
        return term.sort() == Term.Sort.PART ? Optional.empty() : Optional.ofNullable(relations.members(term).get(part));
    }

    /** A trait that both declare, with no value in common. */
    private Optional<List<Fact>> disagreement(String one, String other) {
        Map<String, List<Agreement>> others = agreements.getOrDefault(other, Map.of());
        for (Map.Entry<String, List<Agreement>> trait : agreements.getOrDefault(one, Map.of()).entrySet()) {
            List<Agreement> both = new ArrayList<>(trait.getValue());
            both.addAll(others.getOrDefault(trait.getKey(), List.of()));
            SortedSet<String> left = new TreeSet<>(both.get(0).values());
            both.forEach(agreement -> left.retainAll(agreement.values()));
            if (left.isEmpty() && both.size() > trait.getValue().size()) {
                return Optional.of(both.stream().map(Agreement::because).toList());
            }
        }
        return Optional.empty();
    }
}

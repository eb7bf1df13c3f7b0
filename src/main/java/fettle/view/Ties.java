package fettle.view;

import fettle.catalog.Fact;
import fettle.catalog.FactList;
import fettle.catalog.SlotId;
import fettle.relation.Agreement;
import fettle.relation.Clause;
import fettle.relation.Relations;
import fettle.relation.Term;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;

/** Gathers from clauses and agreements how one part (or platform) is bound to others. It reads relations only, so a relation of any rule shows. */
final class Ties {

    private static final int MOST_FACTS = 6;

    private final Relations relations;
    private final String part;
    private final Set<SlotId> own;
    private final Set<SlotId> seats;

    /** @param seats the slots of other hosts in which the part can sit */
    Ties(Relations relations, String part, Collection<SlotId> seats) {
        this.relations = relations;
        this.part = part;
        this.own = new LinkedHashSet<>(relations.slots(part));
        this.seats = new LinkedHashSet<>(seats);
    }

    /** Clashes first, then needs, then what it serves, then agreements. */
    List<Tie> all() {
        List<Tie> ties = new ArrayList<>();
        relations.clauses().forEach(clause -> ties.addAll(of(clause)));
        relations.agreements().stream().filter(agreement -> agreement.part().equals(part)).forEach(agreement -> ties.add(of(agreement)));
        ties.sort(java.util.Comparator.comparing(Tie::sort));
        return ties;
    }

    private List<Tie> of(Clause clause) {
        for (int i = 0; i < clause.when().size(); i++) {
            Term term = clause.when().get(i);
            if (term.sort() != Term.Sort.SLOT && relations.members(term).containsKey(part)) {
                return List.of(bound(clause, i));
            }
        }
        List<Tie> ties = new ArrayList<>();
        for (Term term : clause.when()) {
            if (term.sort() == Term.Sort.SLOT) {
                shut(clause, term, own, "keeps its slot", "empty", ties);
                shut(clause, term, seats, "keeps it out of", "", ties);
            }
        }
        if (clause.need().stream().anyMatch(term -> relations.members(term).containsKey(part))) {
            ties.add(new Tie(Tie.Sort.SERVICE, clause.rule(), "is among what is asked for where there is " + words(clause.when(), part), names(clause.when()), clause.because()));
        }
        return ties;
    }

    /** The part meets a term of what the clause is about. */
    private Tie bound(Clause clause, int at) {
        List<Term> beside = new ArrayList<>(clause.when());
        Term met = beside.remove(at);
        if (!clause.apart()) {
            beside.removeIf(met::equals);
        }
        FactList because = new FactList().addAll(clause.because());
        if (met.sort() != Term.Sort.PART) {
            because.add(relations.members(met).get(part));
        }
        if (!clause.need().isEmpty()) {
            String where = beside.isEmpty() ? "" : ", where there is also " + words(beside, part);
            return new Tie(Tie.Sort.NEED, clause.rule(), "needs " + any(clause.need()) + where + CauseWording.why(clause), names(clause.need()), because.list());
        }
        beside.forEach(term -> facts(term).stream().limit(MOST_FACTS).forEach(because::add));
        List<String> others = names(beside);
        String told = beside.isEmpty() ? "can stand in no build"
                : beside.size() > 1 ? "cannot be used where there is " + words(beside, part)
                : beside.get(0).sort() == Term.Sort.SLOT ? "keeps empty " + Phrases.and(others)
                : others.isEmpty() ? "cannot be used with " + words(beside, part) + ", but there is none"
                : "cannot be used with " + Phrases.or(others);
        return new Tie(Tie.Sort.CLASH, clause.rule(), told + CauseWording.why(clause), others, because.list());
    }

    /** Slots that the part bears or could sit in, and that the other terms of the clause keep empty. */
    private void shut(Clause clause, Term tag, Set<SlotId> slots, String verb, String end, List<Tie> ties) {
        SortedMap<SlotId, Fact> tagged = new TreeMap<>(relations.slots(tag));
        tagged.keySet().retainAll(slots);
        List<Term> beside = clause.when().stream().filter(term -> !term.equals(tag)).toList();
        if (!tagged.isEmpty() && clause.need().isEmpty()) {
            FactList because = new FactList().addAll(clause.because());
            tagged.values().stream().limit(MOST_FACTS).forEach(because::add);
            String told = words(beside, part) + " " + verb + " " + Phrases.and(Phrases.each(tagged.keySet(), SlotId::toString)) + (end.isEmpty() ? "" : " " + end);
            ties.add(new Tie(Tie.Sort.CLASH, clause.rule(), told + CauseWording.why(clause), names(beside), because.list()));
        }
    }

    private Tie of(Agreement agreement) {
        Map<String, Set<String>> values = new TreeMap<>();
        relations.agreements().stream()
                .filter(other -> other.trait().equals(agreement.trait()))
                .forEach(other -> values.merge(other.part(), new TreeSet<>(other.values()), (one, more) -> {
                    one.retainAll(more);
                    return one;
                }));
        Set<String> shared = values.get(part);
        List<String> apart = values.entrySet().stream().filter(entry -> entry.getValue().stream().noneMatch(shared::contains)).map(Map.Entry::getKey).toList();
        String told = "works with " + agreement.trait() + " " + Phrases.or(agreement.values())
                + (apart.isEmpty() ? ", as all that declare it do" : ", so not with " + Phrases.or(apart));
        return new Tie(Tie.Sort.AGREEMENT, agreement.rule(), told, apart, List.of(agreement.because()));
    }

    /** The parts or slots that meet one of the terms, the part itself left out. */
    private List<String> names(List<Term> terms) {
        Set<String> names = new TreeSet<>();
        for (Term term : terms) {
            if (term.sort() == Term.Sort.SLOT) {
                relations.slots(term).keySet().forEach(slot -> names.add(slot.toString()));
            } else {
                names.addAll(relations.members(term).keySet());
            }
        }
        names.remove(part);
        return List.copyOf(names);
    }

    private Collection<Fact> facts(Term term) {
        if (term.sort() == Term.Sort.SLOT) {
            return relations.slots(term).values();
        }
        SortedMap<String, Fact> members = new TreeMap<>(relations.members(term));
        members.remove(part);
        return term.sort() == Term.Sort.PART ? List.of() : members.values();
    }

    private String words(List<Term> terms, String but) {
        return Phrases.and(Phrases.each(terms, term -> word(term, but)));
    }

    private String any(List<Term> terms) {
        return Phrases.or(Phrases.each(terms, term -> word(term, "")));
    }

    private String word(Term term, String but) {
        return switch (term.sort()) {
            case PART -> term.key();
            case NAME -> Phrases.one(term.key());
            case SLOT -> "a part in a slot tagged " + term.key();
            case GROUP -> {
                Set<String> members = new TreeSet<>(relations.members(term).keySet());
                members.remove(but);
                yield "one of " + Phrases.or(members);
            }
        };
    }
}

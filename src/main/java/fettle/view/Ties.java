package fettle.view;

import fettle.catalog.Fact;
import fettle.catalog.FactList;
import fettle.catalog.SlotId;
import fettle.relation.Agreement;
import fettle.relation.Clause;
import fettle.relation.Relations;
import fettle.relation.Term;
import fettle.space.Haunts;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Predicate;

/** Gathers from clauses and agreements how one part (or platform) is bound to others. It reads relations only, so a relation of any rule shows. */
final class Ties {

    private static final int MOST_FACTS = 6;

    private final Relations relations;
    private final String part;
    private final Set<SlotId> own;
    private final Set<SlotId> seats;
    private final List<Haunts> haunts;

    /** @param seats the slots of other hosts in which the part can sit */
    Ties(Relations relations, String part, Collection<SlotId> seats) {
        this.relations = relations;
        this.part = part;
        this.own = new LinkedHashSet<>(relations.slots(part));
        this.seats = new LinkedHashSet<>(seats);
        this.haunts = Haunts.of(relations, part);
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
                return bound(clause, i).stream().toList();
            }
        }
        List<Tie> ties = new ArrayList<>();
        for (Term term : clause.when()) {
            if (term.sort() == Term.Sort.SLOT) {
                shut(clause, term, own, "keeps its slot %s empty", ties);
                shut(clause, term, seats, "keeps it out of %s", ties);
            }
        }
        if (clause.need().stream().anyMatch(term -> relations.members(term).containsKey(part))) {
            ties.add(new Tie(Tie.Sort.SERVICE, clause.rule(), "is among what is asked for where there is " + words(clause.when(), part), names(clause.when()), clause.because()));
        }
        return ties;
    }

    /** The part meets a term of what the clause is about; nothing where what it rules out can't come about anyway. */
    private Optional<Tie> bound(Clause clause, int at) {
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
            return Optional.of(new Tie(Tie.Sort.NEED, clause.rule(), "needs " + any(clause.need()) + where + CauseWording.why(clause), names(clause.need()), because.list()));
        }
        if (!clause.apart()) {
            beside.removeIf(term -> term.sort() != Term.Sort.SLOT && relations.members(term).containsKey(part));
        }
        if (beside.size() == 1 && beside.get(0).sort() == Term.Sort.SLOT) {
            return emptied(clause, beside.get(0), because);
        }
        List<Haunts> together = together(beside);
        if (together.isEmpty()) {
            return Optional.empty();
        }
        List<String> others = names(beside).stream().filter(other -> together.stream().anyMatch(haunt -> met(haunt, other))).toList();
        beside.forEach(term -> facts(term).stream().limit(MOST_FACTS).forEach(because::add));
        String told = beside.isEmpty() ? "can stand in no build"
                : beside.size() > 1 ? "cannot be used where there is " + words(beside, part)
                : others.isEmpty() ? "cannot be used twice"
                : "cannot be used with " + Phrases.or(others);
        return Optional.of(new Tie(Tie.Sort.CLASH, clause.rule(), told + CauseWording.why(clause), others, because.list()));
    }

    /** The part keeps slots empty. */
    private Optional<Tie> emptied(Clause clause, Term tag, FactList because) {
        Shut shut = new Shut(relations.slots(tag).keySet(), List.of(part), clause.apart(), slot -> false);
        shut.facts(tag).forEach(because::add);
        return shut.slots().isEmpty() ? Optional.empty()
                : Optional.of(new Tie(Tie.Sort.CLASH, clause.rule(), shut.words("keeps empty %s", "it sits") + CauseWording.why(clause),
                        Phrases.each(shut.slots(), SlotId::toString), because.list()));
    }

    /** Slots that the part bears or could sit in, and that the other terms of the clause keep empty. */
    private void shut(Clause clause, Term tag, Set<SlotId> slots, String verb, List<Tie> ties) {
        List<Term> beside = clause.when().stream().filter(term -> !term.equals(tag)).toList();
        Set<SlotId> tagged = new TreeSet<>(relations.slots(tag).keySet());
        tagged.retainAll(slots);
        if (!clause.need().isEmpty() || together(beside).isEmpty()) {
            return;
        }
        Shut shut = new Shut(tagged, names(beside), clause.apart() && beside.size() == 1, slot -> seats.contains(slot) && relations.room(slot).most() == 1);
        if (!shut.slots().isEmpty()) {
            FactList because = new FactList().addAll(clause.because());
            shut.facts(tag).forEach(because::add);
            String who = words(beside, part);
            ties.add(new Tie(Tie.Sort.CLASH, clause.rule(), who + " " + shut.words(verb, who + " sits") + CauseWording.why(clause), names(beside), because.list()));
        }
    }

    /** The slots that some part or platform can keep empty from where it stands, those apart in which it can sit itself. */
    private final class Shut {

        private final SortedSet<SlotId> always = new TreeSet<>();
        private final SortedSet<SlotId> unlessThere = new TreeSet<>();

        /**
         * @param spared whether nothing keeps a slot empty in which it sits itself
         * @param full whether there is no room beside it in a slot anyway
         */
        Shut(Set<SlotId> slots, List<String> by, boolean spared, Predicate<SlotId> full) {
            for (SlotId slot : slots) {
                for (Haunts haunt : haunts) {
                    for (String each : haunt.used(slot) ? by : List.<String>of()) {
                        if (spared ? haunt.elsewhere(each, slot) : haunt.holds(each)) {
                            (spared && haunt.fits(slot, each) && !full.test(slot) ? unlessThere : always).add(slot);
                        }
                    }
                }
            }
            unlessThere.removeAll(always);
        }

        SortedSet<SlotId> slots() {
            SortedSet<SlotId> all = new TreeSet<>(always);
            all.addAll(unlessThere);
            return all;
        }

        List<Fact> facts(Term tag) {
            return slots().stream().limit(MOST_FACTS).map(relations.slots(tag)::get).toList();
        }

        /** @param form what is done to slots, which take the place of {@code %s} */
        String words(String form, String sits) {
            String plain = always.isEmpty() ? "" : form.formatted(Phrases.and(Phrases.each(always, SlotId::toString)));
            String spared = unlessThere.isEmpty() ? "" : form.formatted(Phrases.and(Phrases.each(unlessThere, SlotId::toString))) + " unless " + sits + " there itself";
            return plain + (plain.isEmpty() || spared.isEmpty() ? "" : ", and ") + spared;
        }
    }

    /** The platforms on which all these terms can be met beside the part. */
    private List<Haunts> together(List<Term> beside) {
        return haunts.stream().filter(haunt -> beside.stream().allMatch(term -> met(haunt, term))).toList();
    }

    private boolean met(Haunts haunt, Term term) {
        return term.sort() == Term.Sort.SLOT ? relations.slots(term).keySet().stream().anyMatch(haunt::used)
                : relations.members(term).keySet().stream().anyMatch(other -> met(haunt, other));
    }

    /** Whether some platform may hold another beside the part. */
    private boolean meets(String other) {
        return haunts.stream().anyMatch(haunt -> haunt.holds(other));
    }

    private boolean met(Haunts haunt, String other) {
        return other.equals(part) ? haunt.several(part) : haunt.holds(other);
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
        List<String> all = values.entrySet().stream().filter(entry -> entry.getValue().stream().noneMatch(shared::contains)).map(Map.Entry::getKey).toList();
        List<String> apart = all.stream().filter(this::meets).toList();
        String told = "works with " + agreement.trait() + " " + Phrases.or(agreement.values())
                + (all.isEmpty() ? ", as all that declare it do" : apart.isEmpty() ? ", as all do that declare it and can be beside it" : ", so not with " + Phrases.or(apart));
        return new Tie(Tie.Sort.AGREEMENT, agreement.rule(), told, apart, List.of(agreement.because()));
    }

    /** The parts or slots that meet one of the terms, the part itself left out. */
    private List<String> names(List<Term> terms) {
        Set<String> names = new TreeSet<>();
        for (Term term : terms) {
            if (term.sort() == Term.Sort.SLOT) {
                relations.slots(term).keySet().forEach(slot -> names.add(slot.toString()));
            } else {
                relations.members(term).keySet().stream().filter(this::meets).forEach(names::add);
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
        members.keySet().removeIf(other -> other.equals(part) || !meets(other));
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
                members.removeIf(member -> member.equals(but) || !but.isEmpty() && !meets(member));
                yield members.isEmpty() ? "one of the group " + term.key() : "one of " + Phrases.or(members);
            }
        };
    }
}

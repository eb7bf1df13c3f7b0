package fettle.space;

import fettle.catalog.Constraint;
import fettle.catalog.Fact;
import fettle.catalog.Needs;
import fettle.catalog.FactList;
import fettle.relation.Clause;
import fettle.relation.Relations;
import fettle.relation.Term;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.stream.Collectors;

/** Finds the ways in which a placement breaks a clause; see {@link Clause} for when it does. */
final class ClauseCheck {

    /** A placed part (or the platform), or a slot in use. */
    private record Thing(boolean slot, int index) {

        /** A number of its own. */
        int number() {
            return slot ? -2 - index : index;
        }
    }

    private final Relations relations;
    private final Placement placement;
    private final Function<Term, Set<String>> members;
    private final Function<String, Set<String>> reachable;
    private final Map<Term, List<Thing>> things = new TreeMap<>();

    /**
     * @param members the parts that meet a term
     * @param reachable the parts to which chains of fits lead from a platform
     */
    ClauseCheck(Relations relations, Placement placement, Function<Term, Set<String>> members, Function<String, Set<String>> reachable) {
        this.relations = relations;
        this.placement = placement;
        this.members = members;
        this.reachable = reachable;
    }

    List<Violation> broken(Clause clause) {
        List<Violation> found = new ArrayList<>();
        search(clause, new ArrayList<>(), found, new HashSet<>());
        return found;
    }

    /** The placed things that meet a term. */
    private List<Thing> things(Term term) {
        return things.computeIfAbsent(term, wanted -> {
            List<Thing> meeting = new ArrayList<>();
            if (wanted.sort() == Term.Sort.SLOT) {
                placement.slots().stream()
                        .filter(use -> !use.occupants().isEmpty() && relations.tags(use.slot()).contains(wanted.key()))
                        .forEach(use -> meeting.add(new Thing(true, use.index())));
            } else {
                Set<String> named = members.apply(wanted);
                if (wanted.sort() != Term.Sort.NAME && named.contains(placement.platform())) {
                    meeting.add(new Thing(false, Placement.PLATFORM));
                }
                placement.parts().stream().filter(part -> named.contains(part.part())).forEach(part -> meeting.add(new Thing(false, part.index())));
            }
            return meeting;
        });
    }

    /** Tries every way to meet the terms of {@code when}; without {@code apart} the first way is enough, since the clause is broken as a whole. */
    private void search(Clause clause, List<Thing> chosen, List<Violation> found, Set<Set<Integer>> seen) {
        if (chosen.size() == clause.when().size()) {
            if (!answered(clause, chosen) && seen.add(chosen.stream().map(Thing::number).collect(Collectors.toSet()))) {
                found.add(violation(clause, chosen));
            }
            return;
        }
        for (Thing thing : things(clause.when().get(chosen.size()))) {
            if (!clause.apart() || chosen.stream().allMatch(other -> different(other, thing))) {
                chosen.add(thing);
                search(clause, chosen, found, seen);
                chosen.remove(chosen.size() - 1);
                if (!clause.apart() && !found.isEmpty()) {
                    return;
                }
            }
        }
    }

    private boolean answered(Clause clause, List<Thing> chosen) {
        return clause.need().stream()
                .flatMap(term -> things(term).stream())
                .anyMatch(thing -> !clause.apart() || chosen.stream().allMatch(other -> different(other, thing)));
    }

    /** A part and the slot that it sits in itself are not different. */
    private boolean different(Thing one, Thing other) {
        if (one.slot == other.slot) {
            return one.index != other.index;
        }
        int part = one.slot ? other.index : one.index;
        int slot = one.slot ? one.index : other.index;
        return part == Placement.PLATFORM || placement.parts().get(part).use() != slot;
    }

    private Violation violation(Clause clause, List<Thing> chosen) {
        List<Integer> parts = new ArrayList<>();
        List<Integer> slots = new ArrayList<>();
        FactList because = new FactList().addAll(clause.because());
        SortedMap<String, Object> data = new TreeMap<>();
        String[] names = {"part", "other", "third"};
        String[] paths = {"path", "otherPath", "thirdPath"};
        for (int i = 0; i < chosen.size(); i++) {
            Thing thing = chosen.get(i);
            Term term = clause.when().get(i);
            if (thing.slot) {
                SlotUse use = placement.slots().get(thing.index);
                slots.add(thing.index);
                because.add(relations.slots(term).get(use.slot()));
                data.put("slot", use.slot().toString());
                data.put("tag", term.key());
                put(data, paths, i, use.path());
                use.occupants().forEach(occupant -> because.add(placement.parts().get(occupant).entry()));
            } else {
                parts.add(thing.index);
                String id = thing.index == Placement.PLATFORM ? placement.platform() : placement.parts().get(thing.index).part();
                if (term.sort() != Term.Sort.PART) {
                    because.add(relations.members(term).get(id));
                    data.put("name", term.sort() == Term.Sort.GROUP ? term.key().substring(term.key().indexOf(':') + 1) : term.key());
                }
                put(data, names, i, id);
                put(data, paths, i, thing.index == Placement.PLATFORM ? "the root" : placement.parts().get(thing.index).path());
                if (thing.index != Placement.PLATFORM) {
                    because.add(placement.parts().get(thing.index).entry());
                }
            }
        }
        data.putAll(new Changeable(relations, placement, parts, slots).names());
        if (!clause.need().isEmpty()) {
            data.put("needed", clause.need().stream().map(Term::key).toList());
            Set<String> serving = serving(clause);
            data.put("serving", List.copyOf(serving));
            if (serving.isEmpty()) {
                data.put("barren", placement.platform());
            }
        }
        for (Fact fact : clause.because()) {
            if (fact instanceof Constraint constraint) {
                data.put("constraint", constraint.id());
                data.put("why", why(constraint));
            } else if (fact instanceof Needs needs && needs.anyOf().isEmpty()) {
                data.put("unmeetable", "one of an empty list, which nothing is");
            }
        }
        return new Violation(clause.rule(), parts, slots, because.list(), data);
    }

    private static String why(Constraint constraint) {
        return !constraint.because().isBlank() ? constraint.because()
                : constraint.need().isEmpty() ? "these may not stand together" : "what it asks for is missing";
    }

    private static void put(SortedMap<String, Object> data, String[] names, int index, String value) {
        if (index < names.length) {
            data.put(names[index], value);
        }
    }

    /** All parts that would answer the clause's need and can be brought onto the platform. */
    private Set<String> serving(Clause clause) {
        Set<String> parts = new TreeSet<>();
        clause.need().forEach(term -> parts.addAll(members.apply(term)));
        parts.retainAll(reachable.apply(placement.platform()));
        return parts;
    }
}

package fettle.space;

import fettle.catalog.Fact;
import fettle.catalog.FactList;
import fettle.catalog.SlotId;
import fettle.relation.Clause;
import fettle.relation.Relations;
import fettle.relation.Room;
import fettle.relation.Term;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;

/** Puts causes in the order of the reasoning: from what is asked, or must be there, to what follows from it, and last to what that runs into. */
final class Telling {

    private final Relations relations;
    private final Setting setting;
    private final String platform;

    Telling(Relations relations, Setting setting) {
        this.relations = relations;
        this.setting = setting;
        this.platform = setting.terrain().hosts().get(setting.platform());
    }

    /** The causes in order, with the facts of each that bear on the others. */
    List<Cause> inOrder(List<Cause> causes, List<Cause> asked) {
        List<Cause> left = new ArrayList<>(causes);
        if (left.remove(Cause.Unreached.ANY)) {
            left.add(unreached(left));
        }
        left.sort(Comparator.comparing((Cause cause) -> asked.contains(cause) ? asked.indexOf(cause) : asked.size())
                .thenComparing(Telling::step).thenComparing(Cause::toString));
        Set<Object> relevant = relevant(left);
        Set<Object> spoken = new HashSet<>(Set.of(platform));
        List<Cause> told = new ArrayList<>();
        while (!left.isEmpty()) {
            Cause next = left.stream().filter(cause -> follows(cause, spoken)).findFirst()
                    .or(() -> left.stream().filter(cause -> named(cause).stream().anyMatch(spoken::contains)).findFirst()).orElse(left.get(0));
            left.remove(next);
            named(next).stream().filter(relevant::contains).forEach(spoken::add);
            told.add(told(next, relevant));
        }
        return told;
    }

    /** A cause with what bears on the others. */
    private Cause told(Cause cause, Set<Object> relevant) {
        if (cause instanceof Cause.Rule rule) {
            return new Cause.Rule(rule.clause(), facts(rule.clause(), relevant));
        } else if (cause instanceof Cause.Space space && (space.room() instanceof Room.Length || space.room() instanceof Room.Places)) {
            SortedMap<String, Integer> spans = new TreeMap<>();
            relations.candidates(space.room().slot()).stream().filter(relevant::contains).forEach(part -> spans.put(part, relations.span(part)));
            return new Cause.Space(space.room(), space.candidates(), spans);
        }
        return cause;
    }

    /** The parts out of reach among those asked for or needed. */
    private Cause unreached(List<Cause> causes) {
        Set<String> parts = new TreeSet<>();
        for (Cause cause : causes) {
            if (cause instanceof Cause.Asked asked) {
                parts.add(asked.part());
            } else if (cause instanceof Cause.Rule rule) {
                rule.clause().need().forEach(term -> parts.addAll(relations.members(term).keySet()));
            }
        }
        parts.removeIf(part -> !setting.terrain().isPart(setting.terrain().number(part)) || setting.reachable(setting.terrain().number(part)));
        return new Cause.Unreached(List.copyOf(parts), parts.stream().<Fact>map(relations.catalog().parts()::get).toList());
    }

    /** What leads on to more comes before what only forbids. */
    private static int step(Cause cause) {
        if (cause instanceof Cause.Asked || cause instanceof Cause.AskedSlot) {
            return 0;
        } else if (cause instanceof Cause.Only || cause instanceof Cause.Unreached) {
            return 1;
        } else if (cause instanceof Cause.Space space) {
            return space.room() instanceof Room.Filled ? 2 : 4;
        } else if (cause instanceof Cause.Rule rule) {
            return rule.clause().need().isEmpty() ? 5 : 3;
        } else if (cause instanceof Cause.Values) {
            return 6;
        }
        return 7;
    }

    /** Whether all that a cause takes for given has been spoken of. */
    private boolean follows(Cause cause, Set<Object> spoken) {
        if (cause instanceof Cause.Only only) {
            return spoken.contains(only.part());
        } else if (cause instanceof Cause.Space space) {
            return spoken.contains(space.room().slot().host());
        } else if (cause instanceof Cause.Unreached unreached) {
            return unreached.parts().stream().anyMatch(spoken::contains);
        } else if (cause instanceof Cause.Values values) {
            return spoken.contains(values.agreement().part());
        } else if (cause instanceof Cause.Nesting nesting) {
            return spoken.contains(nesting.noReentry().part());
        } else if (cause instanceof Cause.Rule rule) {
            return rule.clause().when().stream().allMatch(term -> members(term).stream().anyMatch(spoken::contains));
        }
        return true;
    }

    /** What more than one cause names, or one that names little. */
    private Set<Object> relevant(List<Cause> causes) {
        Set<Object> once = new HashSet<>();
        Set<Object> relevant = new HashSet<>(Set.of(platform));
        for (Cause cause : causes) {
            named(cause).stream().filter(name -> !(cause instanceof Cause.Rule) || !once.add(name)).forEach(relevant::add);
            if (cause instanceof Cause.Rule rule) {
                terms(rule.clause()).stream().filter(term -> term.sort() == Term.Sort.PART).forEach(term -> relevant.add(term.key()));
            }
        }
        return relevant;
    }

    /** The parts and slots that a cause names. */
    private Set<Object> named(Cause cause) {
        Set<Object> named = new LinkedHashSet<>();
        if (cause instanceof Cause.Asked asked) {
            named.add(asked.part());
        } else if (cause instanceof Cause.AskedSlot asked) {
            name(asked.slot(), named);
            named.addAll(relations.candidates(asked.slot()));
        } else if (cause instanceof Cause.Only only) {
            named.add(only.part());
            only.places().forEach(place -> name(place, named));
        } else if (cause instanceof Cause.Unreached unreached) {
            named.addAll(unreached.parts());
        } else if (cause instanceof Cause.Space space) {
            name(space.room().slot(), named);
            named.addAll(space.candidates());
        } else if (cause instanceof Cause.Values values) {
            named.add(values.agreement().part());
        } else if (cause instanceof Cause.Nesting nesting) {
            named.add(nesting.noReentry().part());
        } else if (cause instanceof Cause.Rule rule) {
            terms(rule.clause()).forEach(term -> named.addAll(members(term)));
        }
        return named;
    }

    private static void name(SlotId slot, Set<Object> named) {
        named.add(slot);
        named.add(slot.host());
    }

    private Set<Object> members(Term term) {
        Set<Object> members = new LinkedHashSet<>(relations.members(term).keySet());
        members.addAll(relations.slots(term).keySet());
        return members;
    }

    private static List<Term> terms(Clause clause) {
        List<Term> terms = new ArrayList<>(clause.when());
        terms.addAll(clause.need());
        return terms;
    }

    /** What a clause was derived from, and why what the other causes speak of falls under it. */
    private List<Fact> facts(Clause clause, Set<Object> relevant) {
        FactList facts = new FactList().addAll(clause.because());
        for (Term term : terms(clause)) {
            if (term.sort() != Term.Sort.PART) {
                for (Map.Entry<String, Fact> member : relations.members(term).entrySet()) {
                    if (relevant.contains(member.getKey())) {
                        facts.add(member.getValue());
                    }
                }
            }
            for (Map.Entry<SlotId, Fact> slot : relations.slots(term).entrySet()) {
                if (relevant.contains(slot.getKey())) {
                    facts.add(slot.getValue());
                }
            }
        }
        return facts.list();
    }
}

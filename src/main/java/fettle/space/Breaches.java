package fettle.space;

import fettle.relation.Agreement;
import fettle.relation.Clause;
import fettle.relation.Relations;
import fettle.relation.Term;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;

/**
 * Tells, one by one, which relations some placed things break, where each slot holds at most one part. Relations are numbered: clauses first, in their order,
 * then traits by name.
 */
final class Breaches {

    /** What one clause sees of a thing: a bit for each of its conditions, and one more for what it needs. */
    private record Seen(int clause, int bits) {}

    private record Declared(int trait, Set<String> values) {}

    private final List<Clause> clauses;
    private final List<String> traits;
    private final Map<Integer, List<Seen>> ofHost = new HashMap<>();
    private final Map<Integer, List<Seen>> ofSlot = new HashMap<>();
    private final Map<Integer, List<Declared>> declared = new HashMap<>();
    private final List<Integer> unconditional = new ArrayList<>();

    Breaches(Relations relations, Terrain terrain, TermMembers members) {
        this.clauses = relations.clauses();
        for (int clause = 0; clause < clauses.size(); clause++) {
            List<Term> when = clauses.get(clause).when();
            for (int i = 0; i < when.size(); i++) {
                note(clause, when.get(i), 1 << i, terrain, members);
            }
            for (Term term : clauses.get(clause).need()) {
                note(clause, term, 1 << when.size(), terrain, members);
            }
            if (when.isEmpty()) {
                unconditional.add(clause);
            }
        }
        Map<String, List<Agreement>> byTrait = new TreeMap<>();
        relations.agreements().forEach(agreement -> byTrait.computeIfAbsent(agreement.trait(), unused -> new ArrayList<>()).add(agreement));
        this.traits = List.copyOf(byTrait.keySet());
        for (int trait = 0; trait < traits.size(); trait++) {
            for (Agreement agreement : byTrait.get(traits.get(trait))) {
                Integer host = terrain.numbers().get(agreement.part());
                if (host != null) {
                    declared.computeIfAbsent(host, unused -> new ArrayList<>()).add(new Declared(clauses.size() + trait, agreement.values()));
                }
            }
        }
    }

    private void note(int clause, Term term, int bit, Terrain terrain, TermMembers members) {
        for (int host : members.hosts(term)) {
            // A name is one of placed parts; the platform is none.
            if (terrain.isPart(host) || term.sort() != Term.Sort.NAME) {
                merge(ofHost.computeIfAbsent(host, unused -> new ArrayList<>()), clause, bit);
            }
        }
        for (int slot : members.slots(term)) {
            merge(ofSlot.computeIfAbsent(slot, unused -> new ArrayList<>()), clause, bit);
        }
    }

    private static void merge(List<Seen> seen, int clause, int bit) {
        int last = seen.size() - 1;
        if (last >= 0 && seen.get(last).clause == clause) {
            seen.set(last, new Seen(clause, seen.get(last).bits | bit));
        } else {
            seen.add(new Seen(clause, bit));
        }
    }

    /** How many relations there are. */
    int relations() {
        return clauses.size() + traits.size();
    }

    /** Whether the relation is a clause, and not the agreement on a trait. */
    boolean isClause(int relation) {
        return relation < clauses.size();
    }

    Clause clause(int relation) {
        return clauses.get(relation);
    }

    String trait(int relation) {
        return traits.get(relation - clauses.size());
    }

    /** Whether what breaks the relation goes on breaking it whatever else is placed. */
    boolean lasting(int relation) {
        return !isClause(relation) || clause(relation).need().isEmpty();
    }

    /** The clauses by which a part needs something other than itself. */
    List<Integer> needs(int part) {
        List<Integer> needs = new ArrayList<>();
        for (Seen seen : ofHost.getOrDefault(part, List.of())) {
            Clause clause = clauses.get(seen.clause);
            if (clause.when().size() == 1 && !clause.need().isEmpty() && (seen.bits & 1) != 0 && (clause.apart() || seen.bits == 1)) {
                needs.add(seen.clause);
            }
        }
        return needs;
    }

    /** The relations that a trial breaks. */
    BitSet of(Trial trial) {
        Map<Integer, List<Integer>> met = new HashMap<>();
        Map<Integer, Set<String>> left = new HashMap<>();
        see(met, left, trial.platform(), -1, -1);
        for (int i = 0; i < trial.size(); i++) {
            see(met, left, trial.part(i), trial.slot(i), i);
        }
        BitSet broken = new BitSet();
        unconditional.stream().filter(clause -> !met.containsKey(clause)).forEach(broken::set);
        met.forEach((clause, things) -> broken.set(clause, broken(clauses.get(clause), things)));
        left.forEach((trait, values) -> broken.set(trait, values.isEmpty()));
        return broken;
    }

    /** Notes what each relation sees of a part and of the slot that it is in; the two of them are one thing, since no clause takes them as two. */
    private void see(Map<Integer, List<Integer>> met, Map<Integer, Set<String>> left, int host, int slot, int thing) {
        Map<Integer, Integer> bits = new HashMap<>();
        ofHost.getOrDefault(host, List.of()).forEach(seen -> bits.put(seen.clause, seen.bits));
        if (thing >= 0) {
            ofSlot.getOrDefault(slot, List.of()).forEach(seen -> bits.merge(seen.clause, seen.bits, (one, other) -> one | other));
        }
        bits.forEach((clause, seen) -> met.computeIfAbsent(clause, unused -> new ArrayList<>()).add(seen));
        for (Declared each : declared.getOrDefault(host, List.of())) {
            left.merge(each.trait, each.values, (one, other) -> {
                Set<String> both = new HashSet<>(one);
                both.retainAll(other);
                return both;
            });
        }
    }

    private static boolean broken(Clause clause, List<Integer> things) {
        int when = clause.when().size();
        if (clause.apart()) {
            return broken(when, things, 0, new BitSet());
        }
        int all = things.stream().reduce(0, (one, other) -> one | other);
        int conditions = (1 << when) - 1;
        return (all & conditions) == conditions && all >> when == 0;
    }

    /** Whether the conditions from {@code next} on can be met by things not chosen yet, so that no thing not chosen then is what is needed. */
    private static boolean broken(int when, List<Integer> things, int next, BitSet chosen) {
        for (int i = 0; i < things.size(); i++) {
            boolean meets = !chosen.get(i) && (things.get(i) >> next & 1) != 0;
            if (next == when && meets) {
                return false;
            }
            if (next < when && meets) {
                chosen.set(i);
                boolean found = broken(when, things, next + 1, chosen);
                chosen.clear(i);
                if (found) {
                    return true;
                }
            }
        }
        return next == when;
    }
}

package fettle.space;

import fettle.relation.Agreement;
import fettle.relation.Clause;
import fettle.relation.Relations;
import fettle.relation.Term;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.Collections;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * Tells, one by one, which relations some placed things break, where each slot holds at most one part. Relations are numbered: clauses first, in their order,
 * then traits by name.
 */
final class Breaches {

    /** What clauses see of a thing: by clause, in rising order, a bit for each of its conditions, and one more for what it needs. */
    private record Seen(int[] clauses, int[] bits) {
        static final Seen NOTHING = new Seen(Numbers.NONE, Numbers.NONE);
    }

    /** As many conditions as bits of a whole number can be told apart; what has more counts as broken, so that no trial succeeds on its account. */
    private static final int MOST_CONDITIONS = 30;

    private record Declared(int trait, Set<String> values) {}

    private final List<Clause> clauses;
    private final List<String> traits;
    private final Seen[] ofHost;
    private final Seen[] ofSlot;
    private final Map<Integer, List<Declared>> declared = new HashMap<>();
    private final List<Integer> unconditional = new ArrayList<>();
    private final BitSet oversize = new BitSet();
    private final int[] met;
    private final int[][] bitsMet;

    Breaches(Relations relations, Terrain terrain, TermMembers members) {
        this.clauses = relations.clauses();
        List<SortedMap<Integer, Integer>> hosts = new ArrayList<>(Collections.nCopies(terrain.hosts().size(), null));
        List<SortedMap<Integer, Integer>> slots = new ArrayList<>(Collections.nCopies(terrain.slots().size(), null));
        for (int clause = 0; clause < clauses.size(); clause++) {
            List<Term> when = clauses.get(clause).when();
            if (when.size() > MOST_CONDITIONS) {
                oversize.set(clause);
                continue;
            }
            for (int i = 0; i < when.size(); i++) {
                note(clause, when.get(i), 1 << i, terrain, members, hosts, slots);
            }
            for (Term term : clauses.get(clause).need()) {
                note(clause, term, 1 << when.size(), terrain, members, hosts, slots);
            }
            if (when.isEmpty()) {
                unconditional.add(clause);
            }
        }
        this.ofHost = seen(hosts);
        this.ofSlot = seen(slots);
        this.met = new int[clauses.size()];
        this.bitsMet = new int[clauses.size()][2];
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

    private static void note(
            int clause, Term term, int bit, Terrain terrain, TermMembers members, List<SortedMap<Integer, Integer>> hosts, List<SortedMap<Integer, Integer>> slots) {
        for (int host : members.hosts(term)) {
            // A name is one of placed parts; the platform is none.
            if (terrain.isPart(host) || term.sort() != Term.Sort.NAME) {
                note(hosts, host, clause, bit);
            }
        }
        for (int slot : members.slots(term)) {
            note(slots, slot, clause, bit);
        }
    }

    private static void note(List<SortedMap<Integer, Integer>> noted, int thing, int clause, int bit) {
        if (noted.get(thing) == null) {
            noted.set(thing, new TreeMap<>());
        }
        noted.get(thing).merge(clause, bit, (one, other) -> one | other);
    }

    private static Seen[] seen(List<SortedMap<Integer, Integer>> noted) {
        Seen[] seen = new Seen[noted.size()];
        for (int i = 0; i < seen.length; i++) {
            SortedMap<Integer, Integer> bits = noted.get(i);
            seen[i] = bits == null ? Seen.NOTHING : new Seen(
                    bits.keySet().stream().mapToInt(Integer::intValue).toArray(), bits.values().stream().mapToInt(Integer::intValue).toArray());
        }
        return seen;
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
        return !isClause(relation) || clause(relation).need().isEmpty() && !oversize.get(relation);
    }

    /** Whether a trial breaks a relation, other than those that are spared, whatever else is placed. */
    boolean forGood(Trial trial, BitSet spared) {
        return of(trial).stream().anyMatch(relation -> lasting(relation) && !spared.get(relation));
    }

    /** The clauses by which a part needs something other than itself. */
    List<Integer> needs(int part) {
        List<Integer> needs = new ArrayList<>();
        Seen seen = ofHost[part];
        for (int i = 0; i < seen.clauses.length; i++) {
            Clause clause = clauses.get(seen.clauses[i]);
            if (clause.when().size() == 1 && !clause.need().isEmpty() && (seen.bits[i] & 1) != 0 && (clause.apart() || seen.bits[i] == 1)) {
                needs.add(seen.clauses[i]);
            }
        }
        return needs;
    }

    /** The relations that a trial breaks. */
    BitSet of(Trial trial) {
        BitSet touched = new BitSet();
        Map<Integer, Set<String>> left = new HashMap<>();
        see(touched, left, trial.platform(), Seen.NOTHING);
        for (int i = 0; i < trial.size(); i++) {
            see(touched, left, trial.part(i), trial.slot(i) < 0 ? Seen.NOTHING : ofSlot[trial.slot(i)]);
        }
        BitSet broken = (BitSet) oversize.clone();
        unconditional.stream().filter(clause -> met[clause] == 0).forEach(broken::set);
        for (int clause = touched.nextSetBit(0); clause >= 0; clause = touched.nextSetBit(clause + 1)) {
            broken.set(clause, broken(clauses.get(clause), bitsMet[clause], met[clause]));
            met[clause] = 0;
        }
        left.forEach((trait, values) -> broken.set(trait, values.isEmpty()));
        return broken;
    }

    /** Notes what each relation sees of a part and of the slot that it is in; the two of them are one thing, since no clause takes them as two. */
    private void see(BitSet touched, Map<Integer, Set<String>> left, int host, Seen slot) {
        Seen part = ofHost[host];
        int i = 0;
        int j = 0;
        while (i < part.clauses.length || j < slot.clauses.length) {
            boolean here = j == slot.clauses.length || i < part.clauses.length && part.clauses[i] <= slot.clauses[j];
            boolean there = i == part.clauses.length || j < slot.clauses.length && slot.clauses[j] <= part.clauses[i];
            int clause = here ? part.clauses[i] : slot.clauses[j];
            int bits = (here ? part.bits[i++] : 0) | (there ? slot.bits[j++] : 0);
            if (met[clause] == bitsMet[clause].length) {
                bitsMet[clause] = Arrays.copyOf(bitsMet[clause], 2 * met[clause]);
            }
            bitsMet[clause][met[clause]++] = bits;
            touched.set(clause);
        }
        for (Declared each : declared.getOrDefault(host, List.of())) {
            left.merge(each.trait, each.values, (one, other) -> {
                Set<String> both = new HashSet<>(one);
                both.retainAll(other);
                return both;
            });
        }
    }

    private static boolean broken(Clause clause, int[] things, int count) {
        int when = clause.when().size();
        if (clause.apart()) {
            return broken(when, things, count, 0, new BitSet());
        }
        int all = 0;
        for (int i = 0; i < count; i++) {
            all |= things[i];
        }
        int conditions = (1 << when) - 1;
        return (all & conditions) == conditions && all >> when == 0;
    }

    /** Whether the conditions from {@code next} on can be met by things not chosen yet, so that no thing not chosen then is what is needed. */
    private static boolean broken(int when, int[] things, int count, int next, BitSet chosen) {
        for (int i = 0; i < count; i++) {
            boolean meets = !chosen.get(i) && (things[i] >> next & 1) != 0;
            if (next == when && meets) {
                return false;
            }
            if (next < when && meets) {
                chosen.set(i);
                boolean found = broken(when, things, count, next + 1, chosen);
                chosen.clear(i);
                if (found) {
                    return true;
                }
            }
        }
        return next == when;
    }
}

package fettle.space;

import fettle.catalog.Fact;
import fettle.relation.Agreement;
import fettle.relation.Clause;
import fettle.relation.Relations;
import fettle.relation.Term;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;

/**
 * Finds relations that rule nothing out. A build that breaks one relation and no other shows that this one is needed; where none is met by trying, it is worked out
 * whether there is one, and for agreements the builds that there are with the relation are counted against those that there are without it.
 *
 * <p>What a part needs of others is left alone: it is worth stating even where it is always there.
 */
final class IdleRelations {

    private static final int MOST_MEMBERS = 3;

    /** How many places are looked at to find so many that go with the others. */
    private static final int MOST_LOOKED = 300;

    /** How many slots of one part are looked at, and how many parts of one slot. */
    private static final int MOST_SLOTS = 6;

    private static final int MOST_PARTS = 2;

    /** How many builds may be tried for one relation. */
    private static final int MOST_TRIED = 1_000;

    /** So many relations are worth the while of working all builds out once more without any of them. */
    private static final int MANY = 8;

    private final Relations relations;
    private final Terrain terrain;
    private final TermMembers members;
    private final Breaches breaches;
    private final int[] groupOf;
    private final List<BitSet> groups = new ArrayList<>();
    private final BitSet needed = new BitSet();
    private final BitSet unsettled = new BitSet();
    private final Trials.Patience[] patience;

    IdleRelations(Relations relations, Terrain terrain, TermMembers members, Breaches breaches) {
        this.relations = relations;
        this.terrain = terrain;
        this.members = members;
        this.breaches = breaches;
        this.groupOf = new int[breaches.relations()];
        Map<Object, Integer> known = new HashMap<>();
        for (int relation = 0; relation < groupOf.length; relation++) {
            int group = known.computeIfAbsent(meaning(relation), unused -> groups.size());
            if (group == groups.size()) {
                groups.add(new BitSet());
            }
            groups.get(group).set(relation);
            groupOf[relation] = group;
        }
        this.patience = new Trials.Patience[groups.size()];
        Arrays.setAll(patience, unused -> new Trials.Patience(MOST_TRIED));
    }

    /** Equal for relations of one rule that say the same, such as two parts each of which excludes the other. */
    private Object meaning(int relation) {
        if (!breaches.isClause(relation)) {
            return breaches.trait(relation);
        }
        Clause clause = breaches.clause(relation);
        Map<List<Set<Integer>>, Integer> when = new HashMap<>();
        clause.when().forEach(term -> when.merge(things(List.of(term)), 1, Integer::sum));
        return List.of(clause.rule(), when, things(clause.need()), clause.apart());
    }

    private List<Set<Integer>> things(Collection<Term> terms) {
        Set<Integer> hosts = new HashSet<>();
        Set<Integer> slots = new HashSet<>();
        for (Term term : terms) {
            Arrays.stream(members.hosts(term)).forEach(hosts::add);
            Arrays.stream(members.slots(term)).forEach(slots::add);
        }
        return List.of(hosts, slots);
    }

    /** Takes note of a build that breaks these relations, and no other. */
    void see(BitSet broken) {
        int first = broken.nextSetBit(0);
        if (first >= 0 && !needed.get(groupOf[first]) && broken.stream().allMatch(relation -> groupOf[relation] == groupOf[first])) {
            needed.set(groupOf[first]);
        }
    }

    /** The groups that are still in question: of relations that could rule something out, of which no build broke one alone. */
    private List<BitSet> open() {
        List<BitSet> open = new ArrayList<>();
        for (int group = 0; group < groups.size(); group++) {
            int first = groups.get(group).nextSetBit(0);
            boolean need = breaches.isClause(first) && breaches.clause(first).apart() && !breaches.clause(first).need().isEmpty();
            if (!needed.get(group) && !need) {
                open.add(groups.get(group));
            }
        }
        return open;
    }

    /** Tries on one platform for builds that break a relation in question and no other. */
    void seek(Trials trials) {
        for (BitSet group : open()) {
            int relation = group.nextSetBit(0);
            if (patience[groupOf[relation]].spent()) {
                continue;
            }
            for (List<Trials.Place> wish : breaches.isClause(relation) ? meeting(trials, breaches.clause(relation), patience[groupOf[relation]]) : disagreeing(trials, breaches.trait(relation))) {
                if (!needed.get(groupOf[relation])) {
                    trials.breaks(wish, group, patience[groupOf[relation]]);
                }
            }
        }
    }

    /** Some ways to meet all conditions of a clause that can be tried. */
    private List<List<Trials.Place>> meeting(Trials trials, Clause clause, Trials.Patience allowed) {
        List<List<Trials.Place>> ways = List.of(List.of());
        for (Term term : clause.when()) {
            List<List<Trials.Place>> more = new ArrayList<>();
            List<Trials.Place> places = places(trials, term);
            for (List<Trials.Place> way : ways) {
                int found = 0;
                for (int i = 0; i < Math.min(MOST_LOOKED, places.size()) && found < MOST_MEMBERS; i++) {
                    List<Trials.Place> longer = new ArrayList<>(way);
                    longer.add(places.get(i));
                    if ((!clause.apart() || !way.contains(places.get(i))) && trials.look(longer, allowed)) {
                        more.add(longer);
                        found++;
                    }
                }
            }
            ways = more;
        }
        return ways;
    }

    /** Where things that meet a term can be put. */
    private List<Trials.Place> places(Trials trials, Term term) {
        List<Trials.Place> places = new ArrayList<>();
        for (int host : members.hosts(term)) {
            if (host == trials.platform() && term.sort() != Term.Sort.NAME) {
                places.add(Trials.Place.PLATFORM);
            } else if (terrain.isPart(host)) {
                spread(trials.places(host)).forEach(slot -> places.add(new Trials.Place(slot, host)));
            }
        }
        for (int slot : members.slots(term)) {
            if (terrain.owner()[slot] == trials.platform() || trials.reaches(terrain.owner()[slot])) {
                Arrays.stream(terrain.candidates()[slot]).limit(MOST_PARTS).forEach(part -> places.add(new Trials.Place(slot, part)));
            }
        }
        return places;
    }

    /** The slots nearest to the platform and those farthest from it, where there are many. */
    private static List<Integer> spread(List<Integer> slots) {
        if (slots.size() <= MOST_SLOTS) {
            return slots;
        }
        List<Integer> some = new ArrayList<>(slots.subList(0, MOST_SLOTS / 2));
        some.addAll(slots.subList(slots.size() - MOST_SLOTS / 2, slots.size()));
        return some;
    }

    /** Parts that share no value of a trait, or share none with the platform, two by two. */
    private List<List<Trials.Place>> disagreeing(Trials trials, String trait) {
        List<Agreement> all = relations.agreements().stream()
                .filter(agreement -> agreement.trait().equals(trait) && !places(trials, agreement).isEmpty()).toList();
        List<List<Trials.Place>> ways = new ArrayList<>();
        for (int i = 0; i < all.size() && ways.size() < 4 * MOST_MEMBERS; i++) {
            for (int j = i + 1; j < all.size() && ways.size() < 4 * MOST_MEMBERS; j++) {
                if (all.get(i).values().stream().noneMatch(all.get(j).values()::contains)) {
                    ways.add(Stream.concat(places(trials, all.get(i)).stream().limit(1), places(trials, all.get(j)).stream().limit(1)).toList());
                }
            }
        }
        return ways;
    }

    private List<Trials.Place> places(Trials trials, Agreement agreement) {
        return Optional.ofNullable(terrain.numbers().get(agreement.part())).map(host -> host == trials.platform()
                ? List.of(Trials.Place.PLATFORM)
                : trials.places(host).stream().map(slot -> new Trials.Place(slot, host)).toList()).orElse(List.of());
    }

    /**
     * What was found.
     *
     * @param idle relations that rule nothing out, each also if those before it are taken out
     * @param open relations of which that could not be decided
     */
    record Answer(List<IdleRelation> idle, List<IdleRelation> open) {}

    /** Tells which platforms have more valid builds under fewer rules. */
    interface Counts {
        Compared compare(Collection<String> platforms, Rules fewer);
    }

    /**
     * How numbers of valid builds compare.
     *
     * @param more the platforms that have more under fewer rules
     * @param undecided why that could not be worked out, where it could not
     */
    record Compared(Set<String> more, Optional<Undecided> undecided) {}

    /** A group in question, and the platforms on which it could be broken if nothing else forbade it. */
    private record Suspect(BitSet group, Set<String> platforms) {}

    /** What is worked out with. */
    private record Means(Map<String, Trials> trials, OnePlace onePlace, Breaking breaking, Counts counts) {}

    /**
     * Decides what is still in question. A relation that speaks of parts that are in no valid build at all is passed over, since what is wrong is wrong with those.
     *
     * @param used the parts in some valid build of some platform
     */
    Answer idle(Collection<Trials> platforms, BitSet used, Breaking breaking, Counts counts) {
        List<IdleRelation> idle = new ArrayList<>();
        List<IdleRelation> left = new ArrayList<>();
        BitSet dropped = new BitSet();
        List<Suspect> suspects = new ArrayList<>();
        for (BitSet group : open()) {
            int relation = group.nextSetBit(0);
            if (speaksOf(relation, used)) {
                Set<String> touched = new TreeSet<>();
                platforms.stream().filter(trials -> breakable(relation, trials)).forEach(trials -> touched.add(terrain.hosts().get(trials.platform())));
                if (touched.isEmpty()) {
                    dropped.or(group);
                    idle.addAll(told(group, true, Optional.empty()));
                } else {
                    suspects.add(new Suspect(group, touched));
                }
            }
        }
        Map<String, Trials> trialsOf = new HashMap<>();
        platforms.forEach(trials -> trialsOf.put(terrain.hosts().get(trials.platform()), trials));
        decide(suspects, dropped, new Means(trialsOf, new OnePlace(terrain, members), breaking, counts), idle, left);
        groups.stream().filter(group -> !group.intersects(dropped) && !group.intersects(unsettled)).forEach(group -> idle.addAll(restated(group, used)));
        return new Answer(List.copyOf(idle), List.copyOf(left));
    }

    /** Those of a group that is needed as a whole which can be spared. */
    private List<IdleRelation> restated(BitSet group, BitSet used) {
        int first = group.nextSetBit(0);
        return group.cardinality() > 1 && breaches.isClause(first) && speaksOf(first, used)
                ? new Restated(relations).among(group.stream().mapToObj(breaches::clause).toList()) : List.of();
    }

    /** Takes one after the other out, and leaves out those that make no difference; many are first taken out together, which seldom makes any. */
    private void decide(List<Suspect> suspects, BitSet dropped, Means means, List<IdleRelation> idle, List<IdleRelation> left) {
        if (suspects.size() >= MANY) {
            Set<String> platforms = new TreeSet<>();
            BitSet without = (BitSet) dropped.clone();
            suspects.forEach(suspect -> {
                platforms.addAll(suspect.platforms);
                without.or(suspect.group);
            });
            Compared compared = onOneFirst(platforms, means.counts, rules(without));
            if (compared.undecided.isEmpty() && compared.more.isEmpty()) {
                dropped.or(without);
                suspects.forEach(suspect -> idle.addAll(told(suspect.group, false, Optional.empty())));
                return;
            }
            if (compared.undecided.isEmpty()) {
                int half = suspects.size() / 2;
                decide(suspects.subList(0, half), dropped, means, idle, left);
                decide(suspects.subList(half, suspects.size()), dropped, means, idle, left);
                return;
            }
        }
        decideEach(suspects, dropped, means, idle, left);
    }

    private void decideEach(List<Suspect> suspects, BitSet dropped, Means means, List<IdleRelation> idle, List<IdleRelation> left) {
        for (Suspect suspect : suspects) {
            BitSet without = (BitSet) dropped.clone();
            without.or(suspect.group);
            int relation = suspect.group.nextSetBit(0);
            Compared compared = breaches.isClause(relation)
                    ? broken(suspect, breaches.clause(relation), without, means) : onOneFirst(suspect.platforms, means.counts, rules(without));
            if (compared.undecided.isPresent()) {
                unsettled.or(suspect.group);
                left.addAll(told(suspect.group, false, compared.undecided));
            } else if (compared.more.isEmpty()) {
                dropped.or(without);
                idle.addAll(told(suspect.group, false, Optional.empty()));
            }
        }
    }

    /** A platform on which a clause can be broken alone, which is one with more valid builds without it. */
    private Compared broken(Suspect suspect, Clause clause, BitSet without, Means means) {
        List<Integer> open = new ArrayList<>();
        for (String platform : suspect.platforms) {
            Optional<Boolean> told = means.onePlace.breaks(means.trials.get(platform), clause, without);
            if (told.orElse(false)) {
                return new Compared(Set.of(platform), Optional.empty());
            }
            if (told.isEmpty()) {
                open.add(terrain.number(platform));
            }
        }
        return open.isEmpty() ? new Compared(Set.of(), Optional.empty()) : broken(open, clause, without, means.breaking);
    }

    private Compared broken(List<Integer> platforms, Clause clause, BitSet without, Breaking breaking) {
        Set<Clause> spared = new HashSet<>();
        Set<String> sparedTraits = new HashSet<>();
        without.stream().forEach(relation -> {
            if (breaches.isClause(relation)) {
                spared.add(breaches.clause(relation));
            } else {
                sparedTraits.add(breaches.trait(relation));
            }
        });
        try {
            OptionalInt found = breaking.possible(platforms, clause, spared, sparedTraits);
            return new Compared(found.isPresent() ? Set.of(terrain.hosts().get(found.getAsInt())) : Set.of(), Optional.empty());
        } catch (TooLarge tooLarge) {
            return new Compared(Set.of(), Optional.of(Undecided.of(tooLarge)));
        }
    }

    /** Mostly one platform is enough to show that relations are needed. */
    private static Compared onOneFirst(Set<String> platforms, Counts counts, Rules fewer) {
        Set<String> rest = new TreeSet<>(platforms);
        String first = platforms.iterator().next();
        rest.remove(first);
        Compared compared = counts.compare(Set.of(first), fewer);
        return rest.isEmpty() || compared.undecided.isPresent() || !compared.more.isEmpty() ? compared : counts.compare(rest, fewer);
    }

    /** One for all that entries state; groups that only their members make up are told each by itself. */
    private List<IdleRelation> told(BitSet group, boolean apart, Optional<Undecided> undecided) {
        int first = group.nextSetBit(0);
        if (!breaches.isClause(first)) {
            List<Agreement> agreements = relations.agreements().stream().filter(agreement -> agreement.trait().equals(breaches.trait(first))).toList();
            return List.of(new IdleRelation(agreements.get(0).rule(), breaches.trait(first), agreements.stream().map(Agreement::because).distinct().toList(), apart, Optional.empty(), undecided));
        }
        List<Clause> clauses = group.stream().mapToObj(breaches::clause).toList();
        List<Fact> stated = clauses.stream().flatMap(clause -> clause.because().stream()).distinct().toList();
        if (!stated.isEmpty()) {
            return List.of(new IdleRelation(clauses.get(0).rule(), key(clauses.get(0)), stated, apart, Optional.empty(), undecided));
        }
        return clauses.stream().map(clause -> new IdleRelation(
                clause.rule(), key(clause), clause.when().stream().flatMap(term -> relations.members(term).values().stream()).distinct().toList(), apart, Optional.empty(), undecided)).toList();
    }

    static String key(Clause clause) {
        return clause.when().isEmpty() ? "" : clause.when().get(0).key();
    }

    private Rules rules(BitSet without) {
        List<Clause> clauses = new ArrayList<>();
        Set<String> traits = new HashSet<>();
        for (int relation = 0; relation < groupOf.length; relation++) {
            if (!without.get(relation)) {
                if (breaches.isClause(relation)) {
                    clauses.add(breaches.clause(relation));
                } else {
                    traits.add(breaches.trait(relation));
                }
            }
        }
        return new Rules(clauses, relations.agreements().stream().filter(agreement -> traits.contains(agreement.trait())).toList());
    }

    private boolean speaksOf(int relation, BitSet used) {
        if (!breaches.isClause(relation)) {
            return relations.agreements().stream().filter(agreement -> agreement.trait().equals(breaches.trait(relation)))
                    .map(agreement -> terrain.numbers().get(agreement.part())).anyMatch(host -> host != null && (used.get(host) || !terrain.isPart(host)));
        }
        return breaches.clause(relation).when().stream().allMatch(term -> members.slots(term).length > 0
                || Arrays.stream(members.hosts(term)).anyMatch(host -> used.get(host) || !terrain.isPart(host) && term.sort() != Term.Sort.NAME));
    }

    /** Whether a platform leads to what could break the relation if nothing else forbade it. */
    private boolean breakable(int relation, Trials trials) {
        if (breaches.isClause(relation)) {
            Clause clause = breaches.clause(relation);
            List<List<Trials.Place>> met = clause.when().stream().map(term -> places(trials, term)).toList();
            Set<Trials.Place> all = new HashSet<>();
            met.forEach(all::addAll);
            return met.stream().noneMatch(List::isEmpty) && (!clause.apart() || met.size() < 2 || all.size() > 1 || all.stream().anyMatch(place -> !trials.once(place.part(), room -> room.most() <= 1 || room.distinct())));
        }
        Set<String> left = null;
        for (Agreement agreement : relations.agreements()) {
            if (agreement.trait().equals(breaches.trait(relation)) && !places(trials, agreement).isEmpty()) {
                if (left == null) {
                    left = new HashSet<>(agreement.values());
                }
                left.retainAll(agreement.values());
            }
        }
        return left != null && left.isEmpty();
    }
}

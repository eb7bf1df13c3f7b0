package fettle.space;

import fettle.relation.Term;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.BiConsumer;
import java.util.function.BooleanSupplier;
import java.util.function.Predicate;

/**
 * Looks for builds of one platform by trying: puts a wanted part where a chain of fits leads, fills what must be filled, and changes one thing at a time as
 * long as fewer relations are broken. What it finds is a build; that it finds none proves nothing.
 */
final class Trials {

    /** How many builds may be tried for one wish. */
    private static final int MOST_TRIED = 120;

    /** How many choices of one sort may be tried in one round. */
    private static final int MOST_CHOICES = 12;

    /** How many builds may be tried to get many parts into one, and how many slots for each of them. */
    private static final int MOST_GATHERED = 600;

    /** After how many changes none is made any more that is no better than what was before. */
    private static final int MOST_SIDEWAYS = 24;

    private static final int MOST_WAYS = 4;

    private static final int MOST_PLACED = 300;

    /** Not to be changed. */
    static final BitSet NONE_SPARED = new BitSet();

    private final Terrain terrain;
    private final Breaches breaches;
    private final TermMembers members;
    private final int platform;
    private final BiConsumer<Trial, BitSet> watcher;
    private final BitSet reached = new BitSet();
    private final List<Integer> order = new ArrayList<>();
    private final Map<Integer, List<Integer>> places = new HashMap<>();
    private final BitSet hollow;
    private final int[][] demanding;
    private Map<Integer, Integer> usual = Map.of();
    private Patience patience = new Patience(0);
    private int left;

    /** How many more builds may be tried for one purpose, on all platforms together. */
    static final class Patience {

        private static final int TRIES_A_BUILD = 20;

        int left;
        /** How often a choice may be tried where one thing after the other is chosen. */
        int tries;

        Patience(int builds) {
            this.left = builds;
            this.tries = TRIES_A_BUILD * builds;
        }

        boolean spent() {
            return left <= 0;
        }
    }

    /**
     * Trials on one platform.
     *
     * @param watcher is shown every build that is put together, with the relations that it breaks
     */
    Trials(Terrain terrain, Breaches breaches, TermMembers members, int platform, BiConsumer<Trial, BitSet> watcher) {
        this.terrain = terrain;
        this.breaches = breaches;
        this.members = members;
        this.platform = platform;
        this.watcher = watcher;
        this.demanding = new int[terrain.hosts().size()][];
        reach();
        this.hollow = hollow();
    }

    private void reach() {
        List<Integer> hosts = new ArrayList<>(List.of(platform));
        for (int i = 0; i < hosts.size(); i++) {
            for (int slot : terrain.slotsOf()[hosts.get(i)]) {
                for (int part : terrain.candidates()[slot]) {
                    places.computeIfAbsent(part, unused -> new ArrayList<>()).add(slot);
                    if (!reached.get(part)) {
                        reached.set(part);
                        hosts.add(part);
                        order.add(part);
                    }
                }
            }
        }
    }

    /** Parts that must hold what nothing can be put in. */
    private BitSet hollow() {
        BitSet found = new BitSet();
        boolean again = true;
        while (again) {
            again = false;
            for (int part : order) {
                if (!found.get(part) && Arrays.stream(terrain.slotsOf()[part]).anyMatch(slot -> gaping(slot, found))) {
                    found.set(part);
                    again = true;
                }
            }
        }
        return found;
    }

    private boolean gaping(int slot, BitSet without) {
        return terrain.room()[slot].filled() && Arrays.stream(terrain.candidates()[slot]).noneMatch(part -> !without.get(part) && fits(slot, part));
    }

    private boolean fits(int slot, int part) {
        return terrain.room()[slot].most() > 0 && terrain.span()[part] <= terrain.room()[slot].notches();
    }

    int platform() {
        return platform;
    }

    /** The parts that chains of fits lead to, the nearest first. */
    List<Integer> reached() {
        return order;
    }

    /** Whether some chain of fits leads to a part. */
    boolean reaches(int part) {
        return reached.get(part);
    }

    /** Whether a part, or the platform, can never hold what it must. */
    boolean hollow(int host) {
        return terrain.isPart(host) ? hollow.get(host) : Arrays.stream(terrain.slotsOf()[host]).anyMatch(slot -> gaping(slot, hollow));
    }

    /** The slots, of the platform and of the parts it leads to, that a part fits. */
    List<Integer> places(int part) {
        return places.getOrDefault(part, List.of());
    }

    /** Whether a part, and all that it can stand on, is in one place only, if at all, in slots of such room. */
    boolean once(int part, Predicate<Capacity> room) {
        int at = part;
        while (terrain.isPart(at)) {
            if (places(at).size() != 1 || !room.test(terrain.room()[places(at).get(0)])) {
                return false;
            }
            at = terrain.owner()[places(at).get(0)];
        }
        return true;
    }

    /** One step down: a part in a slot of what stands above. */
    private record Step(int slot, int part) {}

    private record Wish(List<List<Step>> chains, Map<Integer, Integer> choices) {
        Wish with(List<Step> chain) {
            List<List<Step>> more = new ArrayList<>(chains);
            more.add(chain);
            return new Wish(more, choices);
        }

        Wish with(int slot, int part) {
            Map<Integer, Integer> more = new HashMap<>(choices);
            more.put(slot, part);
            return new Wish(chains, more);
        }
    }

    /** Looks for any valid build, whose choices are then the usual ones; tells whether there is one. */
    boolean start(Patience patience) {
        begin(patience, MOST_TRIED);
        Wish nothing = new Wish(List.of(), Map.of());
        Wish found = sought(nothing, NONE_SPARED);
        if (found == null) {
            return false;
        }
        usual = found.choices;
        return true;
    }

    /** Whether a valid build is found with this part in this slot. */
    boolean holds(int slot, int part, Patience patience) {
        List<Step> chain = chain(slot, part);
        if (chain == null) {
            return false;
        }
        begin(patience, MOST_TRIED);
        return sought(new Wish(List.of(chain), usual), NONE_SPARED) != null;
    }

    /** A part in a slot, or the platform itself. */
    record Place(int slot, int part) {
        static final Place PLATFORM = new Place(Integer.MAX_VALUE, Integer.MAX_VALUE);

        // Written out, as in SlotId.
        @Override
        public boolean equals(Object other) {
            return other instanceof Place that && slot == that.slot && part == that.part;
        }

        @Override
        public int hashCode() {
            return 31 * slot + part;
        }
    }

    /** Whether a build is found with these in it that breaks some of these relations and no other. */
    boolean breaks(List<Place> places, BitSet only, Patience patience) {
        Wish wish = wished(places);
        if (wish == null) {
            return false;
        }
        begin(patience, MOST_TRIED);
        return sought(wish, only) != null;
    }

    /**
     * Tries to get as many of these parts as possible into one valid build, the most wanted first.
     *
     * @param enough tells when to stop
     */
    void gather(List<Integer> wanted, BooleanSupplier enough, Patience patience) {
        begin(patience, MOST_GATHERED);
        Wish wish = new Wish(List.of(), usual);
        for (int part : wanted) {
            for (int slot : places(part).subList(0, Math.min(MOST_WAYS, places(part).size()))) {
                if (enough.getAsBoolean() || left <= 0 || patience.spent()) {
                    return;
                }
                List<Step> chain = chain(slot, part);
                Wish more = chain == null ? wish : wish.with(chain);
                Attempt attempt = chain == null ? null : attempt(more);
                if (attempt != null && attempt.broken.isEmpty()) {
                    wish = more;
                    break;
                }
            }
        }
    }

    private void begin(Patience allowed, int most) {
        patience = allowed;
        left = most;
    }

    /** The chain to a slot by the nearest way, and the part in it; {@code null} where the part would come back below itself. */
    private List<Step> chain(int slot, int part) {
        List<Step> chain = new ArrayList<>(List.of(new Step(slot, part)));
        for (int host = terrain.owner()[slot]; host != platform; host = terrain.owner()[chain.get(0).slot]) {
            if (!terrain.isPart(host) || host == part || chain.size() > MOST_PLACED) {
                return null;
            }
            chain.add(0, new Step(places(host).get(0), host));
        }
        return chain;
    }

    /** A wish with the build it gives, and what that breaks. */
    private record Attempt(Wish wish, Trial trial, BitSet broken) {}

    /**
     * Changes a wish, one thing at a time, until its build breaks nothing; with {@code spared} relations, until it breaks some of these and nothing else. Gives
     * {@code null} where no change helps.
     */
    private Wish sought(Wish wish, BitSet spared) {
        Set<Map<Integer, Integer>> been = new HashSet<>();
        Attempt now = attempt(wish);
        while (now != null && !suits(now.broken, spared)) {
            been.add(now.wish.choices);
            Attempt[] onward = new Attempt[1];
            Attempt better = answered(now, spared, onward);
            better = better != null ? better : rechosen(now, spared, been, onward);
            now = better != null ? better : onward[0];
        }
        return now == null ? completed(wish, spared) : now.wish;
    }

    /** The same with all that must be filled chosen anew. */
    private Wish completed(Wish wish, BitSet spared) {
        Trial trial = chained(wish);
        if (trial == null || !completion(spared).of(trial)) {
            return null;
        }
        Wish chosen = wish;
        for (int placed = 0; placed < trial.size(); placed++) {
            chosen = chosen.with(trial.slot(placed), trial.part(placed));
        }
        return chosen;
    }

    private Completion completion(BitSet spared) {
        return new Completion(terrain, breaches, this, patience, spared, filled -> {
            BitSet broken = breaches.of(filled);
            watcher.accept(filled, broken);
            return suits(broken, spared);
        });
    }

    /**
     * Whether some build with all of these in it breaks some of these relations and no other, each of them standing where it is looked for, if at all, in a slot of one; empty
     * where that could not be told.
     */
    Optional<Boolean> alone(List<Place> places, BitSet only, Patience patience) {
        begin(patience, 0);
        Wish wish = wished(places);
        Trial trial = wish == null ? null : chained(wish);
        Completion completion = completion(only);
        boolean found = trial != null && completion.of(trial);
        return found || !completion.open() ? Optional.of(found) : Optional.empty();
    }

    private static boolean suits(BitSet broken, BitSet spared) {
        return broken.isEmpty() == spared.isEmpty() && ills(broken, spared) == 0;
    }

    private Attempt attempt(Wish wish) {
        Trial trial = left <= 0 || patience.spent() ? null : grown(wish);
        if (trial == null) {
            return null;
        }
        left--;
        patience.left--;
        BitSet broken = breaches.of(trial);
        watcher.accept(trial, broken);
        return new Attempt(wish, trial, broken);
    }

    private static int ills(BitSet broken, BitSet spared) {
        int ills = 0;
        for (int relation = broken.nextSetBit(0); relation >= 0; relation = broken.nextSetBit(relation + 1)) {
            if (!spared.get(relation)) {
                ills++;
            }
        }
        return ills;
    }

    /**
     * Adds something that is needed.
     *
     * @param onward takes down an addition that is no better, because it needs something itself
     */
    private Attempt answered(Attempt now, BitSet spared, Attempt[] onward) {
        int ills = ills(now.broken, spared);
        for (int relation = now.broken.nextSetBit(0); relation >= 0; relation = now.broken.nextSetBit(relation + 1)) {
            List<Term> need = breaches.isClause(relation) && !spared.get(relation) ? breaches.clause(relation).need() : List.of();
            int tried = 0;
            for (Term term : need) {
                for (int part : members.hosts(term)) {
                    if (reached.get(part) && !hollow.get(part) && tried++ < MOST_CHOICES) {
                        List<Integer> places = places(part);
                        for (int i = 0; i < Math.min(MOST_CHOICES, places.size()); i++) {
                            List<Step> chain = chain(places.get(i), part);
                            Attempt next = chain == null ? null : attempt(now.wish.with(chain));
                            if (next != null && ills(next.broken, spared) < ills) {
                                return next;
                            }
                            if (next != null && onward[0] == null && ills(next.broken, spared) == ills && !next.broken.get(relation)) {
                                onward[0] = next;
                            }
                        }
                    }
                }
            }
        }
        return null;
    }

    /**
     * Makes another choice for what must be filled, of what is at odds with something.
     *
     * @param been choices that were made before
     * @param onward is given a choice that was not and is no worse, where there is nothing yet: what it is at odds with may give way
     */
    private Attempt rechosen(Attempt now, BitSet spared, Set<Map<Integer, Integer>> been, Attempt[] onward) {
        int ills = ills(now.broken, spared);
        BitSet atOdds = atOdds(now, spared);
        for (int placed = 0; placed < now.trial.size(); placed++) {
            int slot = now.trial.slot(placed);
            if (terrain.room()[slot].filled() && atOdds.get(placed)) {
                int tried = 0;
                for (int part : terrain.candidates()[slot]) {
                    if (part != now.trial.part(placed) && !hollow.get(part) && tried++ < MOST_CHOICES) {
                        Attempt next = attempt(now.wish.with(slot, part));
                        if (next != null && ills(next.broken, spared) < ills) {
                            return next;
                        }
                        if (next != null && onward[0] == null && ills(next.broken, spared) == ills && been.size() < MOST_SIDEWAYS && !been.contains(next.wish.choices)) {
                            onward[0] = next;
                        }
                    }
                }
            }
        }
        return null;
    }

    /** What has a part in a relation that is broken, though it may not be; all, where something is lacking, or parts don't agree. */
    private BitSet atOdds(Attempt now, BitSet spared) {
        Trial trial = now.trial;
        BitSet atOdds = new BitSet();
        for (int relation = now.broken.nextSetBit(0); relation >= 0; relation = now.broken.nextSetBit(relation + 1)) {
            if (spared.get(relation)) {
                continue;
            }
            if (!breaches.isClause(relation) || !breaches.clause(relation).need().isEmpty()) {
                atOdds.set(0, trial.size());
                return atOdds;
            }
            for (Term term : breaches.clause(relation).when()) {
                for (int placed = 0; placed < trial.size(); placed++) {
                    int at = placed;
                    if (Arrays.stream(members.hosts(term)).anyMatch(host -> host == trial.part(at)) || Arrays.stream(members.slots(term)).anyMatch(slot -> slot == trial.slot(at))) {
                        atOdds.set(placed);
                    }
                }
            }
        }
        return atOdds;
    }

    /** Puts these into one build and lets it be looked at, as it is; tells whether they can stand in one as far as chains of fits go. */
    boolean look(List<Place> places, Patience patience) {
        Wish wish = wished(places);
        if (wish == null || chained(wish) == null) {
            return false;
        }
        begin(patience, 1);
        attempt(wish);
        return true;
    }

    private Wish wished(List<Place> places) {
        Wish wish = new Wish(List.of(), usual);
        for (Place place : places) {
            if (place != Place.PLATFORM) {
                List<Step> chain = chain(place.slot, place.part);
                if (chain == null) {
                    return null;
                }
                wish = wish.with(chain);
            }
        }
        return wish;
    }

    /** The chains of a wish; {@code null} where two of them want different parts in one slot, or a part can't stand where it is wanted. */
    private Trial chained(Wish wish) {
        Trial trial = new Trial(platform);
        for (List<Step> chain : wish.chains) {
            int at = Trial.ROOT;
            for (Step step : chain) {
                int there = trial.in(at, step.slot);
                if (there >= 0 && trial.part(there) != step.part || there < 0 && !placed(trial, at, step.slot, step.part)) {
                    return null;
                }
                at = there >= 0 ? there : trial.size() - 1;
            }
        }
        return trial;
    }

    /** The build of a wish: its chains, and what must be filled filled; {@code null} where that can't be. */
    private Trial grown(Wish wish) {
        Trial trial = chained(wish);
        if (trial == null) {
            return null;
        }
        for (int placed = Trial.ROOT; placed < trial.size(); placed++) {
            for (int slot : demanding(trial.number(placed))) {
                if (trial.in(placed, slot) < 0 && !filled(trial, placed, slot, wish.choices)) {
                    return null;
                }
            }
        }
        return trial;
    }

    /** The slots of a host that must be filled. */
    int[] demanding(int host) {
        if (demanding[host] == null) {
            demanding[host] = Arrays.stream(terrain.slotsOf()[host]).filter(slot -> terrain.room()[slot].filled()).toArray();
        }
        return demanding[host];
    }

    private boolean filled(Trial trial, int bearer, int slot, Map<Integer, Integer> choices) {
        Integer choice = choices.get(slot);
        if (choice != null && placed(trial, bearer, slot, choice)) {
            return true;
        }
        for (int part : terrain.candidates()[slot]) {
            if (!hollow.get(part) && placed(trial, bearer, slot, part)) {
                return true;
            }
        }
        return false;
    }

    /** Whether no more parts are put into a trial. */
    boolean full(Trial trial) {
        return trial.size() >= MOST_PLACED;
    }

    /** Puts a part into an empty slot, if it may stand there. */
    boolean placed(Trial trial, int bearer, int slot, int part) {
        boolean free = terrain.turns()[part] == Terrain.ENDLESS || !trial.stands(bearer, part);
        if (!free || !fits(slot, part) || full(trial)) {
            return false;
        }
        trial.add(bearer, slot, part);
        return true;
    }
}

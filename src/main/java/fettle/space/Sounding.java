package fettle.space;

import fettle.catalog.SlotId;
import fettle.relation.Relations;
import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * Sounds the builds of a catalog's platforms for what lint asks of them, at the least cost: a build that is found by trying decides at once, so do
 * things that rule each other out whatever else is placed, and only what is left open then is worked out from all builds.
 */
public final class Sounding {

    private static final int MOST_PLACES = 8;

    /** How many builds may be tried in all; a catalog that takes more is better served by working out all builds. */
    private static final int MOST_TRIED = 8_000;

    private static final int MOST_STARTED = 500;

    /** How many platforms may be worked out once more without some relation, over all relations. */
    private static final int MOST_COMPARED = 1_200;

    private final Relations relations;
    private final Terrain terrain;
    private final TermMembers members;
    private final Breaches breaches;
    private final Bounds bounds;
    private final Trials.Patience patience;
    private final LimitVerdicts limits;
    private final IdleRelations idle;
    private final List<Sounded> platforms = new ArrayList<>();
    private IdleRelations.Answer answer;
    private final Map<String, BigInteger> counts = new HashMap<>();
    private int comparisons = MOST_COMPARED;
    private final SortedMap<String, Folded> folded;

    /** One platform as far as trying goes: what of it is used, and what is not, and what remains open. */
    private final class Sounded {

        private final int platform;
        private final Trials trials;
        private final BitSet used = new BitSet();
        private final BitSet usedSlots = new BitSet();
        private final BitSet dead = new BitSet();
        private final BitSet deadSlots = new BitSet();
        private final Map<Long, Boolean> excluded = new HashMap<>();
        private final boolean known;
        private final boolean found;

        /** Tries no more than need be where all builds are known. */
        Sounded(int platform, boolean known) {
            this.platform = platform;
            this.known = known;
            this.trials = new Trials(terrain, breaches, members, platform, this::look);
            this.found = !trials.hollow(platform) && trials.start(new Trials.Patience(MOST_STARTED));
            if (found && !known) {
                rule();
                trials.reached().forEach(this::look);
                slots().forEach(this::lookInto);
            }
        }

        private void look(Trial trial, BitSet broken) {
            idle.see(broken);
            if (broken.isEmpty()) {
                note(trial);
                limits.see(trial);
            }
        }

        private void note(Trial trial) {
            for (int i = 0; i < trial.size(); i++) {
                used.set(trial.part(i));
                usedSlots.set(trial.slot(i));
            }
        }

        /** Finds parts that no slot can hold because of its host, the platform or the part itself. */
        private void rule() {
            boolean again = true;
            while (again) {
                again = false;
                for (int part : trials.reached()) {
                    if (!used.get(part) && !dead.get(part) && impossible(part)) {
                        dead.set(part);
                        again = true;
                    }
                }
            }
        }

        private boolean impossible(int part) {
            return trials.hollow(part) || trials.places(part).stream().allMatch(slot -> excluded(slot, part)) || starved(part);
        }

        /** Whether each part that would meet some need of this one is ruled out by the two of them and the platform. */
        private boolean starved(int part) {
            return breaches.needs(part).stream().anyMatch(clause -> breaches.clause(clause).need().stream()
                    .flatMapToInt(term -> Arrays.stream(members.hosts(term)))
                    .allMatch(other -> terrain.isPart(other) ? !trials.reaches(other) || dead.get(other) || apart(part, other) : other != platform)
                    && breaches.clause(clause).need().stream().allMatch(term -> members.slots(term).length == 0));
        }

        private boolean apart(int part, int other) {
            Trial trial = new Trial(platform);
            trial.add(Trial.ROOT, NO_SLOT, part);
            trial.add(Trial.ROOT, NO_SLOT, other);
            return breaches.forGood(trial, Trials.NONE_SPARED);
        }

        private void look(int part) {
            List<Integer> places = trials.places(part);
            for (int i = 0; i < Math.min(MOST_PLACES, places.size()) && !used.get(part) && !dead.get(part); i++) {
                trials.holds(places.get(i), part, patience);
            }
        }

        /** Every slot of the platform and of the parts it leads to. */
        private List<Integer> slots() {
            List<Integer> slots = new ArrayList<>();
            Arrays.stream(terrain.slotsOf()[platform]).forEach(slots::add);
            trials.reached().forEach(part -> Arrays.stream(terrain.slotsOf()[part]).forEach(slots::add));
            return slots;
        }

        private void lookInto(int slot) {
            int[] candidates = terrain.candidates()[slot];
            if (!usedSlots.get(slot) && Arrays.stream(candidates).allMatch(part -> dead.get(part) || excluded(slot, part))) {
                deadSlots.set(slot);
            }
            for (int i = 0; i < Math.min(MOST_PLACES, candidates.length) && !usedSlots.get(slot) && !deadSlots.get(slot); i++) {
                trials.holds(slot, candidates[i], patience);
            }
        }

        /** Whether the part can't be in the slot because of its size, the slot's host or the platform, whatever else is placed. */
        private boolean excluded(int slot, int part) {
            Capacity room = terrain.room()[slot];
            int host = terrain.owner()[slot];
            return dead.get(host) || excluded.computeIfAbsent(KeyOfTwo.of(slot, part), unused -> {
                if (room.most() == 0 || terrain.span()[part] > room.notches()) {
                    return true;
                }
                Trial trial = new Trial(platform);
                trial.add(host == platform ? Trial.ROOT : trial.add(Trial.ROOT, NO_SLOT, host), slot, part);
                return breaches.forGood(trial, Trials.NONE_SPARED);
            });
        }

        boolean open() {
            return known || !trials.hollow(platform) && (!found
                    || trials.reached().stream().anyMatch(part -> !used.get(part) && !dead.get(part))
                    || slots().stream().anyMatch(slot -> !usedSlots.get(slot) && !deadSlots.get(slot)));
        }

        Vitals vitals() {
            return trials.hollow(platform) ? nothing() : vitals(dead, deadSlots, new BitSet(), Optional.empty());
        }

        private Vitals nothing() {
            BitSet all = new BitSet();
            slots().forEach(all::set);
            return new Vitals(name(), names(trials.reached()), true, names(trials.reached()), slotNames(all), new TreeSet<>(), Optional.empty());
        }

        /** What the builds of the platform say of what was left open. */
        Vitals vitals(Folded folded) {
            if (folded.isVoid()) {
                return nothing();
            }
            if (folded.undecided().isPresent()) {
                BitSet open = new BitSet();
                trials.reached().stream().filter(part -> !used.get(part) && !dead.get(part)).forEach(open::set);
                return vitals(dead, deadSlots, open, folded.undecided());
            }
            BitSet unused = new BitSet();
            trials.reached().forEach(unused::set);
            BitSet unusedSlots = new BitSet();
            slots().forEach(unusedSlots::set);
            Evaluation.below(folded.circuit(), folded.root()).stream().forEach(node -> {
                switch (folded.circuit().kind(node)) {
                    case PART -> unused.clear(folded.circuit().first(node));
                    case SLOT -> unusedSlots.clear(folded.circuit().first(node));
                    case ONE, BOTH, SEVERAL, EITHER -> { }
                }
            });
            return vitals(unused, unusedSlots, new BitSet(), Optional.empty());
        }

        private Vitals vitals(BitSet unused, BitSet unusedSlots, BitSet open, Optional<Undecided> undecided) {
            return new Vitals(
                    name(), names(trials.reached()), false, names(unused.stream().boxed().toList()), slotNames(unusedSlots), names(open.stream().boxed().toList()), undecided);
        }

        private String name() {
            return terrain.hosts().get(platform);
        }
    }

    private static final int NO_SLOT = -1;

    private Sounding(Relations relations, Bounds bounds, SortedMap<String, Folded> known) {
        this.relations = relations;
        this.bounds = bounds;
        this.terrain = Terrain.of(relations);
        this.members = new TermMembers(relations, terrain);
        this.breaches = new Breaches(relations, terrain, members);
        this.patience = new Trials.Patience(MOST_TRIED);
        this.limits = new LimitVerdicts(relations.catalog(), terrain);
        this.idle = new IdleRelations(relations, terrain, members, breaches);
        this.folded = new TreeMap<>(known);
        relations.catalog().platforms().keySet().forEach(platform ->
                platforms.add(new Sounded(terrain.number(platform), known.containsKey(platform) && known.get(platform).undecided().isEmpty())));
        for (Sounded platform : platforms) {
            if (platform.found) {
                limits.seek(platform.trials, platform.platform);
                idle.seek(platform.trials);
            }
        }
        List<String> open = platforms.stream().filter(platform -> platform.open() || !limits.answered()).map(Sounded::name).toList();
        folded(open);
    }

    /** Sounds every platform. */
    public static Sounding of(Relations relations) {
        return of(relations, Bounds.ORDINARY);
    }

    /** Sounds every platform, where the builds of these have been worked out already. */
    public static Sounding of(Relations relations, Landscape known) {
        return new Sounding(relations, Bounds.ORDINARY, known.folded());
    }

    /** The same, with bounds on the work that may be spent on what trying does not decide. */
    static Sounding of(Relations relations, Bounds bounds) {
        return new Sounding(relations, bounds, new TreeMap<>());
    }

    /** What is used on each platform, by its id. */
    public SortedMap<String, Vitals> vitals() {
        SortedMap<String, Vitals> vitals = new TreeMap<>();
        platforms.forEach(platform -> vitals.put(platform.name(), vitals(platform)));
        return vitals;
    }

    private Vitals vitals(Sounded platform) {
        return platform.open() ? platform.vitals(folded.get(platform.name())) : platform.vitals();
    }

    /** Which valid builds keep each limit, by the limits' ids; a limit of which no valid build has anything to say is left out. */
    public List<LimitVerdict> limits() {
        return limits.verdicts(() -> folded);
    }

    /** The relations without which every platform would have the same valid builds. */
    public List<IdleRelation> idle() {
        return idleAnswer().idle();
    }

    /** The relations of which that could not be decided. */
    public List<IdleRelation> idleOrNot() {
        return idleAnswer().open();
    }

    private IdleRelations.Answer idleAnswer() {
        if (answer == null) {
            BitSet used = new BitSet();
            for (Sounded platform : platforms) {
                Vitals vitals = vitals(platform);
                platform.trials.reached().stream().filter(part -> !vitals.dead().contains(terrain.hosts().get(part))).forEach(used::set);
            }
            answer = idle.idle(platforms.stream().map(platform -> platform.trials).toList(), used, new Breaking(relations, terrain, members, bounds), this::compare);
        }
        return answer;
    }

    private IdleRelations.Compared compare(Collection<String> names, Rules fewer) {
        comparisons -= names.size();
        if (comparisons < 0) {
            return new IdleRelations.Compared(Set.of(), Optional.of(new Undecided("It takes more than " + MOST_COMPARED + " platforms to be worked out again.", "")));
        }
        SortedMap<String, Folded> with = folded(names);
        Optional<Undecided> unknown = names.stream().flatMap(name -> with.get(name).undecided().stream()).findFirst();
        if (unknown.isPresent()) {
            return new IdleRelations.Compared(Set.of(), unknown);
        }
        SortedMap<String, Folded> without = Space.of(relations, fewer, bounds).folded(names);
        Set<String> more = new TreeSet<>();
        for (String name : names) {
            if (without.get(name).undecided().isPresent()) {
                return new IdleRelations.Compared(Set.of(), without.get(name).undecided());
            }
            if (!counts.computeIfAbsent(name, unused -> count(with.get(name))).equals(count(without.get(name)))) {
                more.add(name);
            }
        }
        return new IdleRelations.Compared(more, Optional.empty());
    }

    private static BigInteger count(Folded folded) {
        return folded.isVoid() ? BigInteger.ZERO : folded.ask(new Counting());
    }

    private SortedMap<String, Folded> folded(Collection<String> names) {
        List<String> missing = names.stream().filter(name -> !folded.containsKey(name)).toList();
        if (!missing.isEmpty()) {
            folded.putAll(Space.of(relations, bounds).folded(missing));
        }
        return folded;
    }

    private SortedSet<String> names(Collection<Integer> hosts) {
        SortedSet<String> names = new TreeSet<>();
        hosts.forEach(host -> names.add(terrain.hosts().get(host)));
        return names;
    }

    private SortedSet<SlotId> slotNames(BitSet slots) {
        SortedSet<SlotId> names = new TreeSet<>();
        slots.stream().forEach(slot -> names.add(terrain.slots().get(slot)));
        return names;
    }
}

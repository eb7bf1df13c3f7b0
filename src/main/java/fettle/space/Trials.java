package fettle.space;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
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

    private static final int MOST_WAYS = 4;

    private static final int MOST_PLACED = 300;

    private final Terrain terrain;
    private final Breaches breaches;
    private final TermMembers members;
    private final int platform;
    private final BiConsumer<Trial, BitSet> watcher;
    private final BitSet reached = new BitSet();
    private final List<Integer> order = new ArrayList<>();
    private final Map<Integer, List<Integer>> places = new HashMap<>();
    private final BitSet hollow;
    private Map<Integer, Integer> usual = Map.of();
    private int left;

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
    boolean start() {
        Wish nothing = new Wish(List.of(), Map.of());
        left = MOST_TRIED;
        Wish found = sought(nothing, BitSet::isEmpty, new BitSet());
        if (found == null) {
            return false;
        }
        usual = found.choices;
        return true;
    }

    /** Whether a valid build is found with this part in this slot. */
    boolean holds(int slot, int part) {
        List<Step> chain = chain(slot, part);
        if (chain == null) {
            return false;
        }
        left = MOST_TRIED;
        return sought(new Wish(List.of(chain), usual), BitSet::isEmpty, new BitSet()) != null;
    }

    /** A part in a slot, or the platform itself. */
    record Place(int slot, int part) {
        static final Place PLATFORM = new Place(Integer.MAX_VALUE, Integer.MAX_VALUE);
    }

    /** Whether a build is found with these in it that breaks some of these relations and no other. */
    boolean breaks(List<Place> places, BitSet only) {
        Wish wish = new Wish(List.of(), usual);
        for (Place place : places) {
            if (place != Place.PLATFORM) {
                List<Step> chain = chain(place.slot, place.part);
                if (chain == null) {
                    return false;
                }
                wish = wish.with(chain);
            }
        }
        left = MOST_TRIED;
        return sought(wish, broken -> !broken.isEmpty() && within(broken, only), only) != null;
    }

    /**
     * Tries to get as many of these parts as possible into one valid build, the most wanted first.
     *
     * @param enough tells when to stop
     */
    void gather(List<Integer> wanted, BooleanSupplier enough) {
        Wish wish = new Wish(List.of(), usual);
        left = MOST_GATHERED;
        for (int part : wanted) {
            for (int slot : places(part).subList(0, Math.min(MOST_WAYS, places(part).size()))) {
                if (enough.getAsBoolean() || left <= 0) {
                    return;
                }
                List<Step> chain = chain(slot, part);
                Wish more = chain == null ? wish : wish.with(chain);
                Trial trial = chain == null ? null : grown(more);
                if (trial != null && judged(trial).isEmpty()) {
                    wish = more;
                    break;
                }
            }
        }
    }

    private static boolean within(BitSet inner, BitSet outer) {
        BitSet rest = (BitSet) inner.clone();
        rest.andNot(outer);
        return rest.isEmpty();
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

    /** Changes a wish until its build breaks just what it may; {@code null} where no change helps. */
    private Wish sought(Wish wish, Predicate<BitSet> suits, BitSet spared) {
        Trial trial = grown(wish);
        if (trial == null) {
            return null;
        }
        BitSet broken = judged(trial);
        while (!suits.test(broken)) {
            int before = ills(broken, spared);
            Wish better = null;
            for (Wish next : changes(wish, trial, broken)) {
                if (left <= 0) {
                    return null;
                }
                Trial changed = grown(next);
                if (changed != null) {
                    BitSet then = judged(changed);
                    if (suits.test(then) || ills(then, spared) < before) {
                        better = next;
                        trial = changed;
                        broken = then;
                        break;
                    }
                }
            }
            if (better == null) {
                return null;
            }
            wish = better;
        }
        return wish;
    }

    private static int ills(BitSet broken, BitSet spared) {
        BitSet rest = (BitSet) broken.clone();
        rest.andNot(spared);
        return rest.cardinality();
    }

    private BitSet judged(Trial trial) {
        left--;
        BitSet broken = breaches.of(trial);
        watcher.accept(trial, broken);
        return broken;
    }

    /** Another choice for what must be filled, or something more that is needed. */
    private List<Wish> changes(Wish wish, Trial trial, BitSet broken) {
        List<Wish> changes = new ArrayList<>();
        for (int relation = broken.nextSetBit(0); relation >= 0; relation = broken.nextSetBit(relation + 1)) {
            if (breaches.isClause(relation)) {
                breaches.clause(relation).need().stream()
                        .flatMapToInt(term -> Arrays.stream(members.hosts(term)))
                        .filter(part -> reached.get(part) && !hollow.get(part))
                        .limit(MOST_CHOICES)
                        .forEach(part -> places(part).stream().limit(MOST_CHOICES).map(slot -> chain(slot, part)).filter(chain -> chain != null)
                                .forEach(chain -> changes.add(wish.with(chain))));
            }
        }
        for (int placed = 0; placed < trial.size(); placed++) {
            int slot = trial.slot(placed);
            if (terrain.room()[slot].filled()) {
                int now = trial.part(placed);
                Arrays.stream(terrain.candidates()[slot]).filter(part -> part != now && !hollow.get(part)).limit(MOST_CHOICES)
                        .forEach(part -> changes.add(wish.with(slot, part)));
            }
        }
        return changes;
    }

    /** The build of a wish: its chains, and what must be filled filled; {@code null} where that can't be. */
    private Trial grown(Wish wish) {
        Trial trial = new Trial(platform);
        for (List<Step> chain : wish.chains) {
            int at = Trial.ROOT;
            for (Step step : chain) {
                int there = trial.in(at, step.slot);
                if (there >= 0 && trial.part(there) != step.part) {
                    return null;
                }
                at = there >= 0 ? there : placed(trial, at, step.slot, step.part) ? trial.size() - 1 : -2;
                if (at == -2) {
                    return null;
                }
            }
        }
        for (int placed = Trial.ROOT; placed < trial.size(); placed++) {
            for (int slot : terrain.slotsOf()[trial.number(placed)]) {
                if (terrain.room()[slot].filled() && trial.in(placed, slot) < 0 && !filled(trial, placed, slot, wish.choices)) {
                    return null;
                }
            }
        }
        return trial;
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

    /** Puts a part into an empty slot, if it may stand there. */
    private boolean placed(Trial trial, int bearer, int slot, int part) {
        boolean free = terrain.turns()[part] == Terrain.ENDLESS || !trial.stands(bearer, part);
        if (!free || !fits(slot, part) || trial.size() >= MOST_PLACED) {
            return false;
        }
        trial.add(bearer, slot, part);
        return true;
    }
}

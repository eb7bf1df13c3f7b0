package fettle.space.worth;

import fettle.space.Circuit;
import fettle.space.Contents;
import fettle.space.Held;
import fettle.space.worth.Cluster.Choice;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Stream;

/**
 * What the slots of heads may hold, slot by slot, as if each choice went with each. Left out is whatever can be exchanged for something else in its slot that is as good
 * and may stand wherever it does: who asks whether something better can be had with another head need not ask about it.
 */
final class Lots {

    /**
     * What one slot may hold.
     *
     * @param uses the circuit's nodes of the slot in use
     * @param choices what is needed of that, the uses by their places
     */
    record Lot(int slot, List<Integer> uses, boolean orNothing, Cluster choices) {

        /** Some of the choices as what the slot holds; none where that is nothing. */
        List<Held> held(Cluster some) {
            return some.uses().isEmpty() ? List.of() : List.of(new Held(slot, nodes(some), some.orNothing()));
        }

        /** The uses among some of the choices. */
        List<Integer> nodes(Cluster some) {
            List<Integer> nodes = new ArrayList<>(some.uses().size());
            for (int use : some.uses()) {
                nodes.add(uses.get(use));
            }
            return nodes;
        }
    }

    private static final long STEPS_FOR_A_FRONT = 1_000_000;
    /** Where heads have to be quick, what one use of a slot may take for each step of going through a head. */
    private static final long FRONTS_A_STEP = 5;
    /** Of how many uses something is kept in mind that goes for a choice: where a slot holds none of the first, it mostly holds one of the others. */
    private static final int MOST_EXCHANGERS = 3;
    /** How many uses of slots of one shape may turn out to be too much before no more are tried: what is left mostly is, too. */
    private static final int MOST_IN_VAIN = 3;
    /** Each choice is held against all others; what would make them more than these can't be gone through. */
    private static final int MOST_CHOICES = 100_000;

    private final Contents contents;
    private final Arena arena;
    private final Measure measure;
    /** By head, by slot of it, the slot's uses. */
    private final Map<Integer, Map<Integer, List<Integer>>> heads;
    private final Map<Integer, Optional<List<Lot>>> known = new HashMap<>();
    private final Map<Integer, Pool> pools = new HashMap<>();

    /**
     * For the heads in some contents.
     *
     * @param heads by head, by slot of it, the slot's uses
     */
    Lots(Contents contents, Map<Integer, Map<Integer, List<Integer>>> heads, Arena arena) {
        this.contents = contents;
        this.heads = heads;
        this.arena = arena;
        this.measure = arena.measure();
    }

    /** The slots of a head that may hold anything; empty where that is too much, or not known. */
    Optional<List<Lot>> of(int head) {
        Optional<List<Lot>> lots = known.get(head);
        if (lots == null) {
            lots = heads.containsKey(head) ? made(heads.get(head)) : Optional.empty();
            known.put(head, lots);
        }
        return lots;
    }

    private Optional<List<Lot>> made(Map<Integer, List<Integer>> slots) {
        List<Lot> made = new ArrayList<>();
        for (Map.Entry<Integer, List<Integer>> slot : slots.entrySet()) {
            boolean orNothing = !arena.terrain().room()[slot.getKey()].filled();
            List<Integer> uses = slot.getValue().stream().sorted(Comparator.comparingInt(arena::bare)).toList();
            if (!uses.isEmpty() || !orNothing) {
                Optional<Cluster> choices = choices(slot.getKey(), uses, orNothing);
                if (choices.isEmpty()) {
                    return Optional.empty();
                }
                made.add(new Lot(slot.getKey(), uses, orNothing, choices.get()));
            }
        }
        return Optional.of(made);
    }

    /** What is needed, the same for all slots of one shape with the same in them. */
    private Optional<Cluster> choices(int slot, List<Integer> uses, boolean orNothing) {
        List<Integer> key = new ArrayList<>(uses.stream().map(arena::bare).toList());
        key.add(contents.shape(slot));
        key.add(orNothing ? 1 : 0);
        Optional<Cluster> found = arena.choices().get(key);
        if (found == null) {
            Pool pool = pools.computeIfAbsent(contents.shape(slot), unused -> new Pool(contents.shape(slot)));
            found = pool.needed(uses, orNothing).filter(needed -> !needed.isEmpty()).map(needed -> new Cluster(measure, needed));
            arena.choices().put(key, found);
        }
        return found;
    }

    /** All that may be in any slot of a shape, of which most slots hold most: what can be exchanged there is found out once. */
    private final class Pool {

        /** By use without slots, a use of some slot, which looks the same as that of any other. */
        private final Map<Integer, Integer> nodes = new TreeMap<>();
        private final List<Integer> uses;
        private final List<Choice> all = new ArrayList<>();
        private final BitSet known = new BitSet();
        /** By choice, the uses of some of those that go for it. */
        private final List<int[]> exchangers;
        /** By use, counted from nothing on, those for which it is known whether it goes for them, and those for which it does. */
        private final BitSet[] asked;
        private final BitSet[] instead;
        private final int slot;
        private int inVain;

        Pool(int shape) {
            int any = -1;
            for (Map<Integer, List<Integer>> slots : heads.values()) {
                for (Map.Entry<Integer, List<Integer>> each : slots.entrySet()) {
                    if (contents.shape(each.getKey()) == shape) {
                        any = each.getKey();
                        each.getValue().forEach(use -> nodes.put(arena.bare(use), use));
                    }
                }
            }
            this.slot = any;
            this.uses = List.copyOf(nodes.keySet());
            this.asked = none();
            this.instead = none();
            all.add(new Choice(Cluster.NOTHING, measure.ofNothing()));
            for (int i = 0; i < uses.size() && inVain < MOST_IN_VAIN; i++) {
                gather(i);
            }
            this.exchangers = exchangers();
        }

        /** All that stands on the front of a use, unless that is too much. */
        private void gather(int at) {
            int use = nodes.get(uses.get(at));
            arena.allowFrontsForMany(Math.min(STEPS_FOR_A_FRONT, FRONTS_A_STEP * arena.patience()));
            try {
                Optional<List<Point>> front = arena.fronts().of(use).or(() -> arena.broadFronts().of(use));
                front.filter(points -> all.size() + points.size() <= MOST_CHOICES).ifPresent(points -> {
                    points.forEach(point -> all.add(new Choice(at, point.yield())));
                    known.set(at);
                });
            } catch (Meter.Spent spent) {
                // What holds this can't be gone through either.
                inVain++;
            }
        }

        /** What is needed of some uses, by their places among them; empty where one of them is too much. */
        Optional<List<Choice>> needed(List<Integer> some, boolean orNothing) {
            Map<Integer, Integer> places = new HashMap<>();
            for (int i = 0; i < some.size(); i++) {
                places.put(uses.indexOf(arena.bare(some.get(i))), i);
            }
            if (!places.keySet().stream().allMatch(known::get)) {
                return Optional.empty();
            }
            if (orNothing) {
                places.put(Cluster.NOTHING, Cluster.NOTHING);
            }
            List<Choice> needed = new ArrayList<>();
            for (int i = 0; i < all.size(); i++) {
                Integer place = places.get(all.get(i).use());
                if (place != null && Arrays.stream(exchangers.get(i)).noneMatch(places::containsKey)) {
                    needed.add(new Choice(place, all.get(i).yield()));
                }
            }
            return Optional.of(needed);
        }

        private List<int[]> exchangers() {
            List<Yield> yields = all.stream().map(Choice::yield).toList();
            Ranks ranks = Ranks.of(measure, yields, yields);
            // By use, counted from nothing on, the place of the first choice after those of it.
            int[] ends = new int[uses.size() + 1];
            for (int i = 0; i < all.size(); i++) {
                ends[all.get(i).use() + 1] = i + 1;
            }
            return all.stream().map(choice -> exchangers(choice, ranks, ends)).toList();
        }

        private int[] exchangers(Choice choice, Ranks ranks, int[] ends) {
            int[] found = new int[MOST_EXCHANGERS];
            int count = 0;
            int[] ranked = ranks.of(choice.yield());
            int next = ranks.next(0, ranked);
            while (next >= 0 && count < found.length) {
                Choice other = all.get(next);
                boolean through = other.use() == choice.use() || !instead(choice.use(), other.use());
                if (!through && exchanged(choice, other)) {
                    found[count++] = other.use();
                    through = true;
                }
                next = ranks.next(through ? ends[other.use() + 1] : next + 1, ranked);
            }
            return Arrays.copyOf(found, count);
        }

        /** Whether another choice goes for one; of those that go for each other the first is kept. */
        private boolean exchanged(Choice choice, Choice other) {
            return goesFor(other, choice) && (other.use() < choice.use() || !goesFor(choice, other));
        }

        private boolean goesFor(Choice other, Choice choice) {
            return measure.neverWorse(other.yield(), choice.yield()) && instead(choice.use(), other.use());
        }

        private boolean instead(int before, int after) {
            if (before == after) {
                return true;
            }
            if (!asked[after + 1].get(before + 1)) {
                asked[after + 1].set(before + 1);
                instead[after + 1].set(before + 1, contents.alwaysInstead(slot, node(before), node(after)));
            }
            return instead[after + 1].get(before + 1);
        }

        private BitSet[] none() {
            return Stream.generate(BitSet::new).limit(1L + uses.size()).toArray(BitSet[]::new);
        }

        private int node(int place) {
            return place == Cluster.NOTHING ? Circuit.ONE : nodes.get(uses.get(place));
        }
    }
}

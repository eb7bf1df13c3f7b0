package fettle.space.worth;

import fettle.space.Contents;
import fettle.space.Stand;
import fettle.space.Swaps;
import fettle.space.Terrain;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.IntFunction;

/** How parts stand in all slots that hold the same: what is so whatever stands around once for all, the rest slot by slot. */
final class Deal {

    /** Of more than these that are alike, each is paired with the first alone that it is a twin of: pairs would grow with the square of their number, and swaps of swaps are swaps. */
    private static final int MOST_PAIRED = 40;

    private final Contents contents;
    private final Terrain terrain;
    private final Verdicts free;
    private final Verdicts priced;
    private final SortedMap<String, PartWorth> settled = new TreeMap<>();
    private final List<Integer> unsettled = new ArrayList<>();
    private final Map<Sameness, PartWorth> worths = new HashMap<>();
    private final Map<Sameness, SortedMap<String, PartWorth>> known = new HashMap<>();
    private List<SlotWorth.Twins> twins = new ArrayList<>();
    private List<SlotWorth.Twins> sideBySide = new ArrayList<>();
    private final Map<SlotWorth.Twins, List<Stand>> unsettledTwins = new HashMap<>();

    /**
     * A deal.
     *
     * @param free verdicts ignoring cost
     * @param priced verdicts with cost, on the same parts
     * @param figures all that a part's twins have in common with it
     */
    Deal(Contents contents, Terrain terrain, Verdicts free, Verdicts priced, IntFunction<Object> figures) {
        this.contents = contents;
        this.terrain = terrain;
        this.free = free;
        this.priced = priced;
        free.heads().forEach(this::settle);
        pair(figures);
        twins = sorted(twins);
        sideBySide = sorted(sideBySide);
    }

    /** The very same things, not just equal ones, which would take long to tell. */
    private record Sameness(List<?> things) {
        @Override
        public boolean equals(Object other) {
            if (!(other instanceof Sameness sameness) || things.size() != sameness.things.size()) {
                return false;
            }
            for (int i = 0; i < things.size(); i++) {
                if (things.get(i) != sameness.things.get(i)) {
                    return false;
                }
            }
            return true;
        }

        @Override
        public int hashCode() {
            int hash = 1;
            for (Object thing : things) {
                hash = 31 * hash + System.identityHashCode(thing);
            }
            return hash;
        }
    }

    private void settle(int head) {
        Optional<Verdict> ignoring = free.settled(head);
        Optional<Verdict> with = priced.settled(head);
        Optional<Boolean> empty = free.settledWorseThanEmpty(head);
        if (ignoring.isPresent() && with.isPresent() && empty.isPresent()) {
            settled.put(terrain.hosts().get(head), new PartWorth(ignoring.get(), with.get(), empty.get()));
        } else {
            unsettled.add(head);
        }
    }

    /** The stands of parts without slots, those with the same figures together. */
    static Collection<List<Stand>> alike(Contents contents, Terrain terrain, IntFunction<Object> figures) {
        Map<Object, List<Stand>> alike = new HashMap<>();
        for (Stand stand : contents.stands()) {
            if (terrain.slotsOf()[stand.head()].length == 0) {
                alike.computeIfAbsent(figures.apply(stand.head()), unused -> new ArrayList<>()).add(stand);
            }
        }
        return alike.values();
    }

    private void pair(IntFunction<Object> figures) {
        alike(contents, terrain, figures).forEach(stands -> {
            if (stands.size() > MOST_PAIRED) {
                pairWithFirst(stands);
                return;
            }
            for (int i = 0; i < stands.size(); i++) {
                for (int j = i + 1; j < stands.size(); j++) {
                    pair(stands.get(i), stands.get(j));
                }
            }
        });
    }

    private void pairWithFirst(List<Stand> stands) {
        List<Stand> firsts = new ArrayList<>();
        for (Stand stand : stands.stream().sorted(Comparator.comparing((Stand each) -> terrain.hosts().get(each.head()))).toList()) {
            if (firsts.stream().noneMatch(first -> pair(first, stand)) && firsts.size() < MOST_PAIRED) {
                firsts.add(stand);
            }
        }
    }

    /** Whether they are a pair, whatever stands around. */
    private boolean pair(Stand one, Stand other) {
        List<String> names = List.of(terrain.hosts().get(one.head()), terrain.hosts().get(other.head())).stream().sorted().toList();
        SlotWorth.Twins pair = new SlotWorth.Twins(names.get(0), names.get(1));
        if (contents.surelySafe(one, other) && contents.surelySafe(other, one)) {
            twins.add(pair);
            return true;
        } else if (contents.safeUnlessTwice(one, other)) {
            sideBySide.add(pair);
            return true;
        } else if (!contents.surelyUnsafe(one, other) && !contents.surelyUnsafe(other, one)) {
            unsettledTwins.put(pair, List.of(one, other));
        }
        return false;
    }

    /** The verdicts in one of the slots, ignoring cost, on what is not settled. */
    List<Verdict> free(Swaps swaps) {
        return unsettled.stream().map(head -> free.in(head, swaps)).toList();
    }

    /** The same with cost. */
    List<Verdict> priced(Swaps swaps) {
        return unsettled.stream().map(head -> priced.in(head, swaps)).toList();
    }

    /**
     * How parts stand in one of the slots.
     *
     * @param ignoringCost the verdicts there on what is not settled
     * @param withCost likewise
     */
    SlotWorth in(String platform, int slot, Swaps swaps, List<Verdict> ignoringCost, List<Verdict> withCost) {
        List<PartWorth> open = new ArrayList<>(unsettled.size());
        for (int i = 0; i < unsettled.size(); i++) {
            Verdict first = ignoringCost.get(i);
            Verdict second = withCost.get(i);
            Boolean third = free.worseThanEmpty(unsettled.get(i), swaps);
            open.add(worths.computeIfAbsent(new Sameness(List.of(first, second, third)), unused -> new PartWorth(first, second, third)));
        }
        // Few combinations come about, so that most slots share one map.
        SortedMap<String, PartWorth> parts = known.computeIfAbsent(new Sameness(List.copyOf(open)), unused -> {
            SortedMap<String, PartWorth> all = new TreeMap<>(settled);
            for (int i = 0; i < unsettled.size(); i++) {
                all.put(terrain.hosts().get(unsettled.get(i)), open.get(i));
            }
            return all;
        });
        return new SlotWorth(platform, terrain.slots().get(slot), parts, twins(swaps), sideBySide);
    }

    private List<SlotWorth.Twins> twins(Swaps swaps) {
        if (unsettledTwins.isEmpty()) {
            return twins;
        }
        List<SlotWorth.Twins> pairs = new ArrayList<>(twins);
        unsettledTwins.forEach((pair, stands) -> {
            if (swaps.safe(stands.get(0), stands.get(1)) && swaps.safe(stands.get(1), stands.get(0))) {
                pairs.add(pair);
            }
        });
        return sorted(pairs);
    }

    private static List<SlotWorth.Twins> sorted(List<SlotWorth.Twins> pairs) {
        return List.copyOf(pairs.stream().sorted(Comparator.comparing(SlotWorth.Twins::one).thenComparing(SlotWorth.Twins::other)).toList());
    }
}

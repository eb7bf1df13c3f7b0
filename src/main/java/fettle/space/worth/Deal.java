package fettle.space.worth;

import fettle.space.Contents;
import fettle.space.Stand;
import fettle.space.Swaps;
import fettle.space.Terrain;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.function.IntFunction;

/** How parts stand in all slots that hold the same: what is so whatever stands around once for all, the rest slot by slot. */
final class Deal {

    private final Contents contents;
    private final Terrain terrain;
    private final Contest free;
    private final Contest priced;
    private final SortedMap<String, PartWorth> settled = new TreeMap<>();
    private final SortedMap<String, Function<Swaps, PartWorth>> unsettled = new TreeMap<>();
    private final Map<Sameness, SortedMap<String, PartWorth>> known = new HashMap<>();
    private List<SlotWorth.Twins> twins = new ArrayList<>();
    private final Map<SlotWorth.Twins, List<Stand>> unsettledTwins = new HashMap<>();

    Deal(Contents contents, Arena ignoringCost, Arena withCost, IntFunction<Object> figures) {
        this.contents = contents;
        this.terrain = ignoringCost.terrain();
        this.free = new Contest(contents, ignoringCost);
        this.priced = new Contest(contents, withCost);
        new TreeSet<>(contents.stands().stream().map(Stand::head).toList()).forEach(this::settle);
        pair(figures);
        twins = sorted(twins);
    }

    /** The very same things, not just equal ones, which would take long to tell. */
    private record Sameness(List<Object> things) {
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
        Function<Swaps, Verdict> ignoring = verdict(free, head);
        Function<Swaps, Verdict> with = verdict(priced, head);
        Function<Swaps, Boolean> empty = worseThanEmpty(head);
        String part = terrain.hosts().get(head);
        if (ignoring instanceof Settled<Verdict> first && with instanceof Settled<Verdict> second && empty instanceof Settled<Boolean> third) {
            settled.put(part, new PartWorth(first.result, second.result, third.result));
        } else {
            Map<Sameness, PartWorth> found = new HashMap<>();
            unsettled.put(part, swaps -> {
                Verdict first = ignoring.apply(swaps);
                Verdict second = with.apply(swaps);
                Boolean third = empty.apply(swaps);
                return found.computeIfAbsent(new Sameness(List.of(first, second, third)), unused -> new PartWorth(first, second, third));
            });
        }
    }

    private record Settled<R>(R result) implements Function<Swaps, R> {
        @Override
        public R apply(Swaps swaps) {
            return result;
        }
    }

    /** A verdict that is the same whatever stands around, or one that is to be worked out for each slot. */
    private Function<Swaps, Verdict> verdict(Contest contest, int head) {
        Verdict feared = contest.of(head, contents.supposing(false));
        if (feared instanceof Verdict.Dominated || feared instanceof Verdict.Unsold) {
            return new Settled<>(feared);
        }
        // What takes too long when every swap may be tried takes no less when fewer may.
        Optional<Verdict> hoped = contest.unlessDominated(head, contents.supposing(true));
        if (hoped.isPresent()) {
            return new Settled<>(hoped.get());
        }
        Trail<Verdict> trail = new Trail<>();
        return swaps -> trail.follow(swaps, tried -> contest.of(head, tried));
    }

    /** Likewise whether it is worse than nothing. */
    private Function<Swaps, Boolean> worseThanEmpty(int head) {
        boolean feared = free.worseThanEmpty(head, contents.supposing(false));
        if (feared || !free.worseThanEmpty(head, contents.supposing(true))) {
            return new Settled<>(feared);
        }
        Trail<Boolean> trail = new Trail<>();
        return swaps -> trail.follow(swaps, tried -> free.worseThanEmpty(head, tried));
    }

    private void pair(IntFunction<Object> figures) {
        Map<Object, List<Stand>> alike = new HashMap<>();
        for (Stand stand : contents.stands()) {
            if (terrain.slotsOf()[stand.head()].length == 0) {
                alike.computeIfAbsent(figures.apply(stand.head()), unused -> new ArrayList<>()).add(stand);
            }
        }
        alike.values().forEach(stands -> {
            for (int i = 0; i < stands.size(); i++) {
                for (int j = i + 1; j < stands.size(); j++) {
                    pair(stands.get(i), stands.get(j));
                }
            }
        });
    }

    private void pair(Stand one, Stand other) {
        List<String> names = List.of(terrain.hosts().get(one.head()), terrain.hosts().get(other.head())).stream().sorted().toList();
        SlotWorth.Twins pair = new SlotWorth.Twins(names.get(0), names.get(1));
        if (contents.surelySafe(one, other) && contents.surelySafe(other, one)) {
            twins.add(pair);
        } else if (!contents.surelyUnsafe(one, other) && !contents.surelyUnsafe(other, one)) {
            unsettledTwins.put(pair, List.of(one, other));
        }
    }

    /** How parts stand in one of the slots. */
    SlotWorth in(String platform, int slot, Swaps swaps) {
        List<Object> open = new ArrayList<>(unsettled.size());
        unsettled.values().forEach(work -> open.add(work.apply(swaps)));
        // Few combinations come about, so that most slots share one map.
        SortedMap<String, PartWorth> parts = known.computeIfAbsent(new Sameness(open), unused -> {
            SortedMap<String, PartWorth> all = new TreeMap<>(settled);
            int at = 0;
            for (String part : unsettled.keySet()) {
                all.put(part, (PartWorth) open.get(at++));
            }
            return all;
        });
        return new SlotWorth(platform, terrain.slots().get(slot), parts, twins(swaps));
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
        return pairs.stream().sorted(Comparator.comparing(SlotWorth.Twins::one).thenComparing(SlotWorth.Twins::other)).toList();
    }

    /** How many parts have to be looked at slot by slot. */
    int unsettled() {
        return unsettled.size();
    }

    /** How many parts are settled once for all. */
    int settled() {
        return settled.size();
    }
}

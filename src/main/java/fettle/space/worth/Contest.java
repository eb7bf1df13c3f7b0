package fettle.space.worth;

import fettle.space.Assembly;
import fettle.space.Contents;
import fettle.space.Stand;
import fettle.space.Swaps;
import fettle.space.Undecided;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/** Decides which parts are dominated in a slot, by one way of comparing. */
final class Contest {

    static final long STEPS = 4_000_000;
    private static final long QUICK_STEPS = 20_000;
    private static final long STEPS_A_TRY = 500;
    private static final long STEPS_A_LONG_TRY = 4_000;
    /** Of how many stands the smallest assembly is tried. */
    private static final int MOST_TRIED = 16;
    /** How much is kept in mind of a head that nothing dominated before. */
    private static final int MOST_SURVIVORS = 4;
    /** In how many steps most that is settled slot by slot is settled. */
    private static final long STEPS_BY_SLOTS = 30_000;
    /** How many steps going on with that may take before anything else is tried. */
    private static final long STEPS_TO_GO_ON = 10_000;
    /** How many times as many steps as going through a head slot by slot may take are for all that is tried with it, where all have to be quick. */
    private static final long EFFORT = 3;
    /** How many ways of filling a head's slots count as few. */
    private static final long MOST_WAYS = 20_000;
    private static final int ANY = Rivals.ANY;

    private final Contents contents;
    private final Arena arena;
    private final Measure measure;
    /** By head, those of its stands in which something takes part in the comparison. */
    private final Map<Integer, List<Stand>> standsOf = new TreeMap<>();
    private final Rivals rivals;
    /** By head, what was found that nothing dominates, the last first: what stood when some swaps were allowed often does when others are. */
    private final Map<Integer, List<Survivor>> survivors = new HashMap<>();
    private final Boxes boxes;
    private final Meter meter;
    /** Counts the steps of all that is tried where little work doesn't settle it. */
    private final Meter effort = new Meter(Long.MAX_VALUE);
    private final Rehanging rehanging;
    private final Compensation compensation;
    private final Assemblies assemblies;
    private final Winners winners;
    private final Witnesses witnesses;

    Contest(Contents contents, Arena arena) {
        this.contents = contents;
        this.arena = arena;
        this.measure = arena.measure();
        this.meter = arena.meter(STEPS);
        this.boxes = new Boxes(arena);
        for (Stand stand : contents.stands()) {
            if (arena.ideal(stand.node()) != null) {
                standsOf.computeIfAbsent(stand.head(), unused -> new ArrayList<>()).add(stand);
            }
        }
        this.rivals = new Rivals(contents, arena);
        this.rehanging = new Rehanging(contents, standsOf, arena, boxes, meter);
        this.compensation = new Compensation(contents, rehanging.heads(), arena, meter);
        this.assemblies = new Assemblies(arena.terrain());
        this.winners = new Winners(contents, measure, rivals, meter);
        this.witnesses = new Witnesses(contents, arena, winners, assemblies, meter);
    }

    /** The verdict on a part that stands in the slot. */
    Verdict of(int head, Swaps swaps) {
        Optional<Verdict> verdict = unlessDominated(head, swaps);
        if (verdict.isPresent()) {
            return verdict.get();
        }
        meter.allow(STEPS);
        try {
            return witnesses.of(stands(head), swaps);
        } catch (Meter.Spent spent) {
            return open(head);
        }
    }

    /** Lets go of what was found out about a head on which there is a verdict. */
    void forget(int head) {
        compensation.forget(head);
        survivors.remove(head);
    }

    /** The same without what dominates it: empty where something does. */
    Optional<Verdict> unlessDominated(int head, Swaps swaps) {
        List<Stand> stands = stands(head);
        rivals.forget();
        if (stands.isEmpty()) {
            return Optional.of(new Verdict.Unsold());
        }
        meter.allow(STEPS, arena.thorough());
        try {
            return contents.circling() ? undominatedInCircle(stands, swaps).map(Verdict.Undominated::new)
                    : undominated(stands, swaps).map(survivor -> new Verdict.Undominated(survivor.assembly()));
        } catch (Meter.Spent spent) {
            return Optional.of(open(head));
        }
    }

    private Verdict open(int head) {
        String why = meter.spentWhole() ? "All comparisons together take too many steps." : "It takes more than " + Math.max(Math.min(meter.most(), effort.most()), arena.patience()) + " steps.";
        return new Verdict.Open(new Undecided(why, arena.terrain().slots().get(contents.slot()) + ", " + arena.terrain().hosts().get(head)));
    }

    private List<Stand> stands(int head) {
        return standsOf.getOrDefault(head, List.of());
    }

    /** Whether it is seen with little work that each assembly that a part heads is dominated by the empty choice. */
    boolean worseThanEmpty(int head, Swaps swaps) {
        List<Stand> stands = stands(head);
        return !contents.several() && !stands.isEmpty() && stands.stream().allMatch(stand -> mayWorsen(stand) && swaps.safeToEmpty(stand) && onlyWorsens(stand));
    }

    private boolean mayWorsen(Stand stand) {
        return measure.compare(measure.ofNothing(), arena.ideal(stand.node())) != Measure.Order.WORSE;
    }

    private boolean onlyWorsens(Stand stand) {
        try {
            Search search = arena.search(new Meter(STEPS, Optional.of(arena.thorough())));
            return search.find(stand.node(), measure.ofNothing(), measure.ofNothing(), Search.Asked.AS_GOOD, ANY, any -> true).isEmpty();
        } catch (Meter.Spent spent) {
            return false;
        }
    }

    /** An assembly of a stand, none of which with another head dominates. */
    private record Survivor(Stand stand, Yield yield, Assembly assembly) {}

    private Survivor survivor(Stand stand, Pick pick) {
        return new Survivor(stand, arena.broughtBy(pick), assemblies.of((Pick.Headed) pick));
    }

    /** An assembly of these stands that none with another head dominates, if there is one. */
    private Optional<Survivor> undominated(List<Stand> stands, Swaps swaps) {
        List<Survivor> known = survivors.computeIfAbsent(stands.get(0).head(), unused -> new ArrayList<>());
        Optional<Survivor> last = known.stream().filter(survivor -> stands(survivor.stand(), survivor.yield(), swaps, arena.meter(QUICK_STEPS))).findFirst();
        Optional<Survivor> found = last.isPresent() ? last : sought(stands, swaps);
        found.ifPresent(survivor -> {
            known.remove(survivor);
            known.add(0, survivor);
            known.subList(Math.min(known.size(), MOST_SURVIVORS), known.size()).clear();
        });
        return found;
    }

    private Optional<Survivor> sought(List<Stand> stands, Swaps swaps) {
        int head = stands.get(0).head();
        boolean bare = arena.terrain().slotsOf()[head].length == 0;
        boolean begun = compensation.begun(head);
        if (!begun) {
            try {
                meter.allow(bare ? STEPS : QUICK_STEPS, arena.quick());
                return bare ? split(stands, swaps) : quickly(stands, swaps);
            } catch (Meter.Spent spent) {
                // It takes more.
            }
        }
        effort.allow(arena.hurried() ? STEPS_TO_GO_ON + EFFORT * arena.patience() : Long.MAX_VALUE, arena.thorough());
        meter.allow(STEPS, effort);
        meter.spend(1);
        Optional<Survivor> found = (begun ? goneOn(stands, swaps) : Optional.<Optional<Survivor>>empty())
                .orElseGet(() -> remembered(stands, swaps).or(() -> thoroughly(stands, swaps)));
        found.ifPresent(survivor -> arena.memory().keep(head, survivor.yield()));
        return found;
    }

    /** Going through a head slot by slot taken up where it was left off. */
    private Optional<Optional<Survivor>> goneOn(List<Stand> stands, Swaps swaps) {
        meter.allow(STEPS_TO_GO_ON, effort);
        Optional<Optional<Survivor>> settled = bySlots(stands, swaps);
        meter.allow(STEPS, effort);
        return settled;
    }

    /** Few assemblies are gone through one by one; many by what is in their slots. */
    private Optional<Survivor> thoroughly(List<Stand> stands, Swaps swaps) {
        meter.allow(Math.min(STEPS_BY_SLOTS, arena.patience()), effort);
        Optional<Optional<Survivor>> settled = bySlots(stands, swaps);
        Optional<Long> ways = settled.isPresent() ? Optional.empty() : compensation.ways(stands.get(0).head(), MOST_WAYS);
        if (settled.isEmpty() && ways.orElse(0L) < MOST_WAYS) {
            settled = byFronts(stands, swaps);
        }
        if (settled.isEmpty() && ways.isPresent()) {
            meter.allow(arena.patience(), effort);
            settled = bySlots(stands, swaps);
        }
        Optional<Survivor> found = settled.orElseGet(() -> tried(stands, swaps, STEPS_A_LONG_TRY, effort));
        if (settled.isEmpty() && found.isEmpty()) {
            meter.allow(ways.isPresent() ? Math.min(STEPS_BY_SLOTS, arena.patience()) : STEPS, effort);
            found = split(stands, swaps);
        }
        return found;
    }

    /** The same, by bounding what is in the slots; nothing where that is too much. */
    private Optional<Optional<Survivor>> bySlots(List<Stand> stands, Swaps swaps) {
        try {
            return compensation.undominated(stands, swaps, (in, target, settled) -> standing(in, target, settled, swaps));
        } catch (Meter.Spent spent) {
            return Optional.empty();
        }
    }

    /**
     * An assembly that is as good as a target and stands its ground.
     *
     * @param settled other heads of which it is known that they are not better
     */
    private Optional<Survivor> standing(List<Stand> stands, Yield target, BitSet settled, Swaps swaps) {
        for (Stand stand : stands) {
            if (measure.compare(arena.ideal(stand.node()), target) != Measure.Order.WORSE) {
                Search search = arena.search(new Meter(STEPS_A_LONG_TRY, Optional.of(effort)));
                Optional<Pick> pick = search.find(stand.node(), measure.ofNothing(), target, Search.Asked.AS_GOOD, ANY, any -> true);
                if (pick.isPresent() && winners.of(List.of(stand), target, new BitSet(), settled, search, ANY, swaps).isEmpty()) {
                    return Optional.of(survivor(stand, pick.get()));
                }
            }
        }
        return Optional.empty();
    }

    /** What stood its ground with this head elsewhere often does here. */
    private Optional<Survivor> remembered(List<Stand> stands, Swaps swaps) {
        for (Yield kept : arena.memory().of(stands.get(0).head())) {
            Search search = arena.search(new Meter(STEPS_A_LONG_TRY, Optional.of(effort)));
            for (Stand stand : stands) {
                try {
                    Optional<Pick> pick = search.find(stand.node(), measure.ofNothing(), kept, Search.Asked.AS_GOOD, ANY, any -> true);
                    if (pick.isPresent() && stands(stand, arena.broughtBy(pick.get()), swaps, new Meter(QUICK_STEPS, Optional.of(effort)))) {
                        return Optional.of(survivor(stand, pick.get()));
                    }
                } catch (Meter.Spent spent) {
                    break;
                }
            }
        }
        return Optional.empty();
    }

    /** Most verdicts are settled by trying what is likely to settle them. */
    private Optional<Survivor> quickly(List<Stand> stands, Swaps swaps) {
        if (rehung(stands, swaps)) {
            return Optional.empty();
        }
        Optional<Survivor> tried = tried(stands, swaps, STEPS_A_TRY, arena.quick());
        return tried.isPresent() ? tried : split(stands, swaps);
    }

    /** The same, by going through fronts; nothing where that is too much. */
    private Optional<Optional<Survivor>> byFronts(List<Stand> stands, Swaps swaps) {
        long most = Math.min(STEPS, arena.patience());
        meter.allow(most, effort);
        arena.allowFronts(most);
        try {
            for (Stand stand : stands) {
                Optional<List<Point>> front = arena.broadFronts().of(arena.circuit().second(stand.node()));
                if (front.isEmpty()) {
                    return Optional.empty();
                }
                Opposition opposition = new Opposition(stand, contents, arena, meter, swaps);
                for (Point on : front.get()) {
                    Yield target = measure.both(measure.ofPart(stand.head()), on.yield());
                    Optional<Boolean> beaten = opposition.beats(target);
                    if (beaten.isEmpty()) {
                        return Optional.empty();
                    }
                    if (!beaten.get()) {
                        return Optional.of(Optional.of(survivor(stand, arena.pick(stand.node(), new Point(target, on.parts() + 1, new Point.Made.On(on))))));
                    }
                }
            }
            return Optional.of(Optional.empty());
        } catch (Meter.Spent spent) {
            return Optional.empty();
        }
    }

    private Optional<Survivor> split(List<Stand> stands, Swaps swaps) {
        for (Stand stand : stands) {
            Optional<Yield> found = undominated(stand, List.of(stand), new BitSet(), swaps);
            if (found.isPresent()) {
                return Optional.of(as(stand, found.get()));
            }
        }
        return Optional.empty();
    }

    private Survivor as(Stand stand, Yield target) {
        return survivor(stand, arena.search(meter).find(stand.node(), measure.ofNothing(), target, Search.Asked.AS_GOOD, ANY, any -> true).orElseThrow());
    }

    /** Whether another head serves better whatever is on it. */
    private boolean rehung(List<Stand> stands, Swaps swaps) {
        return rehanging.everything(stands.get(0).head()).map(box -> rehanging.beaten(stands, stands.get(0).head(), box, new int[box.factors().size()], swaps))
                .orElse(false);
    }

    /** Tries the smallest and the extreme assemblies, each with little work. */
    private Optional<Survivor> tried(List<Stand> stands, Swaps swaps, long steps, Meter whole) {
        for (int column : measure.adding()) {
            Stand best = stands.get(0);
            for (Stand stand : stands) {
                best = arena.ideal(stand.node()).small()[column] > arena.ideal(best.node()).small()[column] ? stand : best;
            }
            Pick pick = new Extreme(arena, column).of(best.node());
            if (stands(best, arena.broughtBy(pick), swaps, new Meter(steps, Optional.of(whole)))) {
                return Optional.of(survivor(best, pick));
            }
        }
        for (Stand stand : stands.subList(0, Math.min(stands.size(), MOST_TRIED))) {
            Pick pick = arena.smallest(stand.node());
            if (stands(stand, arena.broughtBy(pick), swaps, new Meter(steps, Optional.of(whole)))) {
                return Optional.of(survivor(stand, pick));
            }
        }
        return Optional.empty();
    }

    /** Whether it is easily seen that an assembly is not dominated. */
    private boolean stands(Stand stand, Yield brought, Swaps swaps, Meter most) {
        try {
            return winners.of(List.of(stand), brought, new BitSet(), arena.search(most), ANY, swaps).isEmpty();
        } catch (Meter.Spent spent) {
            return false;
        }
    }

    /**
     * What an assembly of a stand brings that may not be dominated.
     *
     * @param from all that the assemblies stand in
     * @param barred parts that must not be in what dominates them
     */
    private Optional<Yield> undominated(Stand stand, List<Stand> from, BitSet barred, Swaps swaps) {
        Deque<Box> open = new ArrayDeque<>();
        push(boxes.of(stand), open);
        while (!open.isEmpty()) {
            Box box = open.pop();
            Yield best = boxes.best(box);
            if (winners.of(from, best, barred, arena.search(meter), ANY, swaps).isPresent()) {
                continue;
            }
            if (box.decided()) {
                return Optional.of(best);
            }
            int[] unmatched = new int[box.factors().size()];
            if (!rehanging.beaten(from, stand.head(), box, unmatched, swaps)) {
                push(boxes.split(box, next(box, unmatched)), open);
            }
        }
        return Optional.empty();
    }

    private static void push(List<Box> boxes, Deque<Box> open) {
        for (int i = boxes.size() - 1; i >= 0; i--) {
            open.push(boxes.get(i));
        }
    }

    /** The factor to decide next: what is bound together first, then what most other heads have no place for. */
    private static int next(Box box, int[] unmatched) {
        int next = -1;
        for (int i = 0; i < unmatched.length; i++) {
            Factor factor = box.factors().get(i);
            if (!factor.decided()) {
                if (factor.held().isEmpty()) {
                    return i;
                }
                if (next < 0 || unmatched[i] > unmatched[next]) {
                    next = i;
                }
            }
        }
        return next;
    }

    /** Where parts can come back below themselves, what stands above counts and one assembly may stand in several stands: they are taken one by one. */
    private Optional<Assembly> undominatedInCircle(List<Stand> stands, Swaps swaps) {
        BitSet barred = contents.above(stands);
        if (stands.stream().allMatch(stand -> undominated(stand, stands, barred, swaps).isEmpty())) {
            return Optional.empty();
        }
        return witnesses.whereabouts(stands).all().entrySet().stream().filter(each -> {
            List<Stand> in = each.getValue().in();
            return winners.of(in, arena.broughtBy(each.getValue().pick()), contents.above(in), arena.plainSearch(meter), ANY, swaps).isEmpty();
        }).map(Map.Entry::getKey).findFirst();
    }
}

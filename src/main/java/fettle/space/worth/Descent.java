package fettle.space.worth;

import fettle.space.Contents;
import fettle.space.Rehung;
import fettle.space.Stand;
import fettle.space.Swaps;
import fettle.space.worth.Exchange.Outcome;
import fettle.space.worth.Lots.Lot;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.Comparator;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** One way down through the branches of what may be on a head, in search of something that stands its ground against what other heads can hold. */
final class Descent<S> {

    /** For as many slots sets of them are written as the bits of one number. */
    private static final int MOST_SLOTS = 6;
    private static final int STEPS_A_TRY = 200;
    private static final int STEPS_A_LATER_TRY = 2_000;
    /** From how many steps for all on one try may take more. */
    private static final long MANY_STEPS = 100_000;
    private static final int STEPS_A_LONG_TRY = 20_000;

    private final Contents contents;
    private final Arena arena;
    private final Measure measure;
    private final Meter meter;
    private final Heads heads;
    private final Swaps swaps;
    private final Compensation.Leaf<S> leaf;
    private final Map<List<Stand>, Map<Rehung, Boolean>> safe = new IdentityHashMap<>();
    private final int stepsATry;
    private boolean open;

    /**
     * Which head is gone through, and which others are tried in its place.
     *
     * @param own its slots
     * @param others the slots of each other
     */
    record Heads(int head, List<Lot> own, Map<Integer, List<Lot>> others) {}

    /** A way down; what to do where one choice is left in each slot is the leaf's. */
    Descent(Contents contents, Arena arena, Meter meter, Heads heads, Swaps swaps, Compensation.Leaf<S> leaf) {
        this.contents = contents;
        this.arena = arena;
        this.measure = arena.measure();
        this.meter = meter;
        this.heads = heads;
        this.swaps = swaps;
        this.leaf = leaf;
        this.stepsATry = meter.most() < MANY_STEPS ? STEPS_A_TRY : STEPS_A_LATER_TRY;
    }

    /** The first found that stands its ground, none where nothing does; empty where some of it could not be decided. */
    Optional<Optional<S>> from(Branch all) {
        Optional<S> found = in(all, new Hopes(this::exchanges), Optional.empty());
        return found.isPresent() || !open ? Optional.of(found) : Optional.empty();
    }

    /** Exchanges that may serve some of a branch, looked for when asked for: where it is known what serves, they are not. */
    private static final class Hopes {

        private final Supplier<List<Exchange>> source;
        private List<Exchange> all;

        Hopes(Supplier<List<Exchange>> source) {
            this.source = source;
        }

        List<Exchange> all() {
            if (all == null) {
                all = new ArrayList<>(source.get());
            }
            return all;
        }

        Hopes within(Cluster[] box) {
            return new Hopes(() -> all().stream().filter(exchange -> !exchange.hopeless(box)).toList());
        }
    }

    /** Every way of putting another head in the place of this one, those first that keep most. */
    private List<Exchange> exchanges() {
        List<Exchange> exchanges = new ArrayList<>();
        heads.others().forEach((other, theirs) -> new Placements(heads.own(), theirs, this::takes).all().forEach(places -> {
            meter.spend(1);
            exchanges.add(new Exchange(measure, heads.head(), heads.own(), other, theirs, places));
        }));
        exchanges.sort(Comparator.comparingInt(Exchange::filled));
        return exchanges;
    }

    /** Whether a slot takes whatever is in one of this head's. */
    private boolean takes(Lot mine, Lot theirs) {
        return contents.takes(mine.slot(), theirs.slot()) && (theirs.orNothing() || !mine.orNothing());
    }

    /**
     * The first in a branch that stands its ground.
     *
     * @param above what may serve some of the branch it is part of, or all there is
     * @param whole that branch
     */
    private Optional<S> in(Branch branch, Hopes above, Optional<Branch> whole) {
        meter.spend(1);
        if (branch.settled() || branch.serving().stream().anyMatch(made -> safe(branch.stands(), made))) {
            return Optional.empty();
        }
        if (branch.single()) {
            return single(branch, above);
        }
        // What was split because nothing serves all of it is seldom served when others may take its place.
        if (branch.tried() < stepsATry) {
            if (served(branch, above, stepsATry, new BitSet())) {
                return Optional.empty();
            }
            branch.failed(stepsATry);
        }
        if (!branch.probed(swaps) && (whole.isEmpty() || branch.decided() > whole.get().decided())) {
            Optional<S> found = probed(branch, above);
            if (found.isPresent()) {
                return found;
            }
            branch.probedInVain(swaps);
        }
        Hopes hopes = above.within(branch.box());
        if (branch.parts().isEmpty()) {
            Optional<List<Branch>> cut = whole.isEmpty() ? cut(branch, hopes) : Optional.empty();
            branch.split(cut.orElseGet(() -> halves(branch, hopes)));
        }
        for (Branch part : branch.parts()) {
            Optional<S> found = in(part, hopes, Optional.of(branch));
            if (found.isPresent()) {
                return found;
            }
        }
        settle(branch);
        return Optional.empty();
    }

    private void settle(Branch branch) {
        if (swaps.onlyIfSure() && !open) {
            branch.settle();
        }
    }

    private Optional<S> single(Branch branch, Hopes above) {
        Optional<S> found = Optional.empty();
        try {
            found = unserved(branch, above);
        } catch (Meter.Spent spent) {
            // Only this one took too long, unless all is spent.
            meter.spend(0);
            open = true;
        }
        if (found.isEmpty()) {
            settle(branch);
        }
        return found;
    }

    /** What a branch of one choice in each slot is found to be, if nothing is seen to serve it. */
    private Optional<S> unserved(Branch one, Hopes above) {
        BitSet settled = new BitSet();
        return served(one, above, STEPS_A_LONG_TRY, settled) ? Optional.empty() : leaf.of(one.stands(), brought(one), settled);
    }

    private Yield brought(Branch branch) {
        Yield brought = measure.ofPart(heads.head());
        for (Cluster choice : branch.box()) {
            brought = measure.both(brought, choice.best());
        }
        return brought;
    }

    /**
     * Whether one of some exchanges serves all of a branch.
     *
     * @param settled is given the other heads that are not better than any of it, whatever is on them
     */
    private boolean served(Branch branch, Hopes hopes, int most, BitSet settled) {
        heads.others().keySet().forEach(settled::set);
        List<Exchange> exchanges = hopes.all();
        meter.spend(exchanges.size() / Fronts.COMPARISONS_A_STEP);
        for (int e = 0; e < exchanges.size(); e++) {
            Exchange exchange = exchanges.get(e);
            if (!exchange.hopeless(branch.box())) {
                Outcome outcome = exchange.tried(branch.box(), most, meter, made -> serves(branch, made));
                if (outcome == Outcome.SERVES) {
                    // What serves here is likely to serve beside it.
                    exchanges.add(0, exchanges.remove(e));
                    if (swaps.onlyIfSure()) {
                        branch.settle();
                    }
                    return true;
                }
                if (outcome == Outcome.DOUBTFUL) {
                    settled.clear(exchange.to());
                }
            }
        }
        return false;
    }

    private boolean serves(Branch branch, Rehung made) {
        boolean safe = safe(branch.stands(), made);
        // Where only sure swaps are allowed, a branch that is served is settled, and what isn't safe never will be.
        if (!swaps.onlyIfSure()) {
            branch.served(made, safe);
        }
        return safe;
    }

    private boolean safe(List<Stand> stands, Rehung made) {
        return safe.computeIfAbsent(stands, unused -> new HashMap<>()).computeIfAbsent(made, unused -> {
            meter.spend(1 + stands.size() / Fronts.COMPARISONS_A_STEP);
            return stands.stream().allMatch(stand -> swaps.safe(stand, made));
        });
    }

    /** Something in a branch that stands its ground, sought among what is best in one column or another, and what is smallest. */
    private Optional<S> probed(Branch branch, Hopes above) {
        Set<List<Cluster>> boxes = new LinkedHashSet<>();
        boxes.add(narrowed(branch, Comparator.comparing(Cluster::orNothing)));
        for (int column = 0; column < measure.plain(); column++) {
            int by = column;
            boxes.add(narrowed(branch, Comparator.comparingLong(some -> some.best().small()[by])));
        }
        for (List<Cluster> box : boxes) {
            Branch one = branch(box.toArray(Cluster[]::new), branch);
            try {
                Optional<S> found = one.settled() ? Optional.empty() : unserved(one, above);
                if (found.isPresent()) {
                    return found;
                }
            } catch (Meter.Spent spent) {
                // Others may do, unless all is spent.
                meter.spend(0);
            }
        }
        return Optional.empty();
    }

    /** The choices of a branch that are come to by taking the better half again and again. */
    private static List<Cluster> narrowed(Branch branch, Comparator<Cluster> better) {
        return Arrays.stream(branch.box()).map(some -> {
            Cluster left = some;
            while (!left.single()) {
                List<Cluster> halves = left.halves();
                left = better.compare(halves.get(0), halves.get(1)) >= 0 ? halves.get(0) : halves.get(1);
            }
            return left;
        }).toList();
    }

    /** A branch split by what is in one of its slots into parts that are all served, if there is such a slot. */
    private Optional<List<Branch>> cut(Branch branch, Hopes hopes) {
        return bySize(branch).map(which -> {
            List<Branch> served = new ArrayList<>();
            Deque<Cluster> left = new ArrayDeque<>(branch.box()[which].halves());
            while (!left.isEmpty()) {
                Cluster some = left.pop();
                Branch part = part(branch, which, some);
                if (part.settled() || served(part, hopes, stepsATry, new BitSet())) {
                    served.add(part);
                } else if (some.single()) {
                    return List.<Branch>of();
                } else {
                    some.halves().forEach(left::push);
                }
            }
            return served;
        }).filter(parts -> !parts.isEmpty()).findFirst();
    }

    /** A branch halved in the slot that is soonest decided; first comes what fewer exchanges threaten, which is likelier to stand its ground. */
    private List<Branch> halves(Branch branch, Hopes hopes) {
        int which = bySize(branch).findFirst().orElseThrow();
        return branch.box()[which].halves().stream().map(half -> part(branch, which, half))
                .sorted(Comparator.comparingLong(half -> hopes.all().stream().filter(exchange -> !exchange.hopeless(half.box())).count())).toList();
    }

    /** The slots that are not decided, those first in which the fewest choices are left. */
    private static Stream<Integer> bySize(Branch branch) {
        return IntStream.range(0, branch.box().length).filter(i -> !branch.box()[i].single()).boxed()
                .sorted(Comparator.comparingInt(i -> branch.box()[i].choices().size()));
    }

    private Branch part(Branch branch, int which, Cluster some) {
        Cluster[] smaller = branch.box().clone();
        smaller[which] = some;
        return branch(smaller, branch);
    }

    /** A branch of those of another's stands that have some of a box. */
    private Branch branch(Cluster[] box, Branch of) {
        List<Stand> from = of.stands();
        if (box.length > MOST_SLOTS) {
            return new Branch(box, from);
        }
        Set<Integer> uses = new HashSet<>();
        Map<Integer, Integer> needed = new HashMap<>();
        int all = 0;
        for (int i = 0; i < box.length; i++) {
            uses.addAll(heads.own().get(i).nodes(box[i]));
            needed.put(heads.own().get(i).slot(), box[i].orNothing() ? 0 : 1 << i);
            all |= needed.get(heads.own().get(i).slot());
        }
        Occupied occupied = new Occupied(arena.circuit(), uses, needed);
        List<Stand> standing = new ArrayList<>();
        for (Stand stand : from) {
            if ((occupied.of(arena.circuit().second(stand.node())) & 1L << all) != 0) {
                standing.add(stand);
            }
        }
        meter.spend(1 + occupied.looked() / Fronts.COMPARISONS_A_STEP);
        return new Branch(box, standing.size() == from.size() ? from : standing);
    }
}

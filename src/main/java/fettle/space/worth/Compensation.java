package fettle.space.worth;

import fettle.space.Contents;
import fettle.space.Rehung;
import fettle.space.Stand;
import fettle.space.Swaps;
import fettle.space.worth.Exchange.Outcome;
import fettle.space.worth.Lots.Lot;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Looks among all that may be on a head for an assembly that no other head serves better, by branching and bounding: what is in each slot is halved until one
 * {@linkplain Exchange exchange} for another head serves all that is left better, making up for what the other is behind in with something else in some of the slots.
 */
final class Compensation {

    /** For as many slots sets of them are written as the bits of one number. */
    private static final int MOST_SLOTS = 6;
    private static final int STEPS_A_TRY = 80;
    private static final int STEPS_A_LONG_TRY = 400;

    private final Contents contents;
    private final Arena arena;
    private final Measure measure;
    private final Meter meter;
    private final Set<Integer> heads;
    private final Lots lots;

    /**
     * Among the heads in some contents.
     *
     * @param heads by head, by slot of it, the slot's uses
     */
    Compensation(Contents contents, Map<Integer, Map<Integer, List<Integer>>> heads, Arena arena, Meter meter) {
        this.contents = contents;
        this.arena = arena;
        this.measure = arena.measure();
        this.meter = meter;
        this.heads = heads.keySet();
        this.lots = new Lots(contents, heads, arena);
    }

    /** What is to be found out of what is left when one choice is left in each slot. */
    interface Leaf<S> {

        /**
         * Whether it stands its ground.
         *
         * @param stands where it is
         * @param target what it brings
         * @param settled other heads that are not better, whatever is on them
         */
        Optional<S> of(List<Stand> stands, Yield target, BitSet settled);
    }

    /** How many ways there are of filling the slots of a head, or a limit where there are more; empty where they can't be gone through. */
    Optional<Long> ways(int head, long limit) {
        return lots.of(head).map(own -> {
            long ways = 1;
            for (Lot lot : own) {
                ways = Math.min(limit, ways * lot.choices().choices().size());
            }
            return ways;
        });
    }

    /** The first found that stands its ground, none where nothing does; empty where some of it could not be decided. */
    <S> Optional<Optional<S>> undominated(List<Stand> stands, Swaps swaps, Leaf<S> leaf) {
        int head = stands.get(0).head();
        Optional<List<Lot>> own = lots.of(head);
        if (own.isEmpty()) {
            return Optional.empty();
        }
        Asked<S> asked = new Asked<>(head, own.get(), swaps, leaf);
        Cluster[] all = own.get().stream().map(Lot::choices).toArray(Cluster[]::new);
        Optional<S> found = asked.in(all, stands, asked.exchanges());
        return found.isPresent() || !asked.open ? Optional.of(found) : Optional.empty();
    }

    /** One head that is asked about. */
    private final class Asked<S> {

        private final int head;
        private final List<Lot> own;
        private final Swaps swaps;
        private final Leaf<S> leaf;
        private final BitSet others = new BitSet();
        private final Map<List<Stand>, Map<Rehung, Boolean>> safe = new IdentityHashMap<>();
        private boolean open;

        Asked(int head, List<Lot> own, Swaps swaps, Leaf<S> leaf) {
            this.head = head;
            this.own = own;
            this.swaps = swaps;
            this.leaf = leaf;
        }

        /** Every way of putting another head in the place of this one, those first that keep most. */
        List<Exchange> exchanges() {
            List<Exchange> exchanges = new ArrayList<>();
            for (int other : heads) {
                Optional<List<Lot>> theirs = other == head ? Optional.empty() : lots.of(other);
                theirs.ifPresent(all -> {
                    others.set(other);
                    int[] takes = places(all);
                    keeping(other, all, takes, takes, 0, exchanges);
                });
            }
            exchanges.sort(Comparator.comparingInt(Exchange::filled));
            return exchanges;
        }

        /** By slot of the head the place of the one that takes whatever is in it, or less than 0. */
        private int[] places(List<Lot> theirs) {
            int[] places = new int[own.size()];
            boolean[] taken = new boolean[theirs.size()];
            for (int i = 0; i < places.length; i++) {
                places[i] = -1;
                for (int j = 0; j < taken.length && places[i] < 0; j++) {
                    if (!taken[j] && contents.takes(own.get(i).slot(), theirs.get(j).slot()) && (theirs.get(j).orNothing() || !own.get(i).orNothing())) {
                        places[i] = j;
                        taken[j] = true;
                    }
                }
            }
            return places;
        }

        /** With every part of what can be kept kept. */
        private void keeping(int other, List<Lot> theirs, int[] takes, int[] places, int from, List<Exchange> exchanges) {
            meter.spend(1);
            exchanges.add(new Exchange(measure, head, own, other, theirs, takes, places));
            for (int i = from; i < Math.min(places.length, MOST_SLOTS); i++) {
                if (places[i] >= 0) {
                    int[] fewer = places.clone();
                    fewer[i] = -1;
                    keeping(other, theirs, takes, fewer, i + 1, exchanges);
                }
            }
        }

        /** The first in a box that stands its ground. */
        Optional<S> in(Cluster[] box, List<Stand> from, List<Exchange> exchanges) {
            meter.spend(1 + exchanges.size() / Fronts.COMPARISONS_A_STEP);
            List<Stand> stands = standing(box, from);
            if (stands.isEmpty()) {
                return Optional.empty();
            }
            boolean single = Arrays.stream(box).allMatch(Cluster::single);
            int most = single ? STEPS_A_LONG_TRY : STEPS_A_TRY;
            List<Exchange> hopeful = new ArrayList<>();
            BitSet settled = (BitSet) others.clone();
            for (int e = 0; e < exchanges.size(); e++) {
                Exchange exchange = exchanges.get(e);
                if (!exchange.hopeless(box)) {
                    Outcome outcome = exchange.tried(box, most, meter, made -> safe(stands, made));
                    if (outcome == Outcome.SERVES) {
                        // What serves here is likely to serve beside it.
                        exchanges.add(0, exchanges.remove(e));
                        return Optional.empty();
                    }
                    if (outcome == Outcome.DOUBTFUL) {
                        settled.clear(exchange.to());
                    }
                    hopeful.add(exchange);
                }
            }
            return single ? single(box, stands, settled) : halved(box, next(box, hopeful), stands, hopeful);
        }

        private Optional<S> single(Cluster[] box, List<Stand> stands, BitSet settled) {
            Yield target = measure.ofPart(head);
            for (Cluster choice : box) {
                target = measure.both(target, choice.best());
            }
            try {
                return leaf.of(stands, target, settled);
            } catch (Meter.Spent spent) {
                // Only this one took too long, unless all is spent.
                meter.spend(0);
                open = true;
                return Optional.empty();
            }
        }

        private Optional<S> halved(Cluster[] box, int which, List<Stand> stands, List<Exchange> exchanges) {
            List<Cluster[]> halves = new ArrayList<>();
            for (Cluster half : box[which].halves()) {
                Cluster[] smaller = box.clone();
                smaller[which] = half;
                halves.add(smaller);
            }
            // What fewer exchanges threaten is likelier to stand its ground.
            halves.sort(Comparator.comparingLong(half -> exchanges.stream().filter(exchange -> !exchange.hopeless(half)).count()));
            for (Cluster[] half : halves) {
                Optional<S> found = in(half, stands, exchanges);
                if (found.isPresent()) {
                    return found;
                }
            }
            return Optional.empty();
        }

        /** The slot to halve: one in which much lies far apart, and which few of the other heads have a place for. */
        private int next(Cluster[] box, List<Exchange> exchanges) {
            int next = -1;
            long most = -1;
            for (int i = 0; i < box.length; i++) {
                if (!box[i].single()) {
                    long unplaced = 0;
                    for (Exchange exchange : exchanges) {
                        unplaced += exchange.takes(i) ? 0 : 1;
                    }
                    long weight = (box[i].spread() + 1) * (exchanges.size() + 2 * unplaced + 1);
                    if (weight > most) {
                        most = weight;
                        next = i;
                    }
                }
            }
            return next;
        }

        private boolean safe(List<Stand> stands, Rehung made) {
            return safe.computeIfAbsent(stands, unused -> new HashMap<>()).computeIfAbsent(made, unused -> {
                meter.spend(stands.size());
                return stands.stream().allMatch(stand -> swaps.safe(stand, made));
            });
        }

        /** Those of some stands that have some of a box. */
        private List<Stand> standing(Cluster[] box, List<Stand> from) {
            if (box.length > MOST_SLOTS) {
                return from;
            }
            Set<Integer> uses = new HashSet<>();
            Map<Integer, Integer> needed = new HashMap<>();
            int all = 0;
            for (int i = 0; i < box.length; i++) {
                uses.addAll(own.get(i).nodes(box[i]));
                needed.put(own.get(i).slot(), box[i].orNothing() ? 0 : 1 << i);
                all |= needed.get(own.get(i).slot());
            }
            Occupied occupied = new Occupied(arena.circuit(), uses, needed);
            List<Stand> standing = new ArrayList<>();
            for (Stand stand : from) {
                if ((occupied.of(arena.circuit().second(stand.node())) & 1L << all) != 0) {
                    standing.add(stand);
                }
            }
            meter.spend(1 + occupied.looked() / Fronts.COMPARISONS_A_STEP);
            return standing.size() == from.size() ? from : standing;
        }
    }
}

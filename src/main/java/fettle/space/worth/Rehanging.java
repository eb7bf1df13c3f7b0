package fettle.space.worth;

import fettle.space.Circuit;
import fettle.space.Contents;
import fettle.space.Held;
import fettle.space.Rehung;
import fettle.space.Stand;
import fettle.space.Swaps;
import fettle.space.Terrain;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * Shows of many assemblies at once that each is dominated: by the same with its head exchanged. What is on the head is hung onto another part, slot by slot,
 * where it serves as well there, so that only what is left over needs comparing.
 */
final class Rehanging {

    private final Contents contents;
    private final Arena arena;
    private final Measure measure;
    private final Terrain terrain;
    private final Boxes boxes;
    private final Meter meter;
    /** By head, by slot of it, the slot's uses with this head in this site. */
    private final Map<Integer, Map<Integer, List<Integer>>> heads = new TreeMap<>();
    private final Map<Integer, Map<Integer, Yield>> reachable = new HashMap<>();

    /**
     * Among the stands of some contents.
     *
     * @param standsOf by head, those stands of it in which something takes part in the comparison
     */
    Rehanging(Contents contents, Map<Integer, List<Stand>> standsOf, Arena arena, Boxes boxes, Meter meter) {
        this.contents = contents;
        this.arena = arena;
        this.measure = arena.measure();
        this.terrain = arena.terrain();
        this.boxes = boxes;
        this.meter = meter;
        standsOf.forEach((head, stands) -> {
            if (!contents.circular(head) && terrain.slotsOf()[head].length > 0) {
                heads.put(head, uses(stands));
            }
        });
    }

    /** By head that has slots and can't come back below itself, by slot of it, the slot's uses. */
    Map<Integer, Map<Integer, List<Integer>>> heads() {
        return heads;
    }

    /** What the slots of a head hold in any of its stands. */
    private Map<Integer, List<Integer>> uses(List<Stand> stands) {
        Circuit circuit = arena.circuit();
        Map<Integer, List<Integer>> uses = new TreeMap<>();
        List<Integer> open = new ArrayList<>();
        BitSet seen = new BitSet();
        stands.forEach(stand -> add(circuit.second(stand.node()), open, seen));
        while (!open.isEmpty()) {
            int node = open.remove(open.size() - 1);
            switch (circuit.kind(node)) {
                case BOTH -> {
                    add(circuit.first(node), open, seen);
                    add(circuit.second(node), open, seen);
                }
                case EITHER -> {
                    for (int i = 0; i < circuit.width(node); i++) {
                        add(circuit.alternative(node, i), open, seen);
                    }
                }
                case SLOT -> {
                    List<Integer> known = uses.computeIfAbsent(circuit.first(node), unused -> new ArrayList<>());
                    if (!known.contains(node) && arena.ideal(node) != null) {
                        known.add(node);
                    }
                }
                case ONE, PART, SEVERAL -> { }
            }
        }
        return uses;
    }

    private static void add(int node, List<Integer> open, BitSet seen) {
        if (!seen.get(node)) {
            seen.set(node);
            open.add(node);
        }
    }

    /**
     * Whether some other head serves every assembly of a box better.
     *
     * @param from what the assemblies of the box stand in, and all else that they may
     * @param unmatched counts for each factor how many heads have no place for it
     */
    boolean beaten(List<Stand> from, int head, Box box, int[] unmatched, Swaps swaps) {
        for (int other : heads.keySet()) {
            if (other != head && beatenBy(from, other, box, unmatched, swaps)) {
                return true;
            }
        }
        return false;
    }

    private boolean beatenBy(List<Stand> from, int other, Box box, int[] unmatched, Swaps swaps) {
        meter.spend(1 + box.factors().size());
        List<Integer> free = new ArrayList<>();
        for (int slot : terrain.slotsOf()[other]) {
            free.add(slot);
        }
        List<Held> kept = new ArrayList<>();
        List<Held> dropped = new ArrayList<>();
        boolean bound = false;
        List<Yield> left = new ArrayList<>(List.of(box.head()));
        for (int i = 0; i < box.factors().size(); i++) {
            Factor factor = box.factors().get(i);
            Optional<Integer> place = factor.held().flatMap(held -> place(held, free));
            if (place.isPresent()) {
                free.remove(place.get());
                Held held = factor.held().get();
                kept.add(held);
            } else {
                unmatched[i] += factor.decided() ? 0 : 1;
                bound |= factor.held().isEmpty();
                factor.held().ifPresent(dropped::add);
                left.add(boxes.best(factor));
            }
        }
        if (bound || kept.isEmpty()) {
            return false;
        }
        Yield asked = measure.all(left.toArray(Yield[]::new));
        return served(from, other, measure.ofPart(other), asked, kept, dropped, free, swaps);
    }

    /** Fills the slots that are left, as far as need be. */
    private boolean served(
            List<Stand> from, int other, Yield brought, Yield asked, List<Held> kept, List<Held> dropped, List<Integer> free, Swaps swaps) {
        List<Integer> required = free.stream().filter(slot -> terrain.room()[slot].filled()).toList();
        if (required.isEmpty() && measure.alwaysBetter(brought, asked) && safe(from, other, kept, dropped, List.of(), swaps)) {
            return true;
        }
        Yield[] rest = new Yield[free.size() + 1];
        rest[free.size()] = measure.ofNothing();
        for (int i = free.size() - 1; i >= 0; i--) {
            rest[i] = measure.both(reachable(other, free.get(i)), rest[i + 1]);
        }
        return fill(from, other, brought, asked, kept, dropped, free, rest, 0, new ArrayList<>(), swaps);
    }

    /**
     * The same from one slot on.
     *
     * @param rest by place among the slots, the best that it and those after it can bring
     */
    private boolean fill(
            List<Stand> from, int other, Yield brought, Yield asked, List<Held> kept, List<Held> dropped, List<Integer> free, Yield[] rest, int at,
            List<Held> added, Swaps swaps) {
        meter.spend(1);
        if (measure.compareBoth(brought, rest[at], asked) == Measure.Order.WORSE) {
            return false;
        }
        if (at == free.size()) {
            return measure.alwaysBetter(brought, asked) && safe(from, other, kept, dropped, added, swaps);
        }
        int slot = free.get(at);
        if (!terrain.room()[slot].filled() && fill(from, other, brought, asked, kept, dropped, free, rest, at + 1, added, swaps)) {
            return true;
        }
        if (contents.circularSlot(slot)) {
            return false;
        }
        for (int use : heads.get(other).getOrDefault(slot, List.of())) {
            Optional<List<Point>> front = arena.fronts().of(use);
            for (Point point : front.orElse(List.of())) {
                if (measure.compareAll(new Yield[] {brought, point.yield(), rest[at + 1]}, asked) == Measure.Order.WORSE) {
                    meter.spend(1);
                    continue;
                }
                added.add(new Held(slot, List.of(use), false));
                if (fill(from, other, measure.both(brought, point.yield()), asked, kept, dropped, free, rest, at + 1, added, swaps)) {
                    return true;
                }
                added.remove(added.size() - 1);
            }
        }
        return false;
    }

    private Yield reachable(int other, int slot) {
        return reachable.computeIfAbsent(other, unused -> new HashMap<>()).computeIfAbsent(slot, unused -> best(other, slot));
    }

    /** The best that a slot of a head can hold here. */
    private Yield best(int other, int slot) {
        Upper upper = new Upper(measure);
        if (!terrain.room()[slot].filled()) {
            upper.take(measure.ofNothing());
        }
        heads.get(other).getOrDefault(slot, List.of()).forEach(use -> upper.take(arena.ideal(use)));
        return upper.best() == null ? measure.ofNothing() : upper.best();
    }

    private static boolean safe(List<Stand> from, int other, List<Held> kept, List<Held> dropped, List<Held> added, Swaps swaps) {
        Rehung rehung = new Rehung(other, kept, dropped, added);
        return from.stream().allMatch(stand -> swaps.safe(stand, rehung));
    }

    /** The first slot among those free that takes whatever is held. */
    private Optional<Integer> place(Held held, List<Integer> free) {
        for (Integer slot : free) {
            if (contents.takes(held.slot(), slot) && (!terrain.room()[slot].filled() || !held.orNothing())) {
                return Optional.of(slot);
            }
        }
        return Optional.empty();
    }

    /** All that a head has on it, slot by slot, as if each choice went with each: more than there may be. */
    Optional<Box> everything(int head) {
        if (!heads.containsKey(head)) {
            return Optional.empty();
        }
        List<Factor> factors = new ArrayList<>();
        heads.get(head).forEach((slot, uses) -> {
            if (!uses.isEmpty()) {
                factors.add(new Factor(Optional.of(new Held(slot, uses, !terrain.room()[slot].filled())), reachable(head, slot), List.of()));
            }
        });
        return Optional.of(new Box(measure.ofPart(head), factors));
    }
}

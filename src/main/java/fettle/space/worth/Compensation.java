package fettle.space.worth;

import fettle.space.Contents;
import fettle.space.Rehung;
import fettle.space.Stand;
import fettle.space.Swaps;
import fettle.space.worth.Lots.Lot;
import java.util.BitSet;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;

/**
 * Looks among all that may be on a head for an assembly that no other head serves better, by branching and bounding: what is in each slot is halved until one
 * {@linkplain Exchange exchange} for another head serves all that is left better, making up for what the other is behind in with something else in some of the slots.
 * Where it leaves off it goes on when asked again.
 */
final class Compensation {

    private final Contents contents;
    private final Arena arena;
    private final Meter meter;
    private final Set<Integer> heads;
    private final Lots lots;
    /** By head, all that may be on it, as far as it was looked at: where only swaps are allowed that are safe whatever stands around, and where others are. */
    private final Map<Integer, Branch> ifSure = new HashMap<>();
    private final Map<Integer, Branch> otherwise = new HashMap<>();

    /**
     * Among the heads in some contents.
     *
     * @param heads by head, by slot of it, the slot's uses
     */
    Compensation(Contents contents, Map<Integer, Map<Integer, List<Integer>>> heads, Arena arena, Meter meter) {
        this.contents = contents;
        this.arena = arena;
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

    /** Whether a head was looked at before, and not let go of. */
    boolean begun(int head) {
        return ifSure.containsKey(head) || otherwise.containsKey(head);
    }

    /** Lets go of what was found out about a head. */
    void forget(int head) {
        ifSure.remove(head);
        otherwise.remove(head);
    }

    /** The first found that stands its ground, none where nothing does; empty where some of it could not be decided. */
    <S> Optional<Optional<S>> undominated(List<Stand> stands, Swaps swaps, Leaf<S> leaf) {
        int head = stands.get(0).head();
        Optional<List<Lot>> own = lots.of(head);
        if (own.isEmpty()) {
            return Optional.empty();
        }
        Branch all = (swaps.onlyIfSure() ? ifSure : otherwise)
                .computeIfAbsent(head, unused -> new Branch(own.get().stream().map(Lot::choices).toArray(Cluster[]::new), stands));
        Stand barest = stands.stream().min(Comparator.comparingInt(stand -> arena.fewestParts(stand.node()))).orElseThrow();
        Map<Integer, List<Lot>> others = new TreeMap<>();
        for (int other : heads) {
            // Where it may not take the place of this one with nothing on it, it hardly ever may with something.
            if (other != head && swaps.safe(barest, new Rehung(other, List.of(), List.of(), List.of()))) {
                lots.of(other).ifPresent(theirs -> others.put(other, theirs));
            }
        }
        return new Descent<>(contents, arena, meter, new Descent.Heads(head, own.get(), others), swaps, leaf).from(all);
    }
}

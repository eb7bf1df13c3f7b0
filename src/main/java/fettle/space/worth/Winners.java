package fettle.space.worth;

import fettle.space.Contents;
import fettle.space.Contents.Known;
import fettle.space.Stand;
import fettle.space.Swaps;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;

/** Looks in a slot for what dominates something there. */
final class Winners {

    private final Contents contents;
    private final Measure measure;
    private final Rivals rivals;
    private final Meter meter;

    /**
     * Those among some rivals.
     *
     * @param meter counts how often they are asked for
     */
    Winners(Contents contents, Measure measure, Rivals rivals, Meter meter) {
        this.contents = contents;
        this.measure = measure;
        this.rivals = rivals;
        this.meter = meter;
    }

    /** What dominates; its pick is empty for the empty choice. */
    record Winner(Optional<Pick.Headed> pick) {}

    /**
     * An assembly with another head that is safe in the place of some and better than they are.
     *
     * @param from all stands that what it is to take the place of stands in
     * @param target what that brings
     * @param barred parts that it must not hold
     * @param settled heads that need no looking at
     * @param search what it is sought with
     * @param mostParts how many parts it may have
     */
    Optional<Winner> of(List<Stand> from, Yield target, BitSet barred, BitSet settled, Search search, int mostParts, Swaps swaps) {
        meter.spend(1 + contents.stands().size() / Fronts.COMPARISONS_A_STEP);
        int head = from.get(0).head();
        if (!contents.several() && measure.compare(measure.ofNothing(), target) == Measure.Order.BETTER && from.stream().allMatch(swaps::safeToEmpty)) {
            return Optional.of(new Winner(Optional.empty()));
        }
        Predicate<Pick> accepted = barred.isEmpty() ? pick -> true : pick -> !holds(pick, barred);
        List<Stand> unsure = new ArrayList<>();
        Rivals.Facing facing = rivals.facing(from);
        for (int i = rivals.next(0, head, target, mostParts); i >= 0; i = rivals.next(i + 1, head, target, mostParts)) {
            Known known = settled.get(rivals.stand(i).head()) ? Known.UNSAFE : facing.known(i);
            if (known == Known.SAFE) {
                Optional<Pick> found = search.find(rivals.stand(i).node(), measure.ofNothing(), target, Search.Asked.BETTER, mostParts, accepted);
                if (found.isPresent()) {
                    return Optional.of(new Winner(Optional.of((Pick.Headed) found.get())));
                }
            } else if (known == Known.DEPENDS) {
                unsure.add(rivals.stand(i));
            }
        }
        if (swaps.onlyIfSure()) {
            return Optional.empty();
        }
        for (Stand stand : unsure) {
            // Whether it is safe is asked first, since that is mostly known already.
            Optional<Pick> found = from.stream().allMatch(each -> swaps.safe(each, stand))
                    ? search.find(stand.node(), measure.ofNothing(), target, Search.Asked.BETTER, mostParts, accepted) : Optional.empty();
            if (found.isPresent()) {
                return Optional.of(new Winner(Optional.of((Pick.Headed) found.get())));
            }
        }
        return Optional.empty();
    }

    /** The same with all heads looked at. */
    Optional<Winner> of(List<Stand> from, Yield target, BitSet barred, Search search, int mostParts, Swaps swaps) {
        return of(from, target, barred, new BitSet(), search, mostParts, swaps);
    }

    private static boolean holds(Pick pick, BitSet parts) {
        if (pick instanceof Pick.Headed headed) {
            return parts.get(headed.part()) || holds(headed.on(), parts);
        }
        if (pick instanceof Pick.InSlot inSlot) {
            return holds(inSlot.held(), parts);
        }
        return pick instanceof Pick.Both both && (holds(both.one(), parts) || holds(both.other(), parts));
    }
}

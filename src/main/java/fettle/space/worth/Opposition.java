package fettle.space.worth;

import fettle.space.Contents;
import fettle.space.Stand;
import fettle.space.Swaps;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Optional;

/** What may safely take the place of the assemblies of one stand and has another head, gone through front by front, each when it is come to. */
final class Opposition {

    private static final int REMEMBERED = 64;

    private final Arena arena;
    private final Measure measure;
    private final Meter meter;
    private final boolean empty;
    /** Other heads' stands, those first that won lately. */
    private final List<Stand> rivals = new ArrayList<>();
    /** What won lately, the latest first: what beats one point of a front often beats the next. */
    private final Deque<Yield> winners = new ArrayDeque<>();

    /** The opposition to a stand. */
    Opposition(Stand stand, Contents contents, Arena arena, Meter meter, Swaps swaps) {
        this.arena = arena;
        this.measure = arena.measure();
        this.meter = meter;
        this.empty = !contents.several() && swaps.safeToEmpty(stand);
        for (Stand other : contents.stands()) {
            meter.spend(1);
            if (other.head() != stand.head() && arena.ideal(other.node()) != null && swaps.safe(stand, other)) {
                rivals.add(other);
            }
        }
    }

    /** Whether something there is better than a target; nothing where that hangs on a front that would be too large. */
    Optional<Boolean> beats(Yield target) {
        if (empty && better(measure.ofNothing(), target)) {
            return Optional.of(true);
        }
        for (Yield winner : winners) {
            if (better(winner, target)) {
                winners.remove(winner);
                winners.addFirst(winner);
                return Optional.of(true);
            }
        }
        meter.spend(1 + rivals.size() / Fronts.COMPARISONS_A_STEP);
        boolean all = true;
        for (int i = 0; i < rivals.size(); i++) {
            Stand rival = rivals.get(i);
            if (better(arena.ideal(rival.node()), target)) {
                Optional<List<Point>> front = arena.broadFronts().of(arena.circuit().second(rival.node()));
                all &= front.isPresent();
                Optional<Yield> winner = front.flatMap(on -> winner(measure.ofPart(rival.head()), on, target));
                if (winner.isPresent()) {
                    rivals.add(0, rivals.remove(i));
                    winners.addFirst(winner.get());
                    if (winners.size() > REMEMBERED) {
                        winners.removeLast();
                    }
                    return Optional.of(true);
                }
            }
        }
        return all ? Optional.of(false) : Optional.empty();
    }

    private Optional<Yield> winner(Yield head, List<Point> on, Yield target) {
        long weight = measure.weight(target) - measure.weight(head);
        int compared = 0;
        Optional<Yield> winner = Optional.empty();
        while (winner.isEmpty() && compared < on.size() && measure.weight(on.get(compared).yield()) >= weight) {
            Yield yield = on.get(compared++).yield();
            winner = measure.compareBoth(head, yield, target) == Measure.Order.BETTER ? Optional.of(measure.both(head, yield)) : winner;
        }
        meter.spend(1 + compared / Fronts.COMPARISONS_A_STEP);
        return winner;
    }

    private boolean better(Yield one, Yield target) {
        return measure.compare(one, target) == Measure.Order.BETTER;
    }
}

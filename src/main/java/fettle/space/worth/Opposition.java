package fettle.space.worth;

import fettle.space.Contents;
import fettle.space.Stand;
import fettle.space.Swaps;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Optional;

/** What may safely take the place of the assemblies of one stand and has another head, gone through front by front. */
final class Opposition {

    private static final int REMEMBERED = 64;

    private final Measure measure;
    private final Meter meter;
    private final boolean empty;
    /** The fronts of other heads' stands, those first that won lately. */
    private final List<List<Point>> rivals = new ArrayList<>();
    /** What won lately, the latest first: what beats one point of a front often beats the next. */
    private final Deque<Yield> winners = new ArrayDeque<>();

    private Opposition(Arena arena, Meter meter, boolean empty) {
        this.measure = arena.measure();
        this.meter = meter;
        this.empty = empty;
    }

    /** The opposition to a stand; nothing where a front that is needed would be too large. */
    static Optional<Opposition> to(Stand stand, Contents contents, Arena arena, Meter meter, Swaps swaps) {
        Opposition opposition = new Opposition(arena, meter, !contents.several() && swaps.safeToEmpty(stand));
        for (Stand other : contents.stands()) {
            meter.spend(1);
            if (other.head() != stand.head() && arena.ideal(other.node()) != null && swaps.safe(stand, other)) {
                Optional<List<Point>> front = arena.broadFronts().of(other.node());
                if (front.isEmpty()) {
                    return Optional.empty();
                }
                opposition.rivals.add(front.get());
            }
        }
        return Optional.of(opposition);
    }

    /** Whether something there is better than a target. */
    boolean beats(Yield target) {
        if (empty && better(measure.ofNothing(), target)) {
            return true;
        }
        for (Yield winner : winners) {
            if (better(winner, target)) {
                winners.remove(winner);
                winners.addFirst(winner);
                return true;
            }
        }
        for (int i = 0; i < rivals.size(); i++) {
            Optional<Yield> winner = winner(rivals.get(i), target);
            if (winner.isPresent()) {
                rivals.add(0, rivals.remove(i));
                winners.addFirst(winner.get());
                if (winners.size() > REMEMBERED) {
                    winners.removeLast();
                }
                return true;
            }
        }
        return false;
    }

    private Optional<Yield> winner(List<Point> front, Yield target) {
        long weight = measure.weight(target);
        int compared = 0;
        Optional<Yield> winner = Optional.empty();
        while (winner.isEmpty() && compared < front.size() && measure.weight(front.get(compared).yield()) >= weight) {
            winner = Optional.of(front.get(compared++).yield()).filter(yield -> better(yield, target));
        }
        meter.spend(1 + compared / Fronts.COMPARISONS_A_STEP);
        return winner;
    }

    private boolean better(Yield one, Yield target) {
        return measure.compare(one, target) == Measure.Order.BETTER;
    }
}

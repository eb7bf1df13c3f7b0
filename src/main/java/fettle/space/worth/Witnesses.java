package fettle.space.worth;

import fettle.space.Assembly;
import fettle.space.Contents;
import fettle.space.Stand;
import fettle.space.Swaps;
import fettle.space.worth.Winners.Winner;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;

/** What is shown of a part that is dominated in a slot. */
final class Witnesses {

    private static final long STEPS_TO_SHOW = 20_000;
    private static final int MOST_SHOWN = 4;

    private final Contents contents;
    private final Arena arena;
    private final Winners winners;
    private final Assemblies assemblies;
    private final Meter meter;
    private Optional<Whereabouts> lastAsked = Optional.empty();

    /**
     * What is shown in a slot.
     *
     * @param meter counts what is done beyond looking for a small one
     */
    Witnesses(Contents contents, Arena arena, Winners winners, Assemblies assemblies, Meter meter) {
        this.contents = contents;
        this.arena = arena;
        this.winners = winners;
        this.assemblies = assemblies;
        this.meter = meter;
    }

    /** A dominated part with its smallest assembly and the smallest that dominates that. */
    Verdict of(List<Stand> stands, Swaps swaps) {
        List<Assembly> smallest = new ArrayList<>();
        for (Stand stand : stands) {
            smallest.add(assemblies.of((Pick.Headed) arena.smallest(stand.node())));
        }
        int which = 0;
        for (int i = 1; i < smallest.size(); i++) {
            which = smallest.get(i).compareTo(smallest.get(which)) < 0 ? i : which;
        }
        Stand stand = stands.get(which);
        Yield target = arena.broughtBy(arena.smallest(stand.node()));
        List<Stand> from = contents.circling() ? whereabouts(stands).of(smallest.get(which)) : List.of(stand);
        BitSet barred = contents.above(from);
        Winner winner = smallestWinner(from, target, barred, swaps)
                .or(() -> winners.of(from, target, barred, contents.circling() ? arena.plainSearch(meter) : arena.search(meter), Rivals.ANY, swaps)).orElseThrow();
        return new Verdict.Dominated(smallest.get(which), winner.pick().map(assemblies::of));
    }

    private Optional<Winner> smallestWinner(List<Stand> from, Yield target, BitSet barred, Swaps swaps) {
        try {
            Search search = arena.plainSearch(arena.meter(STEPS_TO_SHOW));
            for (int parts = 1; parts <= MOST_SHOWN; parts++) {
                Optional<Winner> winner = winners.of(from, target, barred, search, parts, swaps);
                if (winner.isPresent()) {
                    return winner;
                }
            }
        } catch (Meter.Spent spent) {
            // A larger one will do.
        }
        return Optional.empty();
    }

    /** All assemblies of the stands asked for last, which are mostly asked for several times in a row. */
    Whereabouts whereabouts(List<Stand> stands) {
        if (lastAsked.isEmpty() || !lastAsked.get().isOf(stands)) {
            lastAsked = Optional.of(new Whereabouts(stands, arena, assemblies, meter));
        }
        return lastAsked.get();
    }
}

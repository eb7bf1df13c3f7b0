package fettle.judgement;

import fettle.document.DeepStack;
import fettle.space.worth.Hull;
import fettle.space.worth.Standing;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.BooleanSupplier;
import java.util.stream.Stream;

/**
 * The ladder of one place of a build, out of swaps of which it is yet to be found out whether they bear on it. Only those that are rungs as far as is known are tried: what
 * the ladder of all would have as rungs, and holds, is just what the ladder of those that hold has.
 */
final class PlaceLadder {

    /**
     * An assembly with what it would cost and what the build would then weigh.
     *
     * @param bears whether it belongs here, which is found out when asked; empty for what is there now
     */
    record Priced(String assembly, BigDecimal cost, BigDecimal benefit, Optional<BooleanSupplier> bears) implements Hull.Point {}

    /** Fewer trials than these are over before another thread has begun. */
    private static final int WORTH_SHARING = 16;

    private static final int MOST_LAYERS = 64;

    private final Optional<Priced> present;
    private final Set<Priced> sure = Collections.newSetFromMap(new IdentityHashMap<>());
    private List<Priced> points;
    private Hull<Priced> hull;
    private int further = 1;
    private int layers = 1;

    PlaceLadder(List<Priced> swaps, Optional<Priced> present) {
        this.present = present;
        this.points = Stream.concat(swaps.stream(), present.stream()).sorted(Hull.CHEAPEST_BEST_FIRST).toList();
        this.hull = new Hull<>(points);
        present.ifPresent(sure::add);
    }

    /** Tries out what bears on these ladders, until nothing is left of what doesn't hold. */
    static void settle(Collection<PlaceLadder> ladders) {
        Map<PlaceLadder, List<Priced>> asked = asked(ladders);
        while (!asked.isEmpty()) {
            List<Priced> all = asked.values().stream().flatMap(List::stream).toList();
            List<Boolean> bears = all.size() < WORTH_SHARING ? all.stream().map(PlaceLadder::bears).toList() : DeepStack.each(all, PlaceLadder::bears);
            int next = 0;
            for (Map.Entry<PlaceLadder, List<Priced>> some : asked.entrySet()) {
                int end = next + some.getValue().size();
                some.getKey().learn(some.getValue(), bears.subList(next, end));
                next = end;
            }
            asked = asked(asked.keySet());
        }
    }

    private static boolean bears(Priced point) {
        return point.bears.get().getAsBoolean();
    }

    private static Map<PlaceLadder, List<Priced>> asked(Collection<PlaceLadder> ladders) {
        Map<PlaceLadder, List<Priced>> asked = new LinkedHashMap<>();
        ladders.forEach(ladder -> asked.put(ladder, ladder.asked()));
        asked.values().removeIf(List::isEmpty);
        return asked;
    }

    /** What must be tried next: rungs, and where those all hold, some of what would leave what is there now behind, twice as many each time. */
    private List<Priced> asked() {
        List<Priced> rungs = unsure(hull);
        return rungs.isEmpty() ? ahead() : layers == 1 ? rungs : outermost(rungs);
    }

    private List<Priced> unsure(Hull<Priced> some) {
        return some.rungs().stream().filter(rung -> !sure.contains(rung)).toList();
    }

    /** The rungs, those that there would be without them, and so on inward: where most don't hold, one at a time would take long. */
    private List<Priced> outermost(List<Priced> rungs) {
        Set<Priced> taken = Collections.newSetFromMap(new IdentityHashMap<>());
        List<Priced> outermost = new ArrayList<>();
        List<Priced> next = rungs;
        for (int layer = 1; !next.isEmpty(); layer++) {
            outermost.addAll(next);
            taken.addAll(next);
            next = layer == layers ? List.of() : unsure(new Hull<>(points.stream().filter(point -> !taken.contains(point)).toList()));
        }
        return outermost;
    }

    private List<Priced> ahead() {
        if (present.isEmpty() || hull.standing(present.get()) != Standing.DOMINATED) {
            return List.of();
        }
        List<Priced> ahead = points.stream().filter(point -> dominates(point, present.get())).toList();
        if (ahead.stream().anyMatch(sure::contains)) {
            return List.of();
        }
        List<Priced> some = ahead.subList(0, Math.min(further, ahead.size()));
        further *= 2;
        return some;
    }

    private void learn(List<Priced> tried, List<Boolean> bears) {
        Set<Priced> gone = Collections.newSetFromMap(new IdentityHashMap<>());
        for (int i = 0; i < tried.size(); i++) {
            (bears.get(i) ? sure : gone).add(tried.get(i));
        }
        if (!gone.isEmpty()) {
            points = points.stream().filter(point -> !gone.contains(point)).toList();
            hull = new Hull<>(points);
            layers = Math.min(2 * layers, MOST_LAYERS);
        }
    }

    private static boolean dominates(Priced one, Priced other) {
        int cost = one.cost.compareTo(other.cost);
        int benefit = one.benefit.compareTo(other.benefit);
        return cost <= 0 && benefit >= 0 && (cost < 0 || benefit > 0);
    }

    /** What is there now; empty where it is unobtainable. */
    Optional<Priced> present() {
        return present;
    }

    /** The rungs, cheapest first. */
    List<Priced> rungs() {
        return hull.rungs();
    }

    /** Where what is there now stands; only where it is obtainable. */
    Standing standing() {
        return hull.standing(present.orElseThrow());
    }
}

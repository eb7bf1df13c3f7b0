package fettle.space.worth;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;

/**
 * Sorts points of cost and benefit into those on the upper concave hull, those between, and those dominated.
 *
 * <p>These are strong and extended dominance as cost-effectiveness analysis has them: Drummond et al., <em>Methods for the Economic Evaluation of
 * Health Care Programmes</em>; Neumann et al., <em>Cost-Effectiveness in Health and Medicine</em>. A point on the line between two others lies on the
 * hull; points alike in both figures stand alike.
 *
 * @param <P> the points
 */
public final class Hull<P extends Hull.Point> {

    /** A cost, lower being better, and a benefit, higher being better. */
    public interface Point {

        BigDecimal cost();

        BigDecimal benefit();
    }

    /** By cost, and of equal cost the most benefit first: what is in this order is sorted at once. */
    public static final Comparator<Point> CHEAPEST_BEST_FIRST = Comparator.comparing(Point::cost).thenComparing(Point::benefit, Comparator.reverseOrder());

    private final List<P> rungs = new ArrayList<>();
    private final Map<P, List<P>> beside = new IdentityHashMap<>();
    /** Of what isn't dominated, which is little of much. */
    private final Map<P, Standing> standings = new IdentityHashMap<>();

    public Hull(List<P> points) {
        List<P> sorted = new ArrayList<>(points);
        sorted.sort(CHEAPEST_BEST_FIRST);
        List<P> undominated = new ArrayList<>();
        List<P> steps = new ArrayList<>();
        for (P point : sorted) {
            P best = undominated.isEmpty() ? null : undominated.get(undominated.size() - 1);
            if (best == null || point.benefit().compareTo(best.benefit()) > 0) {
                steps.add(point);
                undominated.add(point);
            } else if (alike(point, best)) {
                undominated.add(point);
            }
        }
        for (P point : steps) {
            while (rungs.size() > 1 && below(rungs.get(rungs.size() - 2), rungs.get(rungs.size() - 1), point)) {
                rungs.remove(rungs.size() - 1);
            }
            rungs.add(point);
        }
        int next = 0;
        for (P point : undominated) {
            while (next < rungs.size() && rungs.get(next).cost().compareTo(point.cost()) < 0) {
                next++;
            }
            boolean rung = next < rungs.size() && alike(point, rungs.get(next));
            standings.put(point, rung ? Standing.RUNG : Standing.BETWEEN);
            if (rung && point != rungs.get(next)) {
                beside.computeIfAbsent(rungs.get(next), unused -> new ArrayList<>()).add(point);
            }
        }
    }

    private static boolean alike(Point one, Point other) {
        return one.cost().compareTo(other.cost()) == 0 && one.benefit().compareTo(other.benefit()) == 0;
    }

    /** Whether the middle point lies strictly below the line between the outer two. */
    private static boolean below(Point low, Point middle, Point high) {
        BigDecimal rise = middle.benefit().subtract(low.benefit()).multiply(high.cost().subtract(low.cost()));
        BigDecimal line = high.benefit().subtract(low.benefit()).multiply(middle.cost().subtract(low.cost()));
        return rise.compareTo(line) < 0;
    }

    /** The points of the hull, one for each cost, cheapest first. */
    public List<P> rungs() {
        return List.copyOf(rungs);
    }

    /** The other points of the same cost and benefit as one of the rungs, in the order in which they were given. */
    public List<P> alike(P rung) {
        return List.copyOf(beside.getOrDefault(rung, List.of()));
    }

    /** Where one of the points given stands. */
    public Standing standing(P point) {
        return standings.getOrDefault(point, Standing.DOMINATED);
    }
}

package fettle.space.worth;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;

/** Puts many points in order, the heaviest first, those with the fewest parts first among those that weigh the same. */
final class HeaviestFirst {

    private static final Comparator<Point> FEWEST_PARTS = Comparator.comparingInt(Point::parts);

    private HeaviestFirst() {}

    static List<Point> of(List<Point> points, Measure measure) {
        long[] weights = points.stream().mapToLong(point -> measure.weight(point.yield())).toArray();
        long least = Arrays.stream(weights).min().orElse(0);
        long widest = Arrays.stream(weights).max().orElse(0) - least;
        int bits = Integer.SIZE - Integer.numberOfLeadingZeros(points.size());
        if (widest < 0 || Long.numberOfLeadingZeros(widest) <= bits) {
            return points.stream().sorted(Comparator.comparingLong((Point point) -> measure.weight(point.yield())).reversed().thenComparing(FEWEST_PARTS)).toList();
        }
        // A weight and a place in one number each sort far faster than points do.
        for (int i = 0; i < weights.length; i++) {
            weights[i] = weights[i] - least << bits | i;
        }
        Arrays.sort(weights);
        List<Point> sorted = new ArrayList<>(points.size());
        int alike = 0;
        for (int i = weights.length - 1; i >= 0; i--) {
            sorted.add(points.get((int) (weights[i] & (1L << bits) - 1)));
            if (i == 0 || weights[i] >> bits != weights[i - 1] >> bits) {
                sorted.subList(alike, sorted.size()).sort(FEWEST_PARTS);
                alike = sorted.size();
            }
        }
        return sorted;
    }
}

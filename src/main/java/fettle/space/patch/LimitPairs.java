package fettle.space.patch;

import fettle.catalog.Limit;
import java.math.BigDecimal;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;

/** Pairs the limits of two catalogs: by id, and those that only one has by what they ask for, since a limit that goes by another id is still the same. */
final class LimitPairs {

    private final Map<String, String> formerly = new HashMap<>();

    LimitPairs(Map<String, Limit> old, Map<String, Limit> now) {
        SortedMap<String, Limit> gone = new TreeMap<>(old);
        gone.keySet().removeAll(now.keySet());
        now.forEach((id, limit) -> {
            if (old.containsKey(id)) {
                formerly.put(id, id);
            } else {
                gone.values().stream().filter(other -> asksAlike(other, limit)).findFirst().ifPresent(other -> formerly.put(id, gone.remove(other.id()).id()));
            }
        });
    }

    /** The id that a limit of the new catalog has in the old one; empty where that has none such. */
    Optional<String> formerly(Limit limit) {
        return Optional.ofNullable(formerly.get(limit.id()));
    }

    private static boolean asksAlike(Limit one, Limit other) {
        return one.attribute().equals(other.attribute()) && one.side() == other.side() && one.loaded() == other.loaded() && one.by().equals(other.by())
                && figures(one.bound()).equals(figures(other.bound()));
    }

    private static List<List<BigDecimal>> figures(Limit.Bound bound) {
        return bound instanceof Limit.Table table
                ? table.points().stream().map(point -> List.of(point.x().stripTrailingZeros(), point.y().stripTrailingZeros())).toList()
                : List.of(List.of(((Limit.Fixed) bound).value().stripTrailingZeros()));
    }
}

package fettle.space.patch;

import fettle.catalog.Limit;
import fettle.space.LimitMargin;
import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/** Pairs the limits of two catalogs: by id, and those that only one has by what they ask for, since a limit that goes by another id is still the same. */
final class LimitPairs {

    private final Map<String, LimitMargin> before = new TreeMap<>();

    /** Pairs how one build stood to the limits of the old catalog with how it stands to those of the new one. */
    LimitPairs(List<LimitMargin> before, List<LimitMargin> after) {
        before.forEach(margin -> this.before.put(margin.limit().id(), margin));
        Map<String, LimitMargin> gone = new TreeMap<>(this.before);
        after.forEach(margin -> gone.remove(margin.limit().id()));
        for (LimitMargin margin : after) {
            if (!this.before.containsKey(margin.limit().id())) {
                gone.values().stream().filter(other -> asksAlike(other.limit(), margin.limit())).findFirst()
                        .ifPresent(other -> this.before.put(margin.limit().id(), gone.remove(other.limit().id())));
            }
        }
    }

    /** How the build stood to a limit of the new catalog; empty where the old one has none such. */
    Optional<LimitMargin> before(Limit limit) {
        return Optional.ofNullable(before.get(limit.id()));
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

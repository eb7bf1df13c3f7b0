package fettle.space.best;

import fettle.catalog.Lens;
import fettle.catalog.Limit;
import fettle.catalog.Outfit;
import fettle.space.Placement;
import fettle.space.Prices;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * What a best build is sought for.
 *
 * @param lens what is weighed; empty where any build that satisfies the rest will do
 * @param prices the offers that count; empty where it does not matter whether a part can be had
 * @param owned parts that cost nothing
 * @param loaded whether the lens weighs totals with {@code loaded} stats
 * @param before the build to start from, which decides among equals and holds the kept paths
 * @param keep paths of that build which keep their part
 * @param limits the limits to be kept
 */
public record Demands(
        Optional<Lens> lens,
        Optional<Prices> prices,
        Optional<BigDecimal> budget,
        Optional<Outfit> outfit,
        Set<String> owned,
        boolean loaded,
        Optional<Placement> before,
        Set<String> keep,
        List<Limit> limits) {

    public Demands {
        owned = Set.copyOf(owned);
        keep = Set.copyOf(keep);
        limits = List.copyOf(limits);
    }

    Demands withLens(Optional<Lens> other) {
        return new Demands(other, prices, budget, outfit, owned, loaded, before, keep, limits);
    }

    Demands withPrices(Optional<Prices> other) {
        return new Demands(lens, other, budget, outfit, owned, loaded, before, keep, limits);
    }

    Demands withBudget(Optional<BigDecimal> other) {
        return new Demands(lens, prices, other, outfit, owned, loaded, before, keep, limits);
    }

    Demands withKeep(Set<String> other) {
        return new Demands(lens, prices, budget, outfit, owned, loaded, before, other, limits);
    }

    Demands withLimits(List<Limit> other) {
        return new Demands(lens, prices, budget, outfit, owned, loaded, before, keep, other);
    }
}

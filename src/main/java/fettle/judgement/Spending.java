package fettle.judgement;

import fettle.catalog.Build;
import fettle.catalog.Catalog;
import fettle.catalog.Fact;
import fettle.catalog.FactList;
import fettle.catalog.Offer;
import fettle.space.BuildResult;
import fettle.space.PricedOffer;
import fettle.space.Prices;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Collectors;

/**
 * What a build costs, and what it may cost, in base currency.
 *
 * @param prices what is spent on each part that isn't owned, all of its occurrences together
 * @param because the offers, those first on which most is spent, and by what their prices are told
 */
public record Spending(Build build, BigDecimal cost, BigDecimal budget, SortedMap<String, BigDecimal> prices, List<Fact> because) {

    public Spending {
        prices = Collections.unmodifiableSortedMap(prices);
        because = List.copyOf(because);
    }

    /** What a build spends of its budget; empty where it has none, or what it costs isn't known. */
    static Optional<Spending> of(Catalog catalog, Prices open, BuildResult result) {
        Build build = result.build();
        return result.cost().flatMap(cost -> build.budget().map(budget -> {
            Set<String> owned = build.owned().stream().map(Build.Located::id).collect(Collectors.toSet());
            SortedMap<String, BigDecimal> prices = new TreeMap<>();
            result.placement().orElseThrow().parts().stream().filter(placed -> !owned.contains(placed.part()))
                    .forEach(placed -> prices.merge(placed.part(), open.cheapest(placed.part()).orElseThrow().cost(), BigDecimal::add));
            List<String> dearest = new ArrayList<>(prices.keySet());
            dearest.sort(Comparator.comparing(prices::get, Comparator.reverseOrder()));
            FactList facts = new FactList();
            for (String part : dearest) {
                Offer offer = open.cheapest(part).orElseThrow().offer();
                facts.add(offer).addAll(PricedOffer.basis(catalog, offer));
            }
            return new Spending(build, cost, budget, prices, facts.list());
        }));
    }

    /** By how much it costs more than it may; negative where it costs less. */
    public BigDecimal excess() {
        return cost.subtract(budget);
    }
}

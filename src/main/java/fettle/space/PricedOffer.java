package fettle.space;

import fettle.catalog.Barter;
import fettle.catalog.Catalog;
import fettle.catalog.Fact;
import fettle.catalog.Offer;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import java.util.stream.Stream;

/**
 * An offer with what it costs.
 *
 * @param cost in base currency, to two decimals
 * @param standing whether the vendor asks for standing; an open market doesn't
 * @param rank its place among the offers of the part, the cheapest being 0
 */
public record PricedOffer(Offer offer, BigDecimal cost, boolean standing, int rank, List<Fact> basis) {

    public PricedOffer {
        basis = List.copyOf(basis);
    }

    public String part() {
        return offer.part();
    }

    public String vendor() {
        return offer.vendor();
    }

    public int tier() {
        return offer.tier();
    }

    public boolean bartered() {
        return offer.bartered();
    }

    /** Where and how it is had. */
    public String source() {
        return offer.place() + (bartered() ? " in goods" : "");
    }

    /** The property that states the price. */
    public String priceAt() {
        return offer.bartered() ? "barter" : "price";
    }

    /** What is paid with: the currency, or the sorts of goods. */
    public List<String> means() {
        return bartered() ? offer.barter().stream().map(Barter::good).distinct().sorted().toList() : List.of(offer.currency());
    }

    /** All offers that can be priced. */
    static List<PricedOffer> of(Catalog catalog) {
        Prices prices = new Prices(catalog, Optional.empty());
        List<PricedOffer> priced = new ArrayList<>();
        for (String part : new TreeSet<>(catalog.offers().stream().map(Offer::part).toList())) {
            int rank = 0;
            for (Prices.Priced each : prices.offers(part)) {
                boolean standing = catalog.vendors().get(each.offer().vendor()).tiers() > 0;
                priced.add(new PricedOffer(each.offer(), each.cost(), standing, rank++, basis(catalog, each.offer())));
            }
        }
        return priced;
    }

    /** The entries by which the price is told in base currency, where it isn't already. */
    public static List<Fact> basis(Catalog catalog, Offer offer) {
        if (offer.bartered()) {
            return offer.barter().stream().<Fact>map(item -> catalog.goods().get(item.good())).distinct().toList();
        }
        boolean base = catalog.head().map(head -> head.currency().equals(offer.currency())).orElse(false);
        return base ? List.of() : Stream.<Fact>of(catalog.currencies().get(offer.currency())).toList();
    }
}

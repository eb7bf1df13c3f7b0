package fettle.space;

import fettle.catalog.Access;
import fettle.catalog.Barter;
import fettle.catalog.Catalog;
import fettle.catalog.Currency;
import fettle.catalog.Good;
import fettle.catalog.Offer;
import fettle.catalog.Vendor;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** What parts cost under an access profile, in base currency, to two decimals. */
public final class Prices {

    /** An offer with what it costs in base currency. */
    public record Priced(Offer offer, BigDecimal cost) {}

    private static final Comparator<Priced> CHEAPEST = Comparator.comparing(Priced::cost)
            .thenComparing(priced -> priced.offer().tier())
            .thenComparing(priced -> priced.offer().vendor())
            .thenComparing(priced -> priced.offer().origin());

    private final Map<String, List<Priced>> open = new HashMap<>();
    private final Set<String> obscure = new HashSet<>();

    /** The prices that the access profile opens; all offers where no profile is named. An offer that names an unknown vendor, currency or good is no offer. */
    public Prices(Catalog catalog, Optional<Access> access) {
        for (Offer offer : catalog.offers()) {
            // Nobody knows to whom a vendor sells that isn't there.
            if (access.map(profile -> opens(profile, offer, catalog) || !catalog.vendors().containsKey(offer.vendor())).orElse(true)) {
                cost(catalog, offer).ifPresentOrElse(
                        cost -> open.computeIfAbsent(offer.part(), unused -> new ArrayList<>()).add(new Priced(offer, cost)), () -> obscure.add(offer.part()));
            }
        }
        open.values().forEach(offers -> offers.sort(CHEAPEST));
    }

    private static boolean opens(Access profile, Offer offer, Catalog catalog) {
        Integer tier = profile.vendors().get(offer.vendor());
        Vendor vendor = catalog.vendors().get(offer.vendor());
        return tier != null && vendor != null && (vendor.tiers() == 0 || offer.tier() <= tier);
    }

    /** What one offer costs: price × rate, or Σ count × value of the goods, rounded half up to two decimals. */
    public static Optional<BigDecimal> cost(Catalog catalog, Offer offer) {
        if (!catalog.vendors().containsKey(offer.vendor())) {
            return Optional.empty();
        }
        BigDecimal cost;
        if (offer.price().isPresent()) {
            Currency currency = catalog.currencies().get(offer.currency());
            if (currency == null) {
                return Optional.empty();
            }
            cost = offer.price().get().multiply(currency.rate());
        } else {
            cost = BigDecimal.ZERO;
            for (Barter barter : offer.barter()) {
                Good good = catalog.goods().get(barter.good());
                if (good == null) {
                    return Optional.empty();
                }
                cost = cost.add(barter.count().multiply(good.value()));
            }
        }
        return Optional.of(cost.setScale(2, RoundingMode.HALF_UP));
    }

    /** Whether a part is offered, but only in ways of which nobody knows what they cost: in a currency, for goods, or by a vendor that the catalog doesn't have. */
    public boolean obscure(String part) {
        return obscure.contains(part) && !open.containsKey(part);
    }

    /** The open offers of a part, cheapest first. */
    public List<Priced> offers(String part) {
        return List.copyOf(open.getOrDefault(part, List.of()));
    }

    /** The cheapest open offer of a part; empty where it is unobtainable. */
    public Optional<Priced> cheapest(String part) {
        List<Priced> offers = open.getOrDefault(part, List.of());
        return offers.isEmpty() ? Optional.empty() : Optional.of(offers.get(0));
    }
}

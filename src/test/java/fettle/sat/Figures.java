package fettle.sat;

import fettle.catalog.Attribute;
import fettle.catalog.Catalog;
import fettle.catalog.Lens;
import fettle.catalog.Offer;
import fettle.catalog.Outfit;
import fettle.catalog.Part;
import fettle.catalog.Stat;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/** Totals and costs as sums over placed parts, from their definitions; of totals only those that are sums. */
final class Figures {

    private final Catalog catalog;
    private final Part platform;
    private final Optional<Outfit> outfit;

    Figures(Catalog catalog, String platform, Optional<Outfit> outfit) {
        this.catalog = catalog;
        this.platform = catalog.platforms().get(platform);
        this.outfit = outfit;
    }

    /**
     * An attribute's total.
     *
     * @throws UnsupportedOperationException where it is no sum
     */
    Sum total(String id, boolean loaded) {
        Attribute attribute = catalog.attributes().get(id);
        Optional<BigDecimal> base = Optional.ofNullable(platform.stats().get(id)).map(Stat::value);
        Map<String, BigDecimal> stats = new TreeMap<>();
        catalog.parts().values().forEach(part -> stats.put(part.id(), figure(part.stats(), id).add(loaded ? figure(part.loaded(), id) : BigDecimal.ZERO)));
        Sum total = switch (attribute.combine()) {
            case SUM -> new Sum(base.orElse(BigDecimal.ZERO), stats);
            case PERCENT -> new Sum(BigDecimal.valueOf(100), stats).times(base.orElseThrow(UnsupportedOperationException::new).movePointLeft(2));
            default -> throw new UnsupportedOperationException(id);
        };
        BigDecimal effect = outfit.map(worn -> worn.effects().getOrDefault(id, BigDecimal.ZERO)).orElse(BigDecimal.ZERO);
        return total.times(BigDecimal.ONE.add(effect.movePointLeft(2)));
    }

    private static BigDecimal figure(Map<String, Stat> stats, String attribute) {
        return Optional.ofNullable(stats.get(attribute)).map(Stat::value).orElse(BigDecimal.ZERO);
    }

    /** Σ weight × total, the sign turned where lower is better. */
    Sum benefit(Lens lens, boolean loaded) {
        Sum benefit = new Sum(BigDecimal.ZERO, Map.of());
        for (Map.Entry<String, BigDecimal> weight : lens.weights().entrySet()) {
            boolean lower = catalog.attributes().get(weight.getKey()).better() == Attribute.Better.LOWER;
            benefit = benefit.plus(total(weight.getKey(), loaded).times(lower ? weight.getValue().negate() : weight.getValue()));
        }
        return benefit;
    }

    /** What a part costs where these vendors' tiers are open, or all; empty where nobody sells it. */
    Optional<BigDecimal> cost(String part, Optional<Map<String, Integer>> open) {
        return catalog.offers().stream().filter(offer -> offer.part().equals(part))
                .filter(offer -> open.map(vendors -> vendors.containsKey(offer.vendor()) && offer.tier() <= vendors.get(offer.vendor())).orElse(true))
                .map(this::price).min(BigDecimal::compareTo);
    }

    private BigDecimal price(Offer offer) {
        BigDecimal price = offer.price().map(amount -> amount.multiply(catalog.currencies().get(offer.currency()).rate()))
                .orElseGet(() -> offer.barter().stream().map(item -> item.count().multiply(catalog.goods().get(item.good()).value()))
                        .reduce(BigDecimal.ZERO, BigDecimal::add));
        return price.setScale(2, RoundingMode.HALF_UP);
    }
}

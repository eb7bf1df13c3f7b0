package fettle.catalog;

import fettle.document.Origin;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;

/**
 * A way to buy a part.
 *
 * @param tier the standing tier asked, 0 where none is written
 * @param tiered whether a tier other than 0 is written
 * @param price the price in {@code currency}; empty where goods are bartered
 * @param currency the currency's id; the catalog's base currency where none is written
 * @param seen ISO date
 */
public record Offer(
        String part,
        String vendor,
        int tier,
        boolean tiered,
        Optional<BigDecimal> price,
        String currency,
        List<Barter> barter,
        Optional<String> seen,
        Origin origin)
        implements Fact {

    /** Where it is had: the vendor, and the tier where one is asked. */
    public String place() {
        return vendor + (tier > 0 ? " tier " + tier : "");
    }

    /** Whether goods are asked, not money. */
    public boolean bartered() {
        return price.isEmpty();
    }

    /** How findings name it. */
    public String subject() {
        return "offer:" + part + "@" + vendor + (tier > 0 ? ":" + tier : "") + (barter.isEmpty() ? "" : ":barter");
    }
}

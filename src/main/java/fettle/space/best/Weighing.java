package fettle.space.best;

import fettle.catalog.Attribute;
import fettle.catalog.Catalog;
import fettle.catalog.Lens;
import fettle.catalog.Outfit;
import fettle.space.Totals;
import java.math.BigDecimal;
import java.util.Map;
import java.util.Optional;

/** Weighs totals by a lens, an outfit worn. */
public record Weighing(Catalog catalog, Lens lens, Optional<Outfit> outfit) {

    /** Σ weight × total of totals without an outfit, the sign turned for {@code better: lower}; a total that is missing adds nothing. */
    public BigDecimal benefit(Map<String, BigDecimal> totals) {
        BigDecimal benefit = BigDecimal.ZERO;
        for (Attribute attribute : catalog.attributes().values()) {
            BigDecimal weight = lens.weights().get(attribute.id());
            BigDecimal total = totals.get(attribute.id());
            if (weight != null && total != null) {
                BigDecimal worn = outfit.map(outfit -> Totals.dressed(total, outfit, attribute.id())).orElse(total);
                BigDecimal weighed = weight.multiply(worn);
                benefit = attribute.better() == Attribute.Better.LOWER ? benefit.subtract(weighed) : benefit.add(weighed);
            }
        }
        return benefit;
    }
}

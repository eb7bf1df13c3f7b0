package fettle.space.worth;

import fettle.catalog.Attribute;
import java.util.Optional;

/**
 * One entry by which assemblies are compared.
 *
 * @param attribute the attribute; empty for cost
 * @param loaded whether it is about the stats that count only when loaded
 */
public record Column(Optional<Attribute> attribute, boolean loaded) {

    /** What an assembly costs. */
    public static final Column COST = new Column(Optional.empty(), false);

    /** Whether a greater contribution is better. */
    public boolean higher() {
        return attribute.map(found -> found.better() == Attribute.Better.HIGHER).orElse(false);
    }

    /** How contributions of parts combine. */
    public Attribute.Combine combine() {
        return attribute.map(Attribute::combine).orElse(Attribute.Combine.SUM);
    }

    /** Whether contributions add up, so that what is gained is gained whatever else is there. */
    boolean adds() {
        return combine() == Attribute.Combine.SUM || combine() == Attribute.Combine.PERCENT;
    }
}

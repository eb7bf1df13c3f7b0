package fettle.catalog;

import fettle.document.Origin;
import java.math.BigDecimal;

/** A figure that builds are measured by. */
public record Attribute(
        String id, String label, String unit, Better better, Combine combine, int decimals, int shown, BigDecimal material, Origin origin)
        implements Fact {

    /** The places that data may use where the attribute doesn't say. */
    static final int MOST_DECIMALS = 6;

    /** Which direction serves the player. */
    public enum Better { HIGHER, LOWER, NONE }

    /** How the stats of the placed parts make up the total; see {@code Totals}. */
    public enum Combine { SUM, PERCENT, PRODUCT, MAX, MIN }

    /** Whether parts change a platform's base value by percentages, so that there is no total without one. */
    public boolean basedOnPlatform() {
        return combine == Combine.PERCENT || combine == Combine.PRODUCT;
    }

    /** Whether there is no total on a platform, since that states no base value. */
    public boolean baseless(Part platform) {
        return basedOnPlatform() && !platform.stats().containsKey(id);
    }

    /** Whether what parts bring adds up, so that each counts for as much whatever else is there; only such attributes are weighed in a value ladder. */
    public boolean addsUp() {
        return combine == Combine.SUM || combine == Combine.PERCENT;
    }

    /** Whether one part alone makes up the total: the one with the greatest value, or the least. */
    public boolean ofOneAlone() {
        return combine == Combine.MAX || combine == Combine.MIN;
    }

    /**
     * Whether no value is worse than any; otherwise it is better than any. Only where the greatest or the least counts can there be no value though others have one.
     */
    public boolean worstWithoutValue() {
        return combine == Combine.MAX && better == Better.HIGHER || combine == Combine.MIN && better == Better.LOWER;
    }

    /** As a lens sees it that weighs it: where neither direction is better by itself, more counts as better. */
    public Attribute weighed() {
        return better == Better.NONE ? new Attribute(id, label, unit, Better.HIGHER, combine, decimals, shown, material, origin) : this;
    }

    /** The least by which two figures can differ. */
    public BigDecimal step() {
        return BigDecimal.ONE.movePointLeft(decimals);
    }
}

package fettle.catalog;

import fettle.document.Origin;
import java.math.BigDecimal;

/** One figure of a part; {@code loaded} when it counts only in a loaded build. */
public record Stat(String part, String attribute, BigDecimal value, boolean loaded, Origin origin) implements Fact {

    /** The places behind the decimal point that the value needs. */
    public int places() {
        return Math.max(0, value.stripTrailingZeros().scale());
    }
}

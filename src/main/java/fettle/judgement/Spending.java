package fettle.judgement;

import fettle.catalog.Build;
import java.math.BigDecimal;

/** What a build costs, and what it may cost, in base currency. */
public record Spending(Build build, BigDecimal cost, BigDecimal budget) {

    /** By how much it costs more than it may; negative where it costs less. */
    public BigDecimal excess() {
        return cost.subtract(budget);
    }
}

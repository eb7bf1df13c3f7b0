package fettle.space;

import fettle.catalog.SlotId;
import java.math.BigDecimal;
import java.util.Collection;
import java.util.List;
import java.util.Optional;

/**
 * That a part's best assembly in slots that hold the same lies between two rungs: for its price a mix of these two gives more.
 *
 * @param lens the id of the lens that tells what is given
 * @param slots the slots, in order
 * @param shown the part's cheapest assembly that nothing cheaper betters
 * @param lower the nearest rung that costs less
 * @param upper the nearest rung that costs more
 */
public record BetweenRungs(String lens, List<SlotId> slots, Offer shown, Offer lower, Offer upper) implements Computed {

    public BetweenRungs {
        slots = List.copyOf(slots);
    }

    /** The same in these slots. */
    public BetweenRungs in(Collection<SlotId> others) {
        return new BetweenRungs(lens, List.copyOf(others), shown, lower, upper);
    }

    /**
     * What an assembly costs and gives.
     *
     * @param assembly empty for the empty choice
     * @param cost in base currency
     * @param benefit as the lens counts
     */
    public record Offer(Optional<Assembly> assembly, BigDecimal cost, BigDecimal benefit) {}

    /** What each point costs on the way from the lower rung to what is shown. */
    public Fraction stepTo() {
        return step(lower, shown);
    }

    /** What each point costs on the way from the lower rung to the upper one. */
    public Fraction stepPast() {
        return step(lower, upper);
    }

    private static Fraction step(Offer from, Offer to) {
        return Fraction.of(to.cost.subtract(from.cost)).over(Fraction.of(to.benefit.subtract(from.benefit)));
    }
}

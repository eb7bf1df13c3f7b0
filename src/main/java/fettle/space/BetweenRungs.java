package fettle.space;

import fettle.catalog.SlotId;
import java.math.BigDecimal;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.stream.Collectors;

/**
 * That a part's best assembly in slots that hold the same lies between two rungs: for its price a mix of these two gives more.
 *
 * @param lens the id of the lens that tells what is given
 * @param platforms by slot, the platforms on which that is so
 * @param divided those of the slots of which something else is to be said on other platforms
 * @param shown the part's cheapest assembly that nothing cheaper betters
 * @param lower the nearest rung that costs less
 * @param upper the nearest rung that costs more
 */
public record BetweenRungs(String lens, SortedMap<SlotId, SortedSet<String>> platforms, Set<SlotId> divided, Offer shown, Offer lower, Offer upper) implements Computed {

    public BetweenRungs {
        platforms = Collections.unmodifiableSortedMap(new TreeMap<>(platforms));
        divided = Set.copyOf(divided);
    }

    /** The slots, in order. */
    public List<SlotId> slots() {
        return List.copyOf(platforms.keySet());
    }

    /** The same in these slots, of which some are divided between it and others. */
    public BetweenRungs in(SortedMap<SlotId, SortedSet<String>> others, Set<SlotId> some) {
        return new BetweenRungs(lens, others, some.stream().filter(others::containsKey).collect(Collectors.toSet()), shown, lower, upper);
    }

    /**
     * What an assembly costs and gives.
     *
     * @param assembly empty for the empty choice
     * @param cost in base currency
     * @param benefit as the lens counts
     */
    public record Offer(Optional<Assembly> assembly, BigDecimal cost, BigDecimal benefit) {
        // Written out, as in SlotId.
        @Override
        public boolean equals(Object other) {
            return other instanceof Offer that && assembly.equals(that.assembly) && cost.equals(that.cost) && benefit.equals(that.benefit);
        }

        @Override
        public int hashCode() {
            return 31 * (31 * assembly.hashCode() + cost.hashCode()) + benefit.hashCode();
        }
    }

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

    // Written out, as in SlotId.
    @Override
    public boolean equals(Object other) {
        return other instanceof BetweenRungs that && lens.equals(that.lens) && platforms.equals(that.platforms) && divided.equals(that.divided)
                && shown.equals(that.shown) && lower.equals(that.lower) && upper.equals(that.upper);
    }

    @Override
    public int hashCode() {
        return 31 * (31 * (31 * (31 * (31 * lens.hashCode() + platforms.hashCode()) + divided.hashCode()) + shown.hashCode()) + lower.hashCode()) + upper.hashCode();
    }
}

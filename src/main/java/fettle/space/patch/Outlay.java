package fettle.space.patch;

import fettle.space.Prices;
import java.math.BigDecimal;
import java.util.Collection;
import java.util.Comparator;
import java.util.Optional;
import java.util.Set;

/**
 * What a build comes to, so far as its parts are sold; those owned are at hand.
 *
 * @param unsold how many of the other parts no open offer sells
 * @param cost what the rest cost, in base currency
 */
record Outlay(int unsold, BigDecimal cost) implements Comparable<Outlay> {

    /** Where it isn't known what is sold: the same for every build. */
    static final Outlay UNKNOWN = new Outlay(0, BigDecimal.ZERO);

    private static final Comparator<Outlay> LEAST = Comparator.comparingInt(Outlay::unsold).thenComparing(Outlay::cost);

    /** For these parts, each as often as it comes. */
    static Outlay of(Collection<String> parts, Set<String> owned, Prices prices) {
        int unsold = 0;
        BigDecimal cost = BigDecimal.ZERO;
        for (String part : parts) {
            Optional<BigDecimal> price = owned.contains(part) ? Optional.of(BigDecimal.ZERO) : prices.cheapest(part).map(Prices.Priced::cost);
            unsold += price.isEmpty() ? 1 : 0;
            cost = cost.add(price.orElse(BigDecimal.ZERO));
        }
        return new Outlay(unsold, cost);
    }

    @Override
    public int compareTo(Outlay other) {
        return LEAST.compare(this, other);
    }

    /** What the whole costs; empty where some of it can't be had. */
    Optional<BigDecimal> whole() {
        return Optional.of(cost).filter(unused -> unsold == 0);
    }
}

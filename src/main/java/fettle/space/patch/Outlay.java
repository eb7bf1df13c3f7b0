package fettle.space.patch;

import fettle.space.Prices;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * What must be got to change a build: its own parts, and those owned, are at hand.
 *
 * @param unsold how many of the parts that must be got no open offer sells
 * @param cost what the others cost, in base currency
 */
record Outlay(int unsold, BigDecimal cost) implements Comparable<Outlay> {

    /** Where it isn't known what is sold: the same for every change. */
    static final Outlay UNKNOWN = new Outlay(0, BigDecimal.ZERO);

    private static final Comparator<Outlay> LEAST = Comparator.comparingInt(Outlay::unsold).thenComparing(Outlay::cost);

    /** For what the one has that the other has not, occurrence by occurrence. */
    static Outlay between(Collection<String> before, Collection<String> after, Set<String> owned, Prices prices) {
        List<String> missing = new ArrayList<>(after);
        before.forEach(missing::remove);
        missing.removeAll(owned);
        int unsold = 0;
        BigDecimal cost = BigDecimal.ZERO;
        for (String part : missing) {
            Optional<Prices.Priced> offer = prices.cheapest(part);
            unsold += offer.isEmpty() ? 1 : 0;
            cost = cost.add(offer.map(Prices.Priced::cost).orElse(BigDecimal.ZERO));
        }
        return new Outlay(unsold, cost);
    }

    @Override
    public int compareTo(Outlay other) {
        return LEAST.compare(this, other);
    }
}

package fettle.space.best;

import fettle.space.Prices;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** Works out what must be bought to change a build: its own parts, and those owned, cost nothing to keep. */
public record Shopping(Prices prices, Set<String> owned) {

    /** What the one has that the other has not, occurrence by occurrence; empty where some of it is unobtainable. */
    public Optional<List<Purchase>> between(Collection<String> before, Collection<String> after) {
        List<String> missing = new ArrayList<>(after);
        before.forEach(missing::remove);
        List<Purchase> purchases = new ArrayList<>();
        for (String part : missing.stream().sorted().toList()) {
            Optional<Prices.Priced> offer = owned.contains(part) ? Optional.empty() : prices.cheapest(part);
            if (offer.isEmpty() && !owned.contains(part)) {
                return Optional.empty();
            }
            purchases.add(new Purchase(part, offer));
        }
        return Optional.of(purchases);
    }

    /** What purchases cost. */
    public static BigDecimal price(Collection<Purchase> purchases) {
        return purchases.stream().flatMap(purchase -> purchase.offer().stream()).map(Prices.Priced::cost).reduce(BigDecimal.ZERO, BigDecimal::add);
    }

    boolean obtainable(String part) {
        return owned.contains(part) || prices.cheapest(part).isPresent();
    }
}

package fettle.space.best;

import fettle.space.Prices;
import java.util.Optional;

/**
 * A part that a change needs and the build does not have.
 *
 * @param offer where it is cheapest; empty where it is owned already
 */
public record Purchase(String part, Optional<Prices.Priced> offer) {}

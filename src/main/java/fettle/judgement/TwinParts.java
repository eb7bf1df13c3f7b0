package fettle.judgement;

import fettle.catalog.Offer;
import fettle.catalog.Part;
import fettle.space.Prices;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Two parts without slots that have the same figures and can stand in for each other in every slot that takes both, save where both may stand in it at once and neither
 * twice.
 *
 * @param slots those slots without such, in order
 * @param oneAt what the one is cheapest at; empty where nothing sells it
 * @param otherAt likewise the other
 */
public record TwinParts(Part one, Part other, List<String> slots, Optional<Prices.Priced> oneAt, Optional<Prices.Priced> otherAt) {

    public TwinParts {
        slots = List.copyOf(slots);
    }

    /** The cheaper of the two, or the only one that is sold; empty where they cost the same, or neither is sold. */
    public Optional<String> cheaper() {
        if (oneAt.isEmpty() || otherAt.isEmpty()) {
            return oneAt.map(unused -> one.id()).or(() -> otherAt.map(unused -> other.id()));
        }
        int order = oneAt.get().cost().compareTo(otherAt.get().cost());
        return order == 0 ? Optional.empty() : Optional.of(order < 0 ? one.id() : other.id());
    }

    /** By how much it is, in base currency; empty where only one is sold. */
    public Optional<BigDecimal> saved() {
        return oneAt.flatMap(price -> otherAt.map(rival -> price.cost().subtract(rival.cost()).abs())).filter(saved -> saved.signum() > 0);
    }

    /** The one that is not sold, where the other is. */
    public Optional<String> unsold() {
        return oneAt.isPresent() == otherAt.isPresent() ? Optional.empty() : Optional.of(oneAt.isPresent() ? other.id() : one.id());
    }

    /** The offers at which each is cheapest. */
    public List<Offer> offers() {
        return Stream.of(oneAt, otherAt).flatMap(Optional::stream).map(Prices.Priced::offer).toList();
    }
}

package fettle.space.best;

import fettle.space.BuildResult;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;

/**
 * One build made into another.
 *
 * @param after what it becomes
 * @param shares what each difference contributes
 * @param buy what must be bought, or is owned; empty where some of it is unobtainable
 * @param price what must be paid for it, in base currency
 * @param notchesDropped paths of the one at which a notch is stated that the other must do without
 */
public record Change(BuildResult after, List<Share> shares, Optional<List<Purchase>> buy, BigDecimal price, List<String> notchesDropped) {

    public Change {
        notchesDropped = List.copyOf(notchesDropped);
        shares = List.copyOf(shares);
        buy = buy.map(List::copyOf);
    }
}

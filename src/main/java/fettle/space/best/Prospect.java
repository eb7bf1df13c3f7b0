package fettle.space.best;

import java.math.BigDecimal;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.function.Function;

/**
 * A swap as far as it can be thought out without trying it, which costs little beside a trial: what it would come to if it gave a valid build. Whether it does is found
 * out when first asked, by whichever thread asks.
 */
public final class Prospect {

    /** The most gain first, then the lowest price. */
    static final Comparator<Prospect> BEST_FIRST = Comparator.comparing(Prospect::gain).reversed()
            .thenComparing(Prospect::price).thenComparing(Prospect::path).thenComparing(prospect -> prospect.to().toString());

    private final String path;
    private final SortedMap<String, String> from;
    private final SortedMap<String, String> to;
    private final SortedMap<String, BigDecimal> totals;
    private final BigDecimal benefit;
    private final BigDecimal gain;
    private final List<Purchase> buy;
    private final BigDecimal price;
    private final List<String> carried;
    private final List<String> lost;
    private final List<String> rolesLost;
    private final List<String> rolesElsewhere;
    private final Function<Prospect, Optional<Swap>> trial;
    private Optional<Swap> tried;

    Prospect(String path, SortedMap<String, String> from, SortedMap<String, String> to, SortedMap<String, BigDecimal> totals, BigDecimal benefit, BigDecimal gain,
            List<Purchase> buy, List<String> carried, List<String> lost, List<String> rolesLost, List<String> rolesElsewhere,
            Function<Prospect, Optional<Swap>> trial) {
        this.path = path;
        this.from = Collections.unmodifiableSortedMap(from);
        this.to = Collections.unmodifiableSortedMap(to);
        this.totals = totals;
        this.benefit = benefit;
        this.gain = gain;
        this.buy = List.copyOf(buy);
        this.price = Shopping.price(buy);
        this.carried = List.copyOf(carried);
        this.lost = List.copyOf(lost);
        this.rolesLost = List.copyOf(rolesLost);
        this.rolesElsewhere = List.copyOf(rolesElsewhere);
        this.trial = trial;
    }

    /** Where, with the position in a slot that holds several. */
    public String path() {
        return path;
    }

    /** What is there, by path within the place: {@code ""} is the head; nothing where it is empty. */
    public SortedMap<String, String> from() {
        return from;
    }

    /** What would be there. */
    public SortedMap<String, String> to() {
        return to;
    }

    /** The totals of the build with the swap made. */
    public SortedMap<String, BigDecimal> totals() {
        return totals;
    }

    /** Σ weight × total of that build. */
    public BigDecimal benefit() {
        return benefit;
    }

    /** How much higher that is than before. */
    public BigDecimal gain() {
        return gain;
    }

    /** What must be bought, or is owned, in order of the ids. */
    public List<Purchase> buy() {
        return buy;
    }

    /** What must be paid for that, in base currency. */
    public BigDecimal price() {
        return price;
    }

    /** The paths, in the build as it is, of what hung on the old assembly and hangs on the new one. */
    public List<String> carried() {
        return carried;
    }

    /** The paths of what no longer has a place. */
    public List<String> lost() {
        return lost;
    }

    /** Role kinds of which the build has a part now and would have none. */
    public List<String> rolesLost() {
        return rolesLost;
    }

    /** Role kinds of which the place has a part now and would have none, while another place of the build has one. */
    public List<String> rolesElsewhere() {
        return rolesElsewhere;
    }

    /** The swap; empty where it gives no valid build. */
    public synchronized Optional<Swap> tried() {
        if (tried == null) {
            tried = trial.apply(this);
        }
        return tried;
    }
}

package fettle.space;

import fettle.catalog.Catalog;
import fettle.catalog.Stat;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Stream;

/**
 * A figure that lies outside the range of all others of its group.
 *
 * @param group the parts that it is compared with
 * @param least the least of the others
 * @param most the greatest of the others
 * @param peers how many others there are
 * @param median of the group, with this figure
 * @param spread the group's median distance from its median, with this figure
 * @param score how many spreads the figure lies from the median, times 0.6745; rounded down to six places, 0 where there is no spread
 */
public record Outlier(Stat stat, String group, Stat least, Stat most, int peers, BigDecimal median, BigDecimal spread, BigDecimal score) {

    /** Scales the median distance to the standard deviation, for figures that spread like a bell curve; Iglewicz and Hoaglin 1993. */
    private static final BigDecimal TO_STANDARD = new BigDecimal("0.6745");

    private static final int PLACES = 6;

    private static final List<Integer> FACTORS = List.of(10, 100, 1000);

    /** Every figure outside the range of its others, where there are others. */
    static List<Outlier> of(Catalog catalog) {
        List<Outlier> found = new ArrayList<>();
        for (Peers peers : Peers.of(catalog)) {
            List<Stat> stats = peers.stats();
            int last = stats.size() - 1;
            if (last >= 1 && stats.get(0).value().compareTo(stats.get(1).value()) < 0) {
                found.add(of(peers, stats.get(0), stats.subList(1, last + 1)));
            }
            if (last >= 1 && stats.get(last).value().compareTo(stats.get(last - 1).value()) > 0) {
                found.add(of(peers, stats.get(last), stats.subList(0, last)));
            }
        }
        return found;
    }

    private static Outlier of(Peers peers, Stat stat, List<Stat> others) {
        BigDecimal median = peers.median();
        BigDecimal spread = peers.spread();
        BigDecimal distance = stat.value().subtract(median).abs();
        BigDecimal score = spread.signum() == 0 ? BigDecimal.ZERO : TO_STANDARD.multiply(distance).divide(spread, PLACES, RoundingMode.DOWN);
        return new Outlier(stat, peers.group(), others.get(0), others.get(others.size() - 1), others.size(), median, spread, score);
    }

    /** How far the figure lies outside the others' range. */
    public BigDecimal gap() {
        return stat.value().compareTo(least.value()) < 0 ? least.value().subtract(stat.value()) : stat.value().subtract(most.value());
    }

    /** How wide the others' range is. */
    public BigDecimal width() {
        return most.value().subtract(least.value());
    }

    /** Whether all others have one sign, the figure has the other, and would lie among them with theirs. */
    public boolean mirrored() {
        return least.value().signum() == most.value().signum() && least.value().signum() * stat.value().signum() < 0 && among(stat.value().negate());
    }

    /** The figure with its decimal point moved by one, two or three places so that it lies among the others; empty where none does. */
    public Optional<BigDecimal> shifted() {
        return moved(this::among);
    }

    /** Whether there is such a move. */
    public boolean movable() {
        return shifted().isPresent();
    }

    /**
     * The figure with its decimal point moved by one, two or three places so that it lies just beyond the others, as that of the greatest or the smallest part of a kind
     * does: by no more than a quarter of their width, and of the nearest of them; empty where none does.
     */
    public Optional<BigDecimal> settled() {
        BigDecimal below = least.value().subtract(quarter(least.value()));
        BigDecimal above = most.value().add(quarter(most.value()));
        return moved(value -> !among(value) && value.compareTo(below) >= 0 && value.compareTo(above) <= 0);
    }

    /** Whether there is such a move. */
    public boolean settling() {
        return settled().isPresent();
    }

    private Optional<BigDecimal> moved(Predicate<BigDecimal> home) {
        return stat.value().signum() == 0
                ? Optional.empty()
                : FACTORS.stream().flatMap(factor -> Stream.of(stat.value().multiply(BigDecimal.valueOf(factor)), quotient(factor))).filter(home).findFirst();
    }

    private BigDecimal quarter(BigDecimal nearest) {
        return width().min(nearest.abs()).multiply(new BigDecimal("0.25"));
    }

    /** Whether the others have one sign, and the greatest of them is at most ten times as great as the smallest. */
    public boolean alike() {
        BigDecimal one = least.value().abs();
        BigDecimal other = most.value().abs();
        return least.value().signum() * most.value().signum() > 0 && one.max(other).compareTo(one.min(other).multiply(BigDecimal.TEN)) <= 0;
    }

    /** The figure with the other sign. */
    public BigDecimal negated() {
        return stat.value().negate();
    }

    private BigDecimal quotient(int factor) {
        return stat.value().divide(BigDecimal.valueOf(factor));
    }

    private boolean among(BigDecimal value) {
        return value.compareTo(least.value()) >= 0 && value.compareTo(most.value()) <= 0;
    }

    /**
     * How many times as great as the greatest of the others the figure is, or as small as the smallest, by size without sign; rounded down to
     * six places, 0 where the others or the figure have several signs or none.
     */
    public BigDecimal times() {
        int sign = stat.value().signum();
        if (sign == 0 || least.value().signum() != sign || most.value().signum() != sign) {
            return BigDecimal.ZERO;
        }
        BigDecimal size = stat.value().abs();
        BigDecimal greatest = least.value().abs().max(most.value().abs());
        BigDecimal smallest = least.value().abs().min(most.value().abs());
        return size.compareTo(greatest) > 0
                ? size.divide(greatest, PLACES, RoundingMode.DOWN)
                : smallest.divide(size, PLACES, RoundingMode.DOWN);
    }
}

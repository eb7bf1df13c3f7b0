package fettle.space.best;

import fettle.catalog.Attribute;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A total, of those in which more or less is better, that another build has otherwise.
 *
 * @param attribute as the lens sees it
 * @param before what it is; empty where it has no value, which only one of the two builds lacks
 * @param after what it would be, likewise
 */
public record Turn(Attribute attribute, Optional<BigDecimal> before, Optional<BigDecimal> after) {

    /** The totals that differ, in order of the attributes' ids. */
    public static List<Turn> between(Weighing weighing, Map<String, BigDecimal> before, Map<String, BigDecimal> after) {
        List<Turn> turns = new ArrayList<>();
        for (Attribute written : weighing.catalog().attributes().values()) {
            Attribute attribute = weighing.lens().weights().containsKey(written.id()) ? written.weighed() : written;
            Turn turn = new Turn(attribute, Optional.ofNullable(before.get(attribute.id())), Optional.ofNullable(after.get(attribute.id())));
            if (attribute.better() != Attribute.Better.NONE && turn.differs()) {
                turns.add(turn);
            }
        }
        turns.sort(Comparator.comparing(turn -> turn.attribute().id()));
        return turns;
    }

    private boolean differs() {
        return oneSided() ? before.isPresent() || after.isPresent() : by().signum() != 0;
    }

    private boolean oneSided() {
        return before.isEmpty() || after.isEmpty();
    }

    private BigDecimal by() {
        return after.orElseThrow().subtract(before.orElseThrow());
    }

    /** Whether the total gets better; where it doesn't, it gets worse. */
    public boolean better() {
        if (oneSided()) {
            return attribute.worstWithoutValue() == before.isEmpty();
        }
        return by().signum() > 0 == (attribute.better() == Attribute.Better.HIGHER);
    }

    /** By how much the two differ, as a positive amount; empty where only one has a value. */
    public Optional<BigDecimal> size() {
        return oneSided() ? Optional.empty() : Optional.of(by().abs());
    }

    /** What tells one from another of the same attribute: findings that are alike in all else are put in order by it. */
    @Override
    public String toString() {
        return size().map(BigDecimal::toString).orElseGet(() -> before + " to " + after);
    }

    /** Whether the two differ by at least what matters. Having no value differs from any value by more than an amount can tell. */
    public boolean matters() {
        return size().map(size -> size.compareTo(attribute.material()) >= 0).orElse(true);
    }
}

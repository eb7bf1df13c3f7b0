package fettle.catalog;

import fettle.document.Origin;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;

/**
 * A bound on an attribute's total.
 *
 * @param near a margin below this is close; empty where not given
 * @param severity {@code error} or {@code warning}
 */
public record Limit(
        String id,
        String label,
        String attribute,
        Side side,
        Bound bound,
        boolean loaded,
        Optional<BigDecimal> near,
        String severity,
        Origin origin)
        implements Fact {

    /** The attribute that the bound follows; empty where it is fixed. */
    public Optional<String> by() {
        return bound instanceof Table table ? Optional.of(table.by()) : Optional.empty();
    }

    /** Whether it is an error not to keep it. */
    public boolean grave() {
        return severity.equals("error");
    }

    /** Which side of the bound is allowed; the bound itself is. */
    public enum Side {
        AT_LEAST,
        AT_MOST;

        /** {@code at least} or {@code at most}. */
        public String words() {
            return this == AT_LEAST ? "at least" : "at most";
        }
    }

    /** A fixed value, or one that follows another attribute. */
    public sealed interface Bound {}

    /** The same value whatever the build. */
    public record Fixed(BigDecimal value) implements Bound {}

    /** Straight lines between points, flat beyond the ends; x rises strictly. */
    public record Table(String by, List<Point> points) implements Bound {}

    /** One point of a table. */
    public record Point(BigDecimal x, BigDecimal y) {}
}

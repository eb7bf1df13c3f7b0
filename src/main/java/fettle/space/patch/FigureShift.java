package fettle.space.patch;

import fettle.space.Change;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;

/**
 * A figure of a build that a patch moved.
 *
 * @param figure an attribute's id, or {@link #COST}
 * @param from empty where it had no value, or could not be had
 * @param to empty where it has none now
 * @param blame the differences that moved it: undoing them gives the old figure back, and none can be left out
 */
public record FigureShift(String figure, Optional<BigDecimal> from, Optional<BigDecimal> to, List<Change> blame) {

    /** Names the cost; no attribute has such an id. */
    public static final String COST = "(cost)";

    public FigureShift {
        blame = List.copyOf(blame);
    }

    /** Whether it is the cost. */
    public boolean cost() {
        return figure.equals(COST);
    }
}

package fettle.space;

import fettle.catalog.Limit;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;

/**
 * How the valid builds of all platforms stand to a limit, without an outfit.
 *
 * @param keptBy which of them keep it
 * @param platforms the platforms that have valid builds, in order
 * @param nearest of a limit with a fixed bound: the total that comes nearest to being kept, or to being broken; empty where none has a total, or where both
 *     sorts of builds are there
 * @param where the platform of that total
 * @param undecided why it was left open, where it was
 */
public record LimitVerdict(
        Limit limit, KeptBy keptBy, List<String> platforms, Optional<BigDecimal> nearest, Optional<String> where, Optional<Undecided> undecided) {

    /** How many of the valid builds keep a limit. */
    public enum KeptBy { NONE, SOME, ALL, OPEN }

    public LimitVerdict {
        platforms = List.copyOf(platforms);
    }
}

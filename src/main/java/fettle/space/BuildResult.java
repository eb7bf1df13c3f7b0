package fettle.space;

import fettle.catalog.Build;
import fettle.catalog.Part;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;

/**
 * All that is computed about one build.
 *
 * @param placement empty where the platform is unknown
 * @param valid whether it is resolved in full and breaks no relation
 * @param totals as the build says loaded or not, without outfit; of what could be resolved
 * @param cost in base currency; empty where a part is unobtainable
 * @param unobtainable the placed parts, once each, that no open offer sells
 * @param limits as the limit says loaded or not, with the build's outfit worn
 */
public record BuildResult(
        Build build,
        Optional<Placement> placement,
        List<Violation> violations,
        boolean valid,
        SortedMap<String, BigDecimal> totals,
        Optional<BigDecimal> cost,
        List<Part> unobtainable,
        List<LimitMargin> limits) {

    /** Whether all of its parts could be placed. */
    public boolean resolved() {
        return placement.filter(known -> known.unresolved().isEmpty()).isPresent();
    }
}

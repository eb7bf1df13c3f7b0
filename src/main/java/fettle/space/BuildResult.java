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
 * @param cost in base currency; empty where a part is unobtainable, and where it isn't known: where not all parts could be placed, the build names
 *     an access profile that the catalog doesn't have, or nobody knows what a part costs
 * @param obtainable what those of its placed parts cost that are owned or can be bought, in base currency; nothing where it isn't known which offers are open
 * @param unobtainable the placed parts, once each, that no open offer sells; none where it isn't known which offers are open
 * @param unpriced the placed parts, once each, that are offered only in a currency, for goods or by a vendor that the catalog doesn't have
 * @param limits as the limit says loaded or not, with the build's outfit worn
 */
public record BuildResult(
        Build build,
        Optional<Placement> placement,
        List<Violation> violations,
        boolean valid,
        SortedMap<String, BigDecimal> totals,
        Optional<BigDecimal> cost,
        BigDecimal obtainable,
        List<Part> unobtainable,
        List<Part> unpriced,
        List<LimitMargin> limits) {

    /** Whether it is known what it costs, or that it can't be had whole. */
    public boolean priced() {
        return cost.isPresent() || !unobtainable.isEmpty();
    }

    /** Whether all of its parts could be placed. */
    public boolean resolved() {
        return placement.filter(known -> known.unresolved().isEmpty()).isPresent();
    }
}

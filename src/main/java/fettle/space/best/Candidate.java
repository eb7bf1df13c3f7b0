package fettle.space.best;

import java.math.BigDecimal;
import java.util.List;

/**
 * A build that satisfies the demands.
 *
 * @param cost in units of the cost column
 * @param changed how many paths differ from the build before
 * @param list its sorted list of path=part
 */
record Candidate(BigDecimal benefit, long cost, long changed, Arrangement arrangement, List<String> list) {

    /** Whether it is to be preferred: higher benefit, then lower cost, then fewer changed paths, then the smaller list. */
    boolean beats(Candidate other) {
        int order = other.benefit.compareTo(benefit);
        order = order != 0 ? order : Long.compare(cost, other.cost);
        order = order != 0 ? order : Long.compare(changed, other.changed);
        order = order != 0 ? order : Arrangement.LISTS.compare(list, other.list);
        return order < 0;
    }
}

package fettle.space.best;

import java.math.BigDecimal;
import java.util.Collections;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * What one of the differences between two builds contributes to the change: counted in the order of the paths, each on top of those before it, so that all
 * shares together are just the change.
 *
 * @param path where the builds differ
 * @param from what was there, by path within the place
 * @param to what is there
 * @param totals by attribute, its share in the change of the total
 * @param benefit its share in the change of the benefit
 */
public record Share(String path, SortedMap<String, String> from, SortedMap<String, String> to, SortedMap<String, BigDecimal> totals, BigDecimal benefit) {

    public Share {
        from = Collections.unmodifiableSortedMap(new TreeMap<>(from));
        to = Collections.unmodifiableSortedMap(new TreeMap<>(to));
        totals = Collections.unmodifiableSortedMap(new TreeMap<>(totals));
    }
}

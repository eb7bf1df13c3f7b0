package fettle.space;

import fettle.catalog.Fact;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.Collections;

/**
 * A relation that a build breaks.
 *
 * @param rule the rule that derived the relation
 * @param parts the placed parts that break it, as numbers in the placement; {@link Placement#PLATFORM} for the platform
 * @param slots the slots concerned, as numbers in the placement
 * @param because the catalog entries that the relation was derived from, and those that make these things subject to it
 * @param data values by name
 */
public record Violation(String rule, List<Integer> parts, List<Integer> slots, List<Fact> because, SortedMap<String, Object> data)
        implements Computed {

    public Violation {
        parts = List.copyOf(parts);
        slots = List.copyOf(slots);
        because = List.copyOf(because);
        data = Collections.unmodifiableSortedMap(new TreeMap<>(data));
    }
}

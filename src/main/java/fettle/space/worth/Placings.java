package fettle.space.worth;

import fettle.space.Undecided;
import java.util.Collections;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * How a part stands in all slots that can hold it.
 *
 * @param known slot by slot, by platform, then by host and slot
 * @param open by platform, why nothing is known of the slots of its builds
 */
public record Placings(List<Placing> known, SortedMap<String, Undecided> open) {

    /** Of nothing that was compared. */
    public static final Placings NONE = new Placings(List.of(), new TreeMap<>());

    public Placings {
        known = List.copyOf(known);
        open = Collections.unmodifiableSortedMap(new TreeMap<>(open));
    }
}

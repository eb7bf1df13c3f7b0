package fettle.space;

import fettle.document.Origin;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * One difference between two catalogs: an entry that only one of them has, or a property whose value differs.
 *
 * @param path the property's names from the entry inward, ids of slots and offers among them; empty for the entry as a whole
 * @param from the value in the old catalog; empty where it states none
 * @param to the value in the new catalog; empty where it states none
 * @param before where the old catalog states it
 * @param after where the new catalog states it
 */
public record Change(EntryName entry, List<String> path, Optional<Value> from, Optional<Value> to, Optional<Origin> before, Optional<Origin> after)
        implements Computed, Comparable<Change> {

    private static final Comparator<Change> ORDER = Comparator.comparing(Change::entry).thenComparing(Change::what);

    public Change {
        path = List.copyOf(path);
    }

    /** The property, such as {@code stats.kick}, {@code slots.rail.units} or {@code offers.harbour:2.price}; empty for the entry as a whole. */
    public String what() {
        return String.join(".", path);
    }

    /** Whether the entry as a whole is there on one side only. */
    public boolean whole() {
        return path.isEmpty();
    }

    /** The outermost property; empty for the entry as a whole. */
    public String property() {
        return path.isEmpty() ? "" : path.get(0);
    }

    /** Whether only the new catalog states it. */
    public boolean added() {
        return from.isEmpty();
    }

    /** Whether only the old catalog states it. */
    public boolean removed() {
        return to.isEmpty();
    }

    /** The same difference, seen from the new catalog. */
    public Change reversed() {
        return new Change(entry, path, to, from, after, before);
    }

    /** Where to look: in the new catalog, or where that states nothing, in the old one. */
    @Override
    public Optional<Origin> origin() {
        return after.or(() -> before);
    }

    @Override
    public int compareTo(Change other) {
        return ORDER.compare(this, other);
    }
}

package fettle.judgement;

import fettle.catalog.Entry;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * An id that several entries of one space have. To find them among all entries by comparing where each stands would take the square of their number.
 *
 * @param first the one that stands before the others
 */
public record SharedId(Entry first) {

    static List<SharedId> of(Collection<Entry> entries) {
        Map<List<String>, Entry> first = new LinkedHashMap<>();
        Map<List<String>, SharedId> shared = new LinkedHashMap<>();
        for (Entry entry : entries) {
            List<String> name = List.of(entry.space(), entry.id());
            Entry other = first.putIfAbsent(name, entry);
            if (other != null) {
                first.put(name, other.origin().compareTo(entry.origin()) <= 0 ? other : entry);
                shared.put(name, new SharedId(first.get(name)));
            }
        }
        return List.copyOf(shared.values());
    }
}

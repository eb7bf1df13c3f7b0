package fettle.catalog;

import java.util.Collections;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;

/** The sections of catalog documents, each a list of entries. */
public final class Sections {

    /** By section, the properties that an entry is known by, each a text. */
    static final SortedMap<String, List<String>> KNOWN_BY = knownBy();

    private Sections() {}

    private static SortedMap<String, List<String>> knownBy() {
        SortedMap<String, List<String>> sections = new TreeMap<>();
        List.of("attributes", "mounts", "kinds", "zones", "traits", "platforms", "parts", "constraints", "currencies", "vendors", "goods", "access", "outfits", "limits", "lenses")
                .forEach(section -> sections.put(section, List.of("id")));
        sections.put("offers", List.of("part", "vendor"));
        sections.put("waivers", List.of());
        return Collections.unmodifiableSortedMap(sections);
    }

    /** Whether a document's property of this name is a section. */
    public static boolean known(String name) {
        return KNOWN_BY.containsKey(name);
    }
}

package fettle.catalog;

import java.util.Map;

/** Words for one thing of a section: {@code part} for {@code parts}. */
public final class SectionNoun {

    private static final Map<String, String> IRREGULAR = Map.of(
            "currencies", "currency", "lenses", "lens", "access", "access");

    private SectionNoun() {}

    /** The word for one thing of a section; what has no plural ending is taken for the word itself. */
    public static String of(String section) {
        String irregular = IRREGULAR.get(section);
        return irregular != null ? irregular : section.endsWith("s") ? section.substring(0, section.length() - 1) : section;
    }
}

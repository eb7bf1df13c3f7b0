package fettle.space;

import java.util.Comparator;
import java.util.Map;

/** Names an entry of a catalog: the section that it stands in and its id there. Offers belong to the part that they sell. */
public record EntryName(String section, String id) implements Comparable<EntryName> {

    private static final Comparator<EntryName> ORDER = Comparator.comparing(EntryName::section).thenComparing(EntryName::id);
    private static final Map<String, String> IRREGULAR = Map.of("currencies", "currency", "access", "access", "lenses", "lens", "catalog", "catalog");

    /** A part of that id. */
    public static EntryName part(String id) {
        return new EntryName("parts", id);
    }

    /** A platform of that id. */
    public static EntryName platform(String id) {
        return new EntryName("platforms", id);
    }

    /** Whether it names a part or a platform, which share one space of ids. */
    public boolean host() {
        return section.equals("parts") || section.equals("platforms");
    }

    /** How findings name it, such as {@code part:x} or {@code currency:y}. */
    public String subject() {
        return IRREGULAR.getOrDefault(section, section.substring(0, section.length() - 1)) + ":" + id;
    }

    @Override
    public int compareTo(EntryName other) {
        return ORDER.compare(this, other);
    }
}

package fettle.space;

import fettle.catalog.SectionNoun;
import java.util.Comparator;

/** Names an entry of a catalog: the section that it stands in and its id there. Offers belong to the part that they sell. */
public record EntryName(String section, String id) implements Comparable<EntryName> {

    private static final Comparator<EntryName> ORDER = Comparator.comparing(EntryName::section).thenComparing(EntryName::id);

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
        return SectionNoun.of(section) + ":" + id;
    }

    @Override
    public int compareTo(EntryName other) {
        return ORDER.compare(this, other);
    }
}

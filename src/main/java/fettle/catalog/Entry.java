package fettle.catalog;

import fettle.document.Origin;

/**
 * An entry that has an id, in the section that it stands in.
 *
 * @param space within which ids are unique: the section, {@code parts} for parts and platforms alike, or {@code slots of HOST}
 */
public record Entry(String section, String space, String id, Origin origin) implements Fact {

    private static final String SLOTS_OF = "slots of ";

    /** A slot's entry. */
    static Entry ofSlot(String host, String slot, Origin origin) {
        return new Entry("slots", SLOTS_OF + host, slot, origin);
    }

    /** What sort of thing it is: {@code part}, {@code slot}, … */
    public String what() {
        return SectionNoun.of(section);
    }

    /** The same in words: {@code a part}, {@code an attribute}, … */
    public String one() {
        return ("aeiou".indexOf(what().charAt(0)) >= 0 ? "an " : "a ") + what();
    }

    /** How findings name it: {@code part:x}, {@code slot:host/slot}, … */
    public String subject() {
        return what() + ":" + (space.startsWith(SLOTS_OF) ? space.substring(SLOTS_OF.length()) + "/" : "") + id;
    }
}

package fettle.catalog;

import fettle.document.Origin;
import java.util.OptionalInt;

/**
 * One part of a build as written.
 *
 * @param path slot ids from the platform outward, joined by {@code /}, positions as {@code slot:n}
 * @param position its place in the slot's list, from 0
 * @param part the part that is to be there; empty where something is written that names none
 * @param at the first notch taken, where given
 */
public record BuildEntry(String path, int position, String part, OptionalInt at, Origin pathOrigin, Origin origin) implements Fact {

    /** Whether a part is named; where none is, the build has something there of which nobody knows what it is. */
    public boolean named() {
        return !part.isBlank();
    }
}

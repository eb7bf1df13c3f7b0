package fettle.space;

import java.util.List;

/**
 * Assemblies made from others by putting what was on their head onto another part.
 *
 * @param head the number of the other part
 * @param kept what is on it that was on the old head
 * @param dropped what was on the old head and is not on the other part
 * @param added what is on the other part and was not on the old head: the first use of each
 */
public record Rehung(int head, List<Held> kept, List<Held> dropped, List<Held> added) {

    public Rehung {
        kept = List.copyOf(kept);
        dropped = List.copyOf(dropped);
        added = List.copyOf(added);
    }
}

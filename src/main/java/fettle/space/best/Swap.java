package fettle.space.best;

import fettle.space.BuildResult;
import java.math.BigDecimal;
import java.util.Collections;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * Another assembly in one place of a build.
 *
 * @param path where, with the position in a slot that holds several
 * @param from what is there, by path within the place: {@code ""} is the head; nothing where it is empty
 * @param to what would be there
 * @param after the build with the swap made
 * @param benefit Σ weight × total of that build
 * @param gain how much higher that is than before
 * @param buy what must be bought, or is owned, in order of the ids
 * @param price what must be paid for that, in base currency
 * @param carried the paths, in the build as it is, of what hung on the old assembly and hangs on the new one
 * @param lost the paths of what no longer has a place
 * @param rolesLost role kinds of which the build has a part now and would have none
 * @param limitsBroken limits that hold now and would not
 */
public record Swap(
        String path, SortedMap<String, String> from, SortedMap<String, String> to, BuildResult after, BigDecimal benefit, BigDecimal gain,
        List<Purchase> buy, BigDecimal price, List<String> carried, List<String> lost,
        List<String> rolesLost, List<String> limitsBroken) {

    public Swap {
        from = Collections.unmodifiableSortedMap(new TreeMap<>(from));
        to = Collections.unmodifiableSortedMap(new TreeMap<>(to));
        buy = List.copyOf(buy);
        carried = List.copyOf(carried);
        lost = List.copyOf(lost);
        rolesLost = List.copyOf(rolesLost);
        limitsBroken = List.copyOf(limitsBroken);
    }

    /** Whether it serves all that the build serves now and breaks no limit that holds now. */
    public boolean sound() {
        return rolesLost.isEmpty() && limitsBroken.isEmpty();
    }
}

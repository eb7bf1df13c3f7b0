package fettle.space;

import java.util.Collections;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;

/** Whether something can be in a valid build of a platform: some parts together, a slot in use, or nothing in particular, which asks whether there is a build at all. */
public sealed interface Together {

    /** The platform's id. */
    String platform();

    /**
     * It can.
     *
     * @param parts a valid build that has it: the part at each path, where slots that can hold several name a position as in {@code rail:0/lens}
     */
    record Possible(String platform, SortedMap<String, String> parts) implements Together {

        public Possible {
            parts = Collections.unmodifiableSortedMap(new TreeMap<>(parts));
        }
    }

    /**
     * It can't.
     *
     * @param because why, in the order of the reasoning; none of these can be left out
     */
    record Impossible(String platform, List<Cause> because) implements Together {

        public Impossible {
            because = List.copyOf(because);
        }
    }

    /** The work was broken off. */
    record Open(String platform, Undecided undecided) implements Together {}
}

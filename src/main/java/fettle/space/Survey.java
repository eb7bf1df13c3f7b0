package fettle.space;

import fettle.catalog.SlotId;
import java.math.BigInteger;
import java.util.Collections;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;

/** What holds of all valid builds of a platform. */
public sealed interface Survey {

    /** The platform's id. */
    String platform();

    /** The parts to which a chain of fits leads from the platform. */
    SortedSet<String> reachable();

    /**
     * All of it, exactly.
     *
     * @param count how many different valid builds there are; 0 where the platform is void
     * @param dead reachable parts that are in no valid build
     * @param essential parts that are in every valid build; none where there is no build
     * @param deadSlots slots, of the platform and of reachable parts, in which no valid build holds a part
     * @param ranges by attribute; one that has no value in any valid build is left out
     */
    record Known(
            String platform,
            SortedSet<String> reachable,
            BigInteger count,
            SortedSet<String> dead,
            SortedSet<String> essential,
            SortedSet<SlotId> deadSlots,
            SortedMap<String, Range> ranges)
            implements Survey {

        public Known {
            reachable = Collections.unmodifiableSortedSet(new TreeSet<>(reachable));
            dead = Collections.unmodifiableSortedSet(new TreeSet<>(dead));
            essential = Collections.unmodifiableSortedSet(new TreeSet<>(essential));
            deadSlots = Collections.unmodifiableSortedSet(new TreeSet<>(deadSlots));
            ranges = Collections.unmodifiableSortedMap(new TreeMap<>(ranges));
        }

        /** Whether the platform is void. */
        public boolean isVoid() {
            return count.signum() == 0;
        }
    }

    /** The work was broken off. */
    record Open(String platform, SortedSet<String> reachable, Undecided undecided) implements Survey {

        public Open {
            reachable = Collections.unmodifiableSortedSet(new TreeSet<>(reachable));
        }
    }
}

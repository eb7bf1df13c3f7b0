package fettle.space.worth;

import fettle.space.worth.Lots.Lot;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.BiPredicate;

/** The ways in which what is in some slots of one head can be kept in slots of another: those of which the same is kept while the same is left to fill count once. */
final class Placements {

    /** In how many slots it is tried to keep what is there. */
    private static final int MOST_SLOTS = 6;

    static final int DROPPED = -1;

    private final List<Lot> own;
    private final List<Lot> theirs;
    private final BiPredicate<Lot, Lot> takes;
    private final int[] alike;
    private final Set<List<Integer>> known = new HashSet<>();
    private final List<int[]> all = new ArrayList<>();

    /**
     * The placements.
     *
     * @param takes whether the second, one of theirs, takes whatever is in the first, one of its own
     */
    Placements(List<Lot> own, List<Lot> theirs, BiPredicate<Lot, Lot> takes) {
        this.own = own;
        this.theirs = theirs;
        this.takes = takes;
        this.alike = new int[theirs.size()];
        for (int j = 0; j < alike.length; j++) {
            while (theirs.get(alike[j]).choices() != theirs.get(j).choices()) {
                alike[j]++;
            }
        }
        int[] none = new int[own.size()];
        Arrays.fill(none, DROPPED);
        from(0, none, new boolean[theirs.size()]);
    }

    /** By slot of the first head the place among those of the other that takes what is in it, or {@link #DROPPED}. */
    List<int[]> all() {
        return all;
    }

    private void from(int next, int[] places, boolean[] taken) {
        if (next == Math.min(places.length, MOST_SLOTS)) {
            if (known.add(sameness(places, taken))) {
                all.add(places.clone());
            }
            return;
        }
        for (int j = 0; j < taken.length; j++) {
            if (!taken[j] && takes.test(own.get(next), theirs.get(j))) {
                places[next] = j;
                taken[j] = true;
                from(next + 1, places, taken);
                places[next] = DROPPED;
                taken[j] = false;
            }
        }
        from(next + 1, places, taken);
    }

    /** What is kept, and what is left to fill. */
    private List<Integer> sameness(int[] places, boolean[] taken) {
        List<Integer> free = new ArrayList<>();
        for (int j = 0; j < taken.length; j++) {
            if (!taken[j]) {
                free.add(alike[j]);
            }
        }
        free.sort(null);
        for (int i = 0; i < places.length; i++) {
            if (places[i] != DROPPED) {
                free.add(theirs.size() + i);
            }
        }
        return free;
    }
}

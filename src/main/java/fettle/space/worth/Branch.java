package fettle.space.worth;

import fettle.space.Rehung;
import fettle.space.Stand;
import fettle.space.Swaps;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Some of what may be on a head, and what has been found out about it by whoever looked so far: what of another head serves it better, safe or not, or into which
 * parts it was split where nothing was found to serve all of it.
 */
final class Branch {

    /** How much that serves it is remembered. */
    private static final int MOST_SERVING = 8;

    private final Cluster[] box;
    private final List<Stand> stands;
    private final List<Rehung> serving = new ArrayList<>();
    private boolean settled;
    private int tried;
    private Swaps probed;
    private List<Branch> parts = List.of();

    /**
     * A branch.
     *
     * @param box by slot of the head what it may hold
     * @param stands where any of that stands
     */
    Branch(Cluster[] box, List<Stand> stands) {
        this.box = box;
        this.stands = stands;
        this.settled = stands.isEmpty();
    }

    Cluster[] box() {
        return box;
    }

    List<Stand> stands() {
        return stands;
    }

    /** Whether one choice is left in each slot. */
    boolean single() {
        return decided() == box.length;
    }

    /** In how many slots one choice is left. */
    int decided() {
        return (int) Arrays.stream(box).filter(Cluster::single).count();
    }

    /** Whether each assembly of it is dominated whatever stands around. */
    boolean settled() {
        return settled;
    }

    void settle() {
        settled = true;
        parts = List.of();
        serving.clear();
    }

    /** What serves all of it better where it may take its place, likeliest first. */
    List<Rehung> serving() {
        return serving;
    }

    /** Remembers what serves all of it better. */
    void served(Rehung by, boolean safe) {
        if (!serving.contains(by)) {
            if (serving.size() == MOST_SERVING) {
                serving.remove(MOST_SERVING - 1);
            }
            serving.add(safe ? 0 : serving.size(), by);
        }
    }

    /** In how many steps a try it was tried in vain to serve all of it; 0 where it was not. */
    int tried() {
        return tried;
    }

    void failed(int steps) {
        tried = steps;
    }

    /** Whether something in it that stands its ground was last sought, by way of what is extreme, where these swaps are allowed, and not found. */
    boolean probed(Swaps swaps) {
        return probed == swaps;
    }

    void probedInVain(Swaps swaps) {
        probed = swaps;
    }

    /** Branches that together are all of it, in the order in which they are to be gone through; none where it was not split. */
    List<Branch> parts() {
        return parts;
    }

    void split(List<Branch> into) {
        parts = List.copyOf(into);
    }
}

package fettle.space.worth;

import fettle.space.Contents;
import fettle.space.Contents.Known;
import fettle.space.Stand;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** All that stands in a slot and takes part in a comparison, gone through again and again for what may take the place of something else there. */
final class Rivals {

    /** Stands for any number of parts. */
    static final int ANY = Integer.MAX_VALUE;

    private final Contents contents;
    private final Measure measure;
    private final Arena arena;
    private final Stand[] stands;
    private final Yield[] ideals;
    /** Of each the fewest parts that an assembly has; 0 where not yet known. */
    private final int[] fewest;
    private final Map<Integer, Known[]> knownOf = new HashMap<>();

    Rivals(Contents contents, Arena arena) {
        this.contents = contents;
        this.arena = arena;
        this.measure = arena.measure();
        this.stands = contents.stands().stream().filter(stand -> arena.ideal(stand.node()) != null).toArray(Stand[]::new);
        this.ideals = new Yield[stands.length];
        for (int i = 0; i < stands.length; i++) {
            ideals[i] = arena.ideal(stands[i].node());
        }
        this.fewest = new int[stands.length];
    }

    Stand stand(int i) {
        return stands[i];
    }

    /** The first from a place on that may, with another head and so many parts, be better than a target; less than 0 where there is none. */
    int next(int from, int head, Yield target, int mostParts) {
        for (int i = from; i < stands.length; i++) {
            if (stands[i].head() != head && measure.compare(ideals[i], target) == Measure.Order.BETTER && (mostParts == ANY || fewest(i) <= mostParts)) {
                return i;
            }
        }
        return -1;
    }

    private int fewest(int i) {
        if (fewest[i] == 0) {
            fewest[i] = arena.fewestParts(stands[i].node());
        }
        return fewest[i];
    }

    /** What is known of putting these in the place of what may stand in several stands. */
    Facing facing(List<Stand> from) {
        Known[][] known = new Known[from.size()][];
        for (int i = 0; i < known.length; i++) {
            known[i] = knownOf.computeIfAbsent(from.get(i).node(), unused -> new Known[stands.length]);
        }
        return new Facing(from, known);
    }

    /** Lets go of what is known of swaps, which is much for all stands together. */
    void forget() {
        knownOf.clear();
    }

    /** What is known of the swaps, found out when it is asked for. */
    final class Facing {

        private final List<Stand> from;
        private final Known[][] known;

        private Facing(List<Stand> from, Known[][] known) {
            this.from = from;
            this.known = known;
        }

        Known known(int rival) {
            Known all = Known.SAFE;
            for (int i = 0; i < known.length && all != Known.UNSAFE; i++) {
                if (known[i][rival] == null) {
                    known[i][rival] = contents.known(from.get(i), stands[rival]);
                }
                all = known[i][rival] == Known.SAFE ? all : known[i][rival];
            }
            return all;
        }
    }
}

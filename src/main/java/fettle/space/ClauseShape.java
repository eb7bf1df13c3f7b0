package fettle.space;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * What clauses of one shape remember: how many of each sort of thing are placed, as far as that matters.
 *
 * @param when how many terms must be met
 * @param need whether something may be needed
 * @param apart whether they must be met by different things
 * @param wanted whether it counts as broken where it is kept, once there is a platform
 * @param things the sorts of things that can be placed, each a generator, in order
 */
record ClauseShape(int when, boolean need, boolean apart, boolean wanted, List<Bundle> things) {

    ClauseShape {
        things = List.copyOf(things);
    }

    /** More things of one sort than this make no difference: each term takes at most one, and so does the need. */
    static int enough(int when) {
        return when + 1;
    }

    /** The bit by which the platform is seen where a clause is wanted broken: after those of the terms and of the need. */
    static int platform(int when) {
        return 1 << when + 1;
    }

    /**
     * The states of such a clause.
     *
     * @throws TooLarge where there are more than {@code most} of them
     */
    Monoid states(int most) {
        if (apart) {
            int cap = enough(when);
            return Monoid.explore(
                    Collections.nCopies(things.size(), 0), things.size(), (counts, sort) -> counts.get(sort) == cap ? counts : oneMore(counts, sort),
                    counts -> verdict(wanted && there(counts), new Apart(counts).broken()), most);
        }
        int all = (1 << when) - 1;
        return Monoid.explore(
                0, things.size(), (seen, sort) -> seen | bits(things.get(sort)),
                seen -> verdict((seen & platform(when)) != 0, (seen & all) == all && (seen & 1 << when) == 0), most);
    }

    private boolean verdict(boolean there, boolean broken) {
        return wanted ? there && !broken : broken;
    }

    private boolean there(List<Integer> counts) {
        for (int sort = 0; sort < counts.size(); sort++) {
            if (counts.get(sort) > 0 && (bits(things.get(sort)) & platform(when)) != 0) {
                return true;
            }
        }
        return false;
    }

    private static List<Integer> oneMore(List<Integer> counts, int sort) {
        List<Integer> more = new ArrayList<>(counts);
        more.set(sort, counts.get(sort) + 1);
        return more;
    }

    private static int bits(Bundle bundle) {
        int bits = bundle.slot();
        for (int head : bundle.heads()) {
            bits |= head;
        }
        return bits;
    }

    /** Looks for a way to meet every term with different things such that nothing different from them all is left to answer the need. */
    private final class Apart {

        private static final int SLOT = -1;

        /** One thing: the sort of its bundle, the number of the bundle among those of the sort that were drawn on, and its place in it. */
        private record Thing(int sort, int copy, int place) {
            boolean different(Thing other) {
                return sort != other.sort || copy != other.copy || place != other.place && place != SLOT && other.place != SLOT;
            }
        }

        private final List<Integer> counts;
        private final Map<Integer, Integer> drawn = new HashMap<>();
        private final List<Thing> chosen = new ArrayList<>();

        Apart(List<Integer> counts) {
            this.counts = counts;
        }

        boolean broken() {
            int term = chosen.size();
            if (term == when) {
                return !need || !answered();
            }
            for (int sort = 0; sort < counts.size(); sort++) {
                int before = drawn.getOrDefault(sort, 0);
                int copies = Math.min(counts.get(sort), before + 1);
                for (int copy = 0; copy < copies; copy++) {
                    drawn.put(sort, Math.max(before, copy + 1));
                    for (int place = SLOT; place < things.get(sort).heads().size(); place++) {
                        Thing thing = new Thing(sort, copy, place);
                        if (meets(thing, 1 << term) && differs(thing)) {
                            chosen.add(thing);
                            boolean found = broken();
                            chosen.remove(term);
                            if (found) {
                                return true;
                            }
                        }
                    }
                }
                drawn.put(sort, before);
            }
            return false;
        }

        private boolean answered() {
            for (int sort = 0; sort < counts.size(); sort++) {
                int copies = Math.min(counts.get(sort), drawn.getOrDefault(sort, 0) + 1);
                for (int copy = 0; copy < copies; copy++) {
                    for (int place = SLOT; place < things.get(sort).heads().size(); place++) {
                        Thing thing = new Thing(sort, copy, place);
                        if (meets(thing, 1 << when) && differs(thing)) {
                            return true;
                        }
                    }
                }
            }
            return false;
        }

        private boolean meets(Thing thing, int bit) {
            Bundle bundle = things.get(thing.sort);
            return ((thing.place == SLOT ? bundle.slot() : bundle.heads().get(thing.place)) & bit) != 0;
        }

        private boolean differs(Thing thing) {
            return chosen.stream().allMatch(thing::different);
        }
    }

    // Written out, as in SlotId.
    @Override
    public boolean equals(Object other) {
        return other instanceof ClauseShape that && when == that.when && need == that.need && apart == that.apart && wanted == that.wanted && things.equals(that.things);
    }

    @Override
    public int hashCode() {
        return 31 * (31 * (31 * (31 * when + Boolean.hashCode(need)) + Boolean.hashCode(apart)) + Boolean.hashCode(wanted)) + things.hashCode();
    }
}

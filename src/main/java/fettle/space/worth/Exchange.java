package fettle.space.worth;

import fettle.space.Held;
import fettle.space.Rehung;
import fettle.space.worth.Lots.Lot;
import java.util.ArrayList;
import java.util.List;

/** One way of putting another head in the place of one: it keeps what is in some of the slots, and has its others filled anew. */
final class Exchange {

    private final Measure measure;
    private final int[] adding;
    private final List<Lot> own;
    private final int to;
    /** By slot of the first head, whether what is in it is kept. */
    private final boolean[] keeps;
    private final List<Lot> free = new ArrayList<>();
    private final Yield from;
    /** By column that adds up, the most by which what is new can be ahead of the first head by itself. */
    private final long[] lead;

    /**
     * An exchange.
     *
     * @param from the head whose place is taken
     * @param own its slots
     * @param to the other head
     * @param theirs the slots of that
     * @param places by slot of the first head, the place among these of the one in which is kept what is in it, or less than 0
     */
    Exchange(Measure measure, int from, List<Lot> own, int to, List<Lot> theirs, int[] places) {
        this.measure = measure;
        this.adding = measure.adding();
        this.own = own;
        this.to = to;
        this.from = measure.ofPart(from);
        this.keeps = new boolean[own.size()];
        boolean[] taken = new boolean[theirs.size()];
        for (int i = 0; i < places.length; i++) {
            keeps[i] = places[i] >= 0;
            if (keeps[i]) {
                taken[places[i]] = true;
            }
        }
        for (int j = 0; j < taken.length; j++) {
            if (!taken[j]) {
                free.add(theirs.get(j));
            }
        }
        this.lead = new long[adding.length];
        for (int c = 0; c < lead.length; c++) {
            lead[c] = measure.ofPart(to).small()[adding[c]] - this.from.small()[adding[c]];
            for (Lot lot : free) {
                lead[c] += lot.choices().best().small()[adding[c]];
            }
        }
    }

    /** The other head. */
    int to() {
        return to;
    }

    /** How many slots are filled anew. */
    int filled() {
        return free.size();
    }

    /** Whether it comes short of each choice of a box, in one column or another. */
    boolean hopeless(Cluster[] box) {
        for (int c = 0; c < lead.length; c++) {
            long left = lead[c];
            for (int i = 0; i < box.length; i++) {
                left -= keeps[i] ? 0 : box[i].least()[adding[c]];
            }
            if (left < 0) {
                return true;
            }
        }
        return false;
    }

    /** Whether it may come up to the best of a box in each column by itself. */
    private boolean promising(Cluster[] box) {
        for (int c = 0; c < lead.length; c++) {
            long left = lead[c];
            for (int i = 0; i < box.length; i++) {
                left -= keeps[i] ? 0 : box[i].best().small()[adding[c]];
            }
            if (left < 0) {
                return false;
            }
        }
        return true;
    }

    /** What became of trying it. */
    enum Outcome {
        /** It is better than each choice of the box. */
        SERVES,
        /** Nothing it can be filled with is as good. */
        FALLS_SHORT,
        /** Neither was found within the steps, or what is better is not seen to be safe. */
        DOUBTFUL
    }

    /** Whether what is made may take the place of what it is made from, so far as is seen. */
    interface Safety {
        boolean safe(Rehung made);
    }

    /** Tries to fill the slots so that all of a box is served better. */
    Outcome tried(Cluster[] box, int most, Meter meter, Safety safety) {
        if (!promising(box)) {
            return Outcome.FALLS_SHORT;
        }
        Filling filling = new Filling(box, most, meter, safety);
        Cluster[] all = new Cluster[free.size()];
        for (int j = 0; j < all.length; j++) {
            all[j] = free.get(j).choices();
        }
        return filling.serves(all) ? Outcome.SERVES : filling.doubtful ? Outcome.DOUBTFUL : Outcome.FALLS_SHORT;
    }

    private final class Filling {

        private final Cluster[] box;
        private final int most;
        private final Meter meter;
        private final Safety safety;
        private final Yield asked;
        private final Yield[] brought;
        private final List<List<Held>> unsafe = new ArrayList<>();
        private int steps;
        private boolean doubtful;

        Filling(Cluster[] box, int most, Meter meter, Safety safety) {
            this.box = box;
            this.most = most;
            this.meter = meter;
            this.safety = safety;
            List<Yield> all = new ArrayList<>(List.of(from));
            for (int i = 0; i < box.length; i++) {
                if (!keeps[i]) {
                    all.add(box[i].best());
                }
            }
            this.asked = measure.all(all.toArray(Yield[]::new));
            this.brought = new Yield[free.size() + 1];
            brought[0] = measure.ofPart(to);
        }

        /** Halves what the slots may hold until one choice is left in each, leaving out what cannot be enough; where it fails, all is left as it was. */
        boolean serves(Cluster[] some) {
            meter.spend(1);
            if (++steps > most) {
                doubtful = true;
                return false;
            }
            int next = -1;
            for (int j = 0; j < some.length; j++) {
                brought[j + 1] = some[j].best();
                if (!some[j].single() && (next < 0 || some[j].spread() > some[next].spread())) {
                    next = j;
                }
            }
            if (measure.compareAll(brought, asked) == Measure.Order.WORSE) {
                return false;
            }
            if (next < 0) {
                return better() && safe(some);
            }
            Cluster whole = some[next];
            for (int half = 0; half < whole.halves().size(); half++) {
                some[next] = whole.halves().get(half);
                if (serves(some)) {
                    return true;
                }
            }
            some[next] = whole;
            return false;
        }

        /** Whether it is better whatever is kept; what is better only so long as something else is not kept is left open. */
        private boolean better() {
            Yield all = measure.all(brought);
            boolean better = measure.alwaysBetter(all, asked);
            doubtful |= !better && measure.compare(all, asked) == Measure.Order.BETTER;
            return better;
        }

        private boolean safe(Cluster[] some) {
            List<Held> added = new ArrayList<>();
            for (int j = 0; j < some.length; j++) {
                added.addAll(free.get(j).held(some[j]));
            }
            if (unsafe.contains(added)) {
                return false;
            }
            List<Held> kept = new ArrayList<>();
            List<Held> dropped = new ArrayList<>();
            for (int i = 0; i < box.length; i++) {
                (keeps[i] ? kept : dropped).addAll(own.get(i).held(box[i]));
            }
            boolean safe = safety.safe(new Rehung(to, kept, dropped, added));
            if (!safe) {
                doubtful = true;
                unsafe.add(added);
            }
            return safe;
        }
    }
}

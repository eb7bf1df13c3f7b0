package fettle.space.worth;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Some of what slots of one shape may hold, with the best and the least that any of it brings; halved again and again until one choice is left. */
final class Cluster {

    /**
     * Something in a slot.
     *
     * @param use which of the slot's uses it is of; {@link #NOTHING} for none
     * @param yield what it brings
     */
    record Choice(int use, Yield yield) {}

    static final int NOTHING = -1;

    /** How far apart something and nothing at all are in a column of greatest or least values, in thousandths of how far apart parts are. */
    private static final long SPREAD_TO_NOTHING = 4_000;

    private final Measure measure;
    private final List<Choice> choices;
    private final Yield best;
    private final long[] least;
    private final int widest;
    private final List<Integer> uses = new ArrayList<>();
    private boolean orNothing;
    private List<Cluster> halves = List.of();

    Cluster(Measure measure, List<Choice> choices) {
        this.measure = measure;
        this.choices = List.copyOf(choices);
        Upper upper = new Upper(measure);
        this.least = choices.get(0).yield().small().clone();
        for (Choice choice : choices) {
            upper.take(choice.yield());
            for (int c = 0; c < least.length; c++) {
                least[c] = Math.min(least[c], choice.yield().small()[c]);
            }
            orNothing |= choice.use() == NOTHING;
            if (choice.use() != NOTHING && !uses.contains(choice.use())) {
                uses.add(choice.use());
            }
        }
        this.best = upper.best();
        int column = 0;
        for (int c = 1; c < measure.plain(); c++) {
            column = spread(c) > spread(column) ? c : column;
        }
        this.widest = column;
    }

    /** Whether one choice is left. */
    boolean single() {
        return choices.size() == 1;
    }

    List<Choice> choices() {
        return choices;
    }

    /** The best that any choice brings in each column. */
    Yield best() {
        return best;
    }

    /** By small column the least that any choice brings. */
    long[] least() {
        return least;
    }

    /** Which of the slot's uses are among the choices. */
    List<Integer> uses() {
        return uses;
    }

    /** Whether nothing is among the choices. */
    boolean orNothing() {
        return orNothing;
    }

    /** How far apart the choices are in the column in which they are farthest, in thousandths of how far all parts are. */
    long spread() {
        return measure.plain() == 0 ? 0 : spread(widest);
    }

    private long spread(int column) {
        long high = best.small()[column];
        long low = least[column];
        if (high == low) {
            return 0;
        }
        return low == Long.MIN_VALUE || high == Long.MAX_VALUE ? SPREAD_TO_NOTHING : (high - low) * 1_000 / measure.widest(column);
    }

    /** Two clusters that together have all choices of one that has several. */
    List<Cluster> halves() {
        if (halves.isEmpty()) {
            halves = halved();
        }
        return halves;
    }

    /** By role kinds where they differ, else where they lie farthest apart. */
    private List<Cluster> halved() {
        List<Choice> one = new ArrayList<>();
        List<Choice> other = new ArrayList<>();
        for (Choice choice : choices) {
            (measure.sameRoles(choice.yield(), choices.get(0).yield()) ? one : other).add(choice);
        }
        if (other.isEmpty() && spread() > 0) {
            one.clear();
            List<Choice> sorted = new ArrayList<>(choices);
            sorted.sort(Comparator.comparingLong((Choice choice) -> choice.yield().small()[widest]).reversed());
            long middle = sorted.get(sorted.size() / 2).yield().small()[widest];
            long from = middle == best.small()[widest] ? middle : middle + 1;
            sorted.forEach(choice -> (choice.yield().small()[widest] >= from ? one : other).add(choice));
        } else if (other.isEmpty()) {
            other.addAll(one.subList(one.size() / 2, one.size()));
            one.subList(one.size() / 2, one.size()).clear();
        }
        return List.of(new Cluster(measure, one), new Cluster(measure, other));
    }
}

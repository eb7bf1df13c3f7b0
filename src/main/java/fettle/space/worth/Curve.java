package fettle.space.worth;

import java.util.function.LongBinaryOperator;

/**
 * Choices by what they cost and what they bring, in whole steps: none costs no less and brings no more than another. What is kept are either all of these or the
 * corners of their upper concave hull; either way whatever is put together from two is worth keeping only where both parts of it were.
 */
final class Curve {

    /** What is kept. */
    enum Keep {
        /** The corners of the hull. */
        CORNERS,
        /** All that are worth their price. */
        ALL
    }

    /** No choice at all. */
    static final Curve NONE = new Curve(new long[0], new long[0], 0);

    /** Nothing, which costs and brings nothing. */
    static final Curve NOTHING = point(0, 0);

    private final long[] costs;
    private final long[] benefits;
    private int size;

    private Curve(long[] costs, long[] benefits, int size) {
        this.costs = costs;
        this.benefits = benefits;
        this.size = size;
    }

    private static Curve room(int size) {
        return new Curve(new long[size], new long[size], 0);
    }

    static Curve point(long cost, long benefit) {
        return new Curve(new long[] {cost}, new long[] {benefit}, 1);
    }

    /** How many choices are kept. */
    int size() {
        return size;
    }

    boolean isEmpty() {
        return size == 0;
    }

    /** Costs rise from one to the next. */
    long cost(int i) {
        return costs[i];
    }

    /** Benefits rise from one to the next. */
    long benefit(int i) {
        return benefits[i];
    }

    /** The same choices, each dearer and better by as much. */
    Curve moved(long cost, long benefit) {
        Curve moved = room(size);
        for (int i = 0; i < size; i++) {
            moved.costs[i] = Math.addExact(costs[i], cost);
            moved.benefits[i] = Math.addExact(benefits[i], benefit);
        }
        moved.size = size;
        return moved;
    }

    /** Those of the choices that, weighed by cost and benefit, come to at least so much. */
    Curve from(LongBinaryOperator weighed, long least) {
        Curve some = room(size);
        for (int i = 0; i < size; i++) {
            if (weighed.applyAsLong(costs[i], benefits[i]) >= least) {
                some.costs[some.size] = costs[i];
                some.benefits[some.size++] = benefits[i];
            }
        }
        return some;
    }

    /** The choices of either. */
    Curve or(Curve other, Keep keep) {
        if (isEmpty() || other.isEmpty()) {
            return isEmpty() ? other : this;
        }
        if (covers(other, keep)) {
            return this;
        }
        if (other.covers(this, keep)) {
            return other;
        }
        Curve all = room(size + other.size);
        int i = 0;
        int j = 0;
        while (i < size || j < other.size) {
            boolean mine = j == other.size || i < size && (costs[i] < other.costs[j] || costs[i] == other.costs[j] && benefits[i] >= other.benefits[j]);
            if (mine) {
                all.add(costs[i], benefits[i], keep);
                i++;
            } else {
                all.add(other.costs[j], other.benefits[j], keep);
                j++;
            }
        }
        return all;
    }

    /** Whether each choice of another adds nothing to these. */
    private boolean covers(Curve other, Keep keep) {
        int next = 0;
        for (int j = 0; j < other.size; j++) {
            next = past(next, other.costs[j]);
            if (!coversBefore(next, other.costs[j], other.benefits[j], keep)) {
                return false;
            }
        }
        return true;
    }

    /** Whether a choice adds nothing: it is equal to one of these, or bettered by one, or lies on or below the line between two where corners are kept. */
    private boolean coversBefore(int next, long cost, long benefit, Keep keep) {
        return next > 0 && (benefit <= benefits[next - 1]
                || keep == Keep.CORNERS && next < size && onOrBelow(costs[next - 1], benefits[next - 1], cost, benefit, costs[next], benefits[next]));
    }

    /** Whether it is seen at once that nothing put together from two adds anything to these: not even the cheapest of both with the best of both would. */
    boolean coversAllOf(Curve one, Curve other, Keep keep) {
        long cost = Math.addExact(one.costs[0], other.costs[0]);
        return coversBefore(past(0, cost), cost, Math.addExact(one.benefits[one.size - 1], other.benefits[other.size - 1]), keep);
    }

    /** The first from a place on that costs more. */
    private int past(int from, long cost) {
        int next = from;
        while (next < size && costs[next] <= cost) {
            next++;
        }
        return next;
    }

    /** Each choice of one beside each of the other. */
    Curve and(Curve other, Keep keep) {
        if (size > other.size) {
            return other.and(this, keep);
        }
        if (isEmpty()) {
            return NONE;
        }
        if (size == 1) {
            return other.moved(costs[0], benefits[0]);
        }
        return keep == Keep.CORNERS ? cornersOfSums(other) : allSums(other);
    }

    private Curve allSums(Curve other) {
        Curve all = NONE;
        for (int i = 0; i < size; i++) {
            all = all.or(other.moved(costs[i], benefits[i]), Keep.ALL);
        }
        return all;
    }

    /** The hull of all sums goes up the sides of both hulls, the steepest first. */
    private Curve cornersOfSums(Curve other) {
        Curve all = room(size + other.size);
        int i = 0;
        int j = 0;
        all.add(Math.addExact(costs[0], other.costs[0]), Math.addExact(benefits[0], other.benefits[0]), Keep.CORNERS);
        while (i + 1 < size || j + 1 < other.size) {
            boolean mine = j + 1 == other.size || i + 1 < size && steeper(i, other, j) >= 0;
            i += mine ? 1 : 0;
            j += mine ? 0 : 1;
            all.add(costs[i] + other.costs[j], benefits[i] + other.benefits[j], Keep.CORNERS);
        }
        return all;
    }

    private int steeper(int i, Curve other, int j) {
        return compareProducts(
                benefits[i + 1] - benefits[i], other.costs[j + 1] - other.costs[j], other.benefits[j + 1] - other.benefits[j], costs[i + 1] - costs[i]);
    }

    /** Adds what costs no less than all that is there; of what costs the same the best must come first. */
    private void add(long cost, long benefit, Keep keep) {
        if (size > 0 && benefit <= benefits[size - 1]) {
            return;
        }
        if (keep == Keep.CORNERS) {
            while (size > 1 && onOrBelow(costs[size - 2], benefits[size - 2], costs[size - 1], benefits[size - 1], cost, benefit)) {
                size--;
            }
        }
        costs[size] = cost;
        benefits[size] = benefit;
        size++;
    }

    private static boolean onOrBelow(long lowCost, long low, long cost, long benefit, long highCost, long high) {
        return compareProducts(benefit - low, highCost - lowCost, high - low, cost - lowCost) <= 0;
    }

    /** Compares a × b with c × d, none of them negative. */
    private static int compareProducts(long a, long b, long c, long d) {
        if ((a | b | c | d) >>> Integer.SIZE - 1 == 0) {
            return Long.compare(a * b, c * d);
        }
        int byHigh = Long.compare(Math.multiplyHigh(a, b), Math.multiplyHigh(c, d));
        return byHigh != 0 ? byHigh : Long.compareUnsigned(a * b, c * d);
    }

    /** Whether a choice among those of which these are the corners lies on their hull. */
    boolean onHull(long cost, long benefit) {
        int next = after(cost);
        if (next < size && costs[next] == cost) {
            return benefits[next] == benefit;
        }
        return next > 0 && next < size
                && compareProducts(benefit - benefits[next - 1], costs[next] - costs[next - 1], benefits[next] - benefits[next - 1], cost - costs[next - 1]) == 0;
    }

    /** Whether one of the corners of some of the choices of which these are the corners lies on their hull. */
    boolean touches(Curve some) {
        for (int i = 0; i < some.size; i++) {
            if (onHull(some.costs[i], some.benefits[i])) {
                return true;
            }
        }
        return false;
    }

    /** Whether a choice among these is one of those kept. */
    boolean holds(long cost, long benefit) {
        int next = after(cost);
        return next < size && costs[next] == cost && benefits[next] == benefit;
    }

    /** Whether it is seen from corners alone that whatever others are the corners of, something among these costs no more, brings no less and differs. */
    boolean above(Curve others) {
        for (int i = 0; i < others.size; i++) {
            int last = i + 1 < others.size ? i + 1 : i;
            int next = after(others.costs[i]);
            boolean same = next < size && costs[next] == others.costs[i];
            int affordable = same ? next : next - 1;
            boolean better = affordable >= 0 && (benefits[affordable] > others.benefits[last] || benefits[affordable] == others.benefits[last] && !same);
            if (!better) {
                return false;
            }
        }
        return true;
    }

    /** The first that costs no less. */
    int after(long cost) {
        int next = 0;
        while (next < size && costs[next] < cost) {
            next++;
        }
        return next;
    }
}

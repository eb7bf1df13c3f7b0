package fettle.space;

import java.util.ArrayList;
import java.util.List;
import java.util.function.IntUnaryOperator;

/**
 * The order in which the slots of a host are combined: next comes the slot that leaves the fewest monitors waiting for others. Any order gives the same result;
 * a good one keeps few signatures apart on the way.
 */
final class SlotOrder {

    private final Ground ground;
    private final int[] outside;
    private final List<Integer> left = new ArrayList<>();
    private final boolean[] touched;
    private int[] behind;
    private int[] ahead;

    SlotOrder(Ground ground, int host, int[] outside) {
        this.ground = ground;
        this.outside = outside;
        this.touched = new boolean[ground.monitors().count()];
        for (int event : ground.monitors().own(host)) {
            touched[ground.monitors().monitorOf(event)] = true;
        }
        for (int slot : ground.terrain().slotsOf()[host]) {
            left.add(slot);
        }
        behind = Numbers.distinct(ground.monitors().own(host));
        ahead = lookAhead(-1);
    }

    boolean more() {
        return !left.isEmpty();
    }

    /** The events that can have happened, by the host itself and in the slots taken so far. */
    int[] behind() {
        return behind;
    }

    /** The events that can still happen, in the slots that are left or outside of the host. */
    int[] ahead() {
        return ahead;
    }

    /**
     * Takes the next slot.
     *
     * @param classes how many classes a slot has
     */
    int next(IntUnaryOperator classes) {
        int best = -1;
        int[] bestAhead = Numbers.NONE;
        long bestWaiting = Long.MAX_VALUE;
        int bestClasses = 0;
        for (int slot : left) {
            int[] after = left.size() == 1 ? outside : lookAhead(slot);
            long waiting = ground.insideMonitors(ground.nodeOf(slot)).length == 0 ? -1 : waiting(slot, after);
            int size = classes.applyAsInt(slot);
            if (waiting < bestWaiting || waiting == bestWaiting && size < bestClasses) {
                best = slot;
                bestAhead = after;
                bestWaiting = waiting;
                bestClasses = size;
                if (waiting < 0) {
                    break;
                }
            }
        }
        left.remove((Integer) best);
        for (int monitor : ground.insideMonitors(ground.nodeOf(best))) {
            touched[monitor] = true;
        }
        behind = Numbers.union(behind, ground.inside(ground.nodeOf(best)));
        ahead = bestAhead;
        return best;
    }

    private int[] lookAhead(int without) {
        int[] events = outside;
        for (int slot : left) {
            if (slot != without) {
                events = Numbers.union(events, ground.inside(ground.nodeOf(slot)));
            }
        }
        return events;
    }

    /** How many monitors have been touched once this slot is in, and can be touched again by what is left then. */
    private long waiting(int slot, int[] after) {
        long count = 0;
        int last = -1;
        int[] inSlot = ground.insideMonitors(ground.nodeOf(slot));
        int at = 0;
        for (int event : after) {
            int monitor = ground.monitors().monitorOf(event);
            if (monitor != last) {
                last = monitor;
                while (at < inSlot.length && inSlot[at] < monitor) {
                    at++;
                }
                if (touched[monitor] || at < inSlot.length && inSlot[at] == monitor) {
                    count++;
                }
            }
        }
        return count;
    }
}

package fettle.space;

import fettle.relation.Room;
import java.util.Collection;

/**
 * How much a slot holds.
 *
 * @param most how many parts; {@link #ANY} where nothing is said
 * @param notches what their spans may sum to; {@link #ANY} where nothing is said
 * @param distinct no part twice
 * @param filled at least one part
 */
public record Capacity(int most, int notches, boolean distinct, boolean filled) {

    static final int ANY = Integer.MAX_VALUE;

    /** As much as one likes. */
    static final Capacity FREE = new Capacity(ANY, ANY, false, false);

    static Capacity of(Collection<Room> rules) {
        int most = ANY;
        int notches = ANY;
        boolean distinct = false;
        boolean filled = false;
        for (Room rule : rules) {
            if (rule instanceof Room.Holds holds) {
                most = Math.min(most, holds.most());
            } else if (rule instanceof Room.Length length) {
                notches = Math.min(notches, length.notches());
            } else if (rule instanceof Room.Places places) {
                // Where none says its first notch, the parts have one run of all the notches.
                notches = Math.min(notches, places.notches());
            } else if (rule instanceof Room.Distinct) {
                distinct = true;
            } else if (rule instanceof Room.Filled) {
                filled = true;
            }
        }
        return new Capacity(Math.max(0, most), Math.max(0, notches), distinct, filled);
    }

    /** The same for parts of so many notches at most: how long a slot is makes no difference to a single part that is no longer. */
    Capacity upTo(int longest) {
        return most <= 1 && longest <= notches ? new Capacity(most, ANY, distinct, filled) : this;
    }

    public boolean measured() {
        return notches != ANY;
    }

    public boolean counted() {
        return most != ANY;
    }

    /** Whether the same part may come back without end. */
    boolean endless() {
        return !distinct && !counted() && !measured();
    }

    // Written out, as in SlotId.
    @Override
    public boolean equals(Object other) {
        return other instanceof Capacity that && most == that.most && notches == that.notches && distinct == that.distinct && filled == that.filled;
    }

    @Override
    public int hashCode() {
        return 31 * (31 * (31 * most + notches) + Boolean.hashCode(distinct)) + Boolean.hashCode(filled);
    }
}

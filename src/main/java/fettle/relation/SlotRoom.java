package fettle.relation;

import java.util.List;
import java.util.OptionalInt;

/**
 * All that a slot asks of the list of parts in it, taken together.
 *
 * @param most how many parts at most
 * @param notches what the spans may sum to; empty where not measured
 * @param distinct no part twice
 * @param filled at least one part
 * @param rules the relations that say so
 */
public record SlotRoom(int most, OptionalInt notches, boolean distinct, boolean filled, List<Room> rules) {

    static SlotRoom of(List<Room> rules) {
        int most = Integer.MAX_VALUE;
        OptionalInt notches = OptionalInt.empty();
        boolean distinct = false;
        boolean filled = false;
        for (Room rule : rules) {
            if (rule instanceof Room.Holds holds) {
                most = Math.min(most, holds.most());
            } else if (rule instanceof Room.Length length) {
                notches = OptionalInt.of(Math.min(notches.orElse(Integer.MAX_VALUE), length.notches()));
            } else if (rule instanceof Room.Distinct) {
                distinct = true;
            } else if (rule instanceof Room.Filled) {
                filled = true;
            }
        }
        return new SlotRoom(most, notches, distinct, filled, List.copyOf(rules));
    }
}

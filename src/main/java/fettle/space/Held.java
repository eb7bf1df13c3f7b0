package fettle.space;

import java.util.List;

/**
 * What a slot of a part may hold.
 *
 * @param slot the slot's number
 * @param uses the circuit's nodes of the slot in use
 * @param orNothing whether it may hold nothing as well
 */
public record Held(int slot, List<Integer> uses, boolean orNothing) {

    public Held {
        uses = List.copyOf(uses);
    }
}

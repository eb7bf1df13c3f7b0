package fettle.space.best;

import java.util.List;

/**
 * Swaps to make one after the other, each of which gains something, is sound and keeps to the budget.
 *
 * @param proved whether no others, of as many at most, gain more together; else others may
 */
public record Steps(List<Swap> swaps, boolean proved) {

    public Steps {
        swaps = List.copyOf(swaps);
    }
}

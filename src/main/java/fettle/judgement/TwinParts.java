package fettle.judgement;

import fettle.catalog.Part;
import java.util.List;

/**
 * Two parts without slots that have the same figures and can stand in for each other in every slot that takes both.
 *
 * @param slots those slots, in order
 */
public record TwinParts(Part one, Part other, List<String> slots) {

    public TwinParts {
        slots = List.copyOf(slots);
    }
}

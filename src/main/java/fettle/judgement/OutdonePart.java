package fettle.judgement;

import fettle.catalog.Fact;
import fettle.catalog.Part;
import fettle.space.worth.Gain;
import java.util.List;

/**
 * A part that is dominated in some slots of some platforms, cost ignored or counted.
 *
 * @param everywhere whether that is so, cost ignored, wherever a valid build can hold it
 * @param worseThanEmpty whether leaving its place empty outdoes it wherever a valid build can hold it
 * @param anyPrice where it is dominated, cost ignored, by what mounts as directly as it does
 * @param behindAdapter where it is dominated, cost ignored, by a part of its kind that stands on an adapter
 * @param forPrice where it is dominated only when cost counts
 */
public record OutdonePart(Part part, boolean everywhere, boolean worseThanEmpty, Places anyPrice, Places behindAdapter, Places forPrice) {

    /**
     * Slots in which the same is to be said.
     *
     * @param slots in order
     * @param shown the part's smallest assembly in the first of them
     * @param by what outdoes that
     * @param gains what that gains, attribute by attribute
     * @param because the figures and prices in which the two differ, as far as they are stated
     */
    public record Places(List<String> slots, String shown, String by, List<Gain> gains, List<Fact> because) {

        static final Places NONE = new Places(List.of(), "", "", List.of(), List.of());

        public Places {
            slots = List.copyOf(slots);
            gains = List.copyOf(gains);
            because = List.copyOf(because);
        }

        public boolean some() {
            return !slots.isEmpty();
        }
    }

    /** Where it is dominated, cost ignored, in either way; the direct way first. */
    public Places first() {
        return anyPrice.some() ? anyPrice : behindAdapter;
    }
}

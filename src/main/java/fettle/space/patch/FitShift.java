package fettle.space.patch;

import fettle.catalog.SlotId;

/** A part that fits a slot in one of two catalogs and not in the other. */
public record FitShift(SlotId slot, String part) implements Comparable<FitShift> {

    @Override
    public int compareTo(FitShift other) {
        int bySlot = slot.compareTo(other.slot);
        return bySlot != 0 ? bySlot : part.compareTo(other.part);
    }
}

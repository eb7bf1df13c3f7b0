package fettle.space;

import fettle.catalog.Slot;

/** How many parts of the catalog fit a slot. */
public record SlotChoice(Slot slot, int parts) {}

package fettle.space.patch;

import fettle.space.EntryName;

/**
 * A guess that a slot of one host goes by another id since a patch.
 *
 * @param host the part or platform that bears it, by its id in the new catalog
 * @param formerHost the id that the old catalog has for the host, mostly the same
 * @param from the slot's id before
 * @param to its id now
 */
public record SlotRename(EntryName host, String formerHost, String from, String to) {}

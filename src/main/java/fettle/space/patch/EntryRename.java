package fettle.space.patch;

import fettle.space.EntryName;

/**
 * A guess that a lens, an outfit, an access profile or a vendor goes by another id since a patch: all else that the catalogs say of it is the same.
 *
 * @param from as the old catalog names it
 * @param to as the new one does
 * @param labelled whether both state the same label
 */
public record EntryRename(EntryName from, EntryName to, boolean labelled) {}

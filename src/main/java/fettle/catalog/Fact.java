package fettle.catalog;

import fettle.document.Origin;

/**
 * Something that a document states, with the place where it stands: what rules match on and what findings are explained from.
 *
 * <p>The type is closed so that every fact can be put into words in one place.
 */
public sealed interface Fact
        permits Access, Attribute, Barter, BlocksTag, Build, BuildEntry, CatalogHead, ClaimsZone, Constraint, Currency, DeclaresTrait, Entry, Excludes,
                Good, HasMount, HasName, Lens, Limit, Needs, Offer, Outfit, Part, Reference, Slot, SlotAccepts, SlotHasMount, SlotHasTag, SlotRejects, Stat, Vendor,
                Waiver {

    /** Where it stands. */
    Origin origin();
}

package fettle.catalog;

import fettle.document.Origin;

/** A slot bears a tag. */
public record SlotHasTag(SlotId slot, String tag, Origin origin) implements Fact {}

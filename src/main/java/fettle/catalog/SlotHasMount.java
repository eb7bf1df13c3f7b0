package fettle.catalog;

import fettle.document.Origin;

/** A slot offers a mounting standard. */
public record SlotHasMount(SlotId slot, String mount, Origin origin) implements Fact {}

package fettle.catalog;

import fettle.document.Origin;

/** A slot rejects the parts that a selector names. */
public record SlotRejects(SlotId slot, String name, Origin origin) implements Fact {}

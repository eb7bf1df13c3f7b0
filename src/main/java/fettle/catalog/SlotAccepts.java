package fettle.catalog;

import fettle.document.Origin;

/** A slot accepts the parts that a selector names. */
public record SlotAccepts(SlotId slot, String name, Origin origin) implements Fact {}

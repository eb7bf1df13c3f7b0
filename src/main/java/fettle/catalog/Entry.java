package fettle.catalog;

import fettle.document.Origin;

/** An entry that has an id, in the section that it stands in; parts and platforms share one space of ids, {@code parts}. */
public record Entry(String section, String space, String id, Origin origin) implements Fact {}

package fettle.catalog;

import fettle.document.Origin;

/** A part cannot be used together with the parts that a selector names. */
public record Excludes(String part, String name, Origin origin) implements Fact {}

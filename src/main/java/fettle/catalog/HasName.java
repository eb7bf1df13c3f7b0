package fettle.catalog;

import fettle.document.Origin;

/** A part answers to a selector: its own id, its kind, or one of its tags. */
public record HasName(String part, String name, Origin origin) implements Fact {}

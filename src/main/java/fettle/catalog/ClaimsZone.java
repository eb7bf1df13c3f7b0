package fettle.catalog;

import fettle.document.Origin;

/** A part takes a zone. */
public record ClaimsZone(String part, String zone, Origin origin) implements Fact {}

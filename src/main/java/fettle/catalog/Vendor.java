package fettle.catalog;

import fettle.document.Origin;

/** A seller; {@code tiers} counts its standing tiers, 0 for an open market. */
public record Vendor(String id, String label, int tiers, Origin origin) implements Fact {}

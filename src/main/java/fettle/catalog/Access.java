package fettle.catalog;

import fettle.document.Origin;

import java.util.Map;

/** What a player may buy: the highest tier open at each vendor, 0 for an open market; a vendor left out is closed. */
public record Access(String id, String label, Map<String, Integer> vendors, Origin origin) implements Fact {}

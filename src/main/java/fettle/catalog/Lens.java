package fettle.catalog;

import fettle.document.Origin;

import java.math.BigDecimal;
import java.util.Map;

/** What a player builds for: a weight above 0 by attribute. */
public record Lens(String id, String label, Map<String, BigDecimal> weights, Origin origin) implements Fact {}

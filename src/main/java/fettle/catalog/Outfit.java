package fettle.catalog;

import fettle.document.Origin;

import java.math.BigDecimal;
import java.util.Map;

/** Worn gear: percent added to a build's final value, by attribute. */
public record Outfit(String id, String label, Map<String, BigDecimal> effects, Origin origin) implements Fact {}

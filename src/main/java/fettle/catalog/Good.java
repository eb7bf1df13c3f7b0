package fettle.catalog;

import fettle.document.Origin;

import java.math.BigDecimal;

/** A thing bartered, with its worth in base currency. */
public record Good(String id, String label, BigDecimal value, Origin origin) implements Fact {}

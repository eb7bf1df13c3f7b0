package fettle.catalog;

import fettle.document.Origin;

import java.math.BigDecimal;

/** A number of goods asked in an offer. */
public record Barter(String good, BigDecimal count, Origin origin) implements Fact {}

package fettle.catalog;

import fettle.document.Origin;

import java.math.BigDecimal;

/** Money; {@code rate} is the number of base-currency units for one. */
public record Currency(String id, BigDecimal rate, Origin origin) implements Fact {}

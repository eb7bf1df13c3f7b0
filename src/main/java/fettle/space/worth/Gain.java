package fettle.space.worth;

import java.math.BigDecimal;
import java.util.Optional;

/**
 * Where two assemblies differ in what they contribute.
 *
 * @param before what the one contributes; empty where it has no figure that could be compared
 * @param after what the other does, likewise
 */
public record Gain(Column column, Optional<BigDecimal> before, Optional<BigDecimal> after) {}

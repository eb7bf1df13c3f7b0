package fettle.oracle;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;

/** "Totals" of meaning.md. */
public final class Totals {
  private Totals() {}

  /** The totals of all attributes that have a value. */
  public static SortedMap<String, BigDecimal> of(Entries entries, Assembly build, boolean loaded, Optional<String> outfit) {
    SortedMap<String, BigDecimal> totals = new TreeMap<>();
    for (AttributeEntry attribute : AttributeEntry.all(entries)) {
      total(entries, attribute, build, loaded, outfit).ifPresent(value -> totals.put(attribute.id(), value));
    }
    return totals;
  }

  static Optional<BigDecimal> total(
      Entries entries, AttributeEntry attribute, Assembly build, boolean loaded, Optional<String> outfit) {
    // "base b (the platform's stat …) and the stats s of all placed parts that have one (and, loaded, their `loaded` stats)"
    Optional<BigDecimal> base = Optional.ofNullable(entries.host(build.part()).stats().get(attribute.id()));
    List<BigDecimal> stats = new ArrayList<>();
    for (String id : build.parts().subList(1, build.parts().size())) {
      PartEntry part = entries.host(id);
      Optional.ofNullable(part.stats().get(attribute.id())).ifPresent(stats::add);
      if (loaded) {
        Optional.ofNullable(part.loaded().get(attribute.id())).ifPresent(stats::add);
      }
    }
    // "An outfit multiplies the final value by (1 + effect/100)."
    return combined(attribute, base, stats)
        .map(value -> value.multiply(outfit.map(id -> effect(entries, id, attribute)).orElse(BigDecimal.ONE)))
        .map(Decimals::plain);
  }

  private static Optional<BigDecimal> combined(
      AttributeEntry attribute, Optional<BigDecimal> base, List<BigDecimal> stats) {
    BigDecimal sum = stats.stream().reduce(BigDecimal.ZERO, BigDecimal::add);
    return switch (attribute.combine()) {
      // "`sum` b + Σs", b being "for `sum` 0 where left out"
      case "sum" -> Optional.of(base.orElse(BigDecimal.ZERO).add(sum));
      // "`percent` b × (1 + Σs/100)"
      case "percent" -> base.map(b -> b.multiply(Decimals.factor(sum)));
      // "`product` b × Π(1 + s/100)"
      case "product" ->
          base.map(b -> b.multiply(stats.stream().map(Decimals::factor).reduce(BigDecimal.ONE, BigDecimal::multiply)));
      // "`max`/`min` of b (where given) and all s"; "with neither base nor stat has no value"
      case "max" -> all(base, stats).stream().max(BigDecimal::compareTo);
      case "min" -> all(base, stats).stream().min(BigDecimal::compareTo);
      default -> throw new IllegalArgumentException("no such way to combine: " + attribute.combine());
    };
  }

  private static List<BigDecimal> all(Optional<BigDecimal> base, List<BigDecimal> stats) {
    List<BigDecimal> all = new ArrayList<>(stats);
    base.ifPresent(all::add);
    return all;
  }

  private static BigDecimal effect(Entries entries, String outfit, AttributeEntry attribute) {
    return Decimals.factor(
        Fields.decimals(entries.entry("outfits", outfit), "effects").getOrDefault(attribute.id(), BigDecimal.ZERO));
  }
}

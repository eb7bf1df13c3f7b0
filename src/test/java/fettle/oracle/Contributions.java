package fettle.oracle;

import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;

/** "Contribution" of "Dominated": what the parts of a choice bring to an attribute. */
final class Contributions {
  private Contributions() {}

  /**
   * One thing by which choices are compared: an attribute's unloaded stats, or its {@code loaded} stats, which "are compared as
   * attributes of their own".
   */
  record Aspect(AttributeEntry attribute, boolean loaded) {
    /** Below 0 where {@code one} is better than {@code other}, above 0 where it is worse. */
    int compare(Optional<BigDecimal> one, Optional<BigDecimal> other) {
      boolean higher = attribute.better().equals("higher");
      if (one.isPresent() && other.isPresent()) {
        return higher ? other.get().compareTo(one.get()) : one.get().compareTo(other.get());
      }
      if (one.isEmpty() && other.isEmpty()) {
        return 0;
      }
      // "(no stat at all is the worst for `max` with `higher`, and for `min` with `lower`; otherwise no contribution is the best)"
      boolean noneIsWorst = attribute.combine().equals("max") ? higher : !higher;
      return one.isEmpty() == noneIsWorst ? 1 : -1;
    }
  }

  static List<Aspect> aspects(Entries entries) {
    return AttributeEntry.all(entries).stream()
        .flatMap(attribute -> Stream.of(new Aspect(attribute, false), new Aspect(attribute, true)))
        .toList();
  }

  /** "Σ stats for `sum` and `percent`; Π(1 + s/100) for `product`; the max or min for those"; empty for no stat of the latter. */
  static Optional<BigDecimal> of(Entries entries, Choice choice, Aspect aspect) {
    Function<PartEntry, Map<String, BigDecimal>> stats = aspect.loaded ? PartEntry::loaded : PartEntry::stats;
    List<BigDecimal> all =
        choice.parts().stream()
            .map(id -> stats.apply(entries.part(id).orElseThrow()).get(aspect.attribute.id()))
            .filter(Objects::nonNull)
            .toList();
    Optional<BigDecimal> contribution =
        switch (aspect.attribute.combine()) {
          case "sum", "percent" -> Optional.of(all.stream().reduce(BigDecimal.ZERO, BigDecimal::add));
          case "product" -> Optional.of(all.stream().map(Decimals::factor).reduce(BigDecimal.ONE, BigDecimal::multiply));
          case "max" -> all.stream().max(BigDecimal::compareTo);
          case "min" -> all.stream().min(BigDecimal::compareTo);
          default -> throw new IllegalArgumentException("no such way to combine: " + aspect.attribute.combine());
        };
    return contribution.map(Decimals::plain);
  }
}

package fettle.oracle;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import tools.jackson.databind.JsonNode;

/** "Cost" of meaning.md: what each part costs a player with these owned parts under this access profile. */
public final class Costs {
  private final Map<String, Optional<BigDecimal>> ofParts;

  private Costs(Map<String, Optional<BigDecimal>> ofParts) {
    this.ofParts = ofParts;
  }

  /** For one profile, or with every offer open where none is named. */
  public static Costs of(Entries entries, Optional<String> access, Set<String> owned) {
    return new Costs(
        entries.partIds().stream()
            .collect(
                Collectors.toMap(
                    part -> part,
                    part ->
                        owned.contains(part) ? Optional.of(BigDecimal.ZERO) : cheapest(entries, part, access))));
  }

  /** The cost of one part; empty where it is unobtainable. */
  public Optional<BigDecimal> ofPart(String part) {
    return ofParts.get(part);
  }

  /** The cost of all parts together; empty where one is unobtainable. */
  public Optional<BigDecimal> ofAll(List<String> parts) {
    BigDecimal sum = BigDecimal.ZERO;
    for (String part : parts) {
      Optional<BigDecimal> cost = ofPart(part);
      if (cost.isEmpty()) {
        return Optional.empty();
      }
      sum = sum.add(cost.get());
    }
    return Optional.of(Decimals.plain(sum));
  }

  /** "A build costs the sum over placed parts. The platform is not counted." */
  public Optional<BigDecimal> ofBuild(Assembly build) {
    return ofAll(build.parts().subList(1, build.parts().size()));
  }

  /** "its cheapest offer that the access profile opens (all offers, where no profile is named)" */
  private static Optional<BigDecimal> cheapest(Entries entries, String part, Optional<String> access) {
    return entries.section("offers").stream()
        .filter(offer -> Fields.text(offer, "part").equals(part))
        .filter(offer -> access.isEmpty() || opens(entries.entry("access", access.get()), offer))
        .map(offer -> price(entries, offer))
        .min(BigDecimal::compareTo);
  }

  /**
   * format.md: {@code access} has "{vendor: highest tier open to the player (0 for an open market)}; a vendor left out is
   * closed", and an offer's {@code tier} is "left out on an open market".
   */
  private static boolean opens(JsonNode access, JsonNode offer) {
    Optional<BigDecimal> highest =
        Optional.ofNullable(Fields.decimals(access, "vendors").get(Fields.text(offer, "vendor")));
    BigDecimal tier = offer.path("tier").decimalValue(BigDecimal.ZERO);
    return highest.isPresent() && tier.compareTo(highest.get()) <= 0;
  }

  /**
   * "An offer costs {@code price} × the currency's rate, or Σ count × value of bartered goods, rounded half up to 2 decimals."
   */
  private static BigDecimal price(Entries entries, JsonNode offer) {
    BigDecimal exact =
        offer.has("price")
            ? offer.path("price").decimalValue().multiply(rate(entries, offer))
            : offer.path("barter").valueStream()
                .map(item -> item.path("count").decimalValue().multiply(value(entries, Fields.text(item, "good"))))
                .reduce(BigDecimal.ZERO, BigDecimal::add);
    return exact.setScale(2, RoundingMode.HALF_UP);
  }

  private static BigDecimal rate(Entries entries, JsonNode offer) {
    String currency = offer.path("currency").asString(entries.baseCurrency());
    return currency.equals(entries.baseCurrency())
        ? BigDecimal.ONE
        : entries.entry("currencies", currency).path("rate").decimalValue();
  }

  private static BigDecimal value(Entries entries, String good) {
    return entries.entry("goods", good).path("value").decimalValue();
  }
}

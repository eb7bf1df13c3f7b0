package fettle.oracle;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import tools.jackson.databind.JsonNode;

/**
 * A limit held against a build (format.md, Limit).
 *
 * @param value the limited attribute's total
 * @param threshold what the value may at least or at most be
 * @param margin how far the value is inside the limit; below 0 where it is outside
 */
public record Margin(String limit, BigDecimal value, Fraction threshold, Fraction margin) {

  public boolean holds() {
    return margin.signum() >= 0;
  }

  /**
   * The margin in one limit, the outfit worn; empty where an attribute that it needs has no value: "a limit that needs it holds".
   */
  static Optional<Margin> of(Entries entries, JsonNode limit, Assembly build, Optional<String> outfit) {
    boolean loaded = Fields.flag(limit, "loaded", true);
    JsonNode bound = limit.has("atLeast") ? limit.path("atLeast") : limit.path("atMost");
    Optional<BigDecimal> value = total(entries, Fields.text(limit, "attribute"), build, loaded, outfit);
    Optional<Fraction> threshold =
        bound.isObject()
            ? total(entries, Fields.text(bound, "by"), build, loaded, outfit)
                .map(x -> between(bound.path("points").valueStream().toList(), Fraction.of(x)))
            : Optional.of(Fraction.of(bound.decimalValue()));
    if (value.isEmpty() || threshold.isEmpty()) {
      return Optional.empty();
    }
    Fraction above = Fraction.of(value.get()).minus(threshold.get());
    Fraction margin = limit.has("atLeast") ? above : Fraction.ZERO.minus(above);
    return Optional.of(new Margin(Fields.text(limit, "id"), value.get(), threshold.get(), margin));
  }

  /** "straight lines between the points, flat beyond the ends" */
  private static Fraction between(List<JsonNode> points, Fraction x) {
    if (x.compareTo(coordinate(points.get(0), 0)) <= 0) {
      return coordinate(points.get(0), 1);
    }
    for (int i = 1; i < points.size(); i++) {
      Fraction x0 = coordinate(points.get(i - 1), 0);
      Fraction y0 = coordinate(points.get(i - 1), 1);
      Fraction x1 = coordinate(points.get(i), 0);
      Fraction y1 = coordinate(points.get(i), 1);
      if (x.compareTo(x1) <= 0) {
        return y0.plus(y1.minus(y0).times(x.minus(x0)).over(x1.minus(x0)));
      }
    }
    return coordinate(points.get(points.size() - 1), 1);
  }

  private static Fraction coordinate(JsonNode point, int index) {
    return Fraction.of(point.path(index).decimalValue());
  }

  private static Optional<BigDecimal> total(
      Entries entries, String attribute, Assembly build, boolean loaded, Optional<String> outfit) {
    return Totals.total(entries, AttributeEntry.of(entries.entry("attributes", attribute)), build, loaded, outfit);
  }
}

package fettle.oracle;

import java.math.BigDecimal;
import java.util.Comparator;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;

/**
 * "Best build" of meaning.md: the one that no other valid build beats.
 *
 * @param benefit Σ weight × total
 * @param changed how many paths differ from the build before; 0 where there was none
 * @param paths its parts by path
 */
public record BestBuild(
    Assembly build, BigDecimal benefit, BigDecimal cost, int changed, SortedMap<String, String> paths) {

  /** Looks at every valid build; empty where none satisfies the demands. */
  public static Optional<BestBuild> of(Space space, Demands demands) {
    Entries entries = space.entries();
    Costs costs = Costs.of(entries, demands.access(), demands.owned());
    Optional<Kept> kept = demands.before().map(before -> Kept.of(entries, before, demands.keep()));
    return space.builds().stream()
        // "among those whose parts are all obtainable or owned,
        .filter(build -> costs.ofBuild(build).isPresent())
        // whose cost is within budget,
        .filter(build -> demands.budget().map(budget -> costs.ofBuild(build).get().compareTo(budget) <= 0).orElse(true))
        // and which keep every limit";
        .filter(build -> keepsLimits(entries, build, demands))
        // "kept paths"
        .filter(build -> kept.map(demand -> demand.by(build)).orElse(true))
        .map(
            build ->
                new BestBuild(
                    build,
                    benefit(entries, build, demands),
                    costs.ofBuild(build).get(),
                    demands.before().map(before -> Paths.changed(entries, before, build)).orElse(0),
                    Paths.of(entries, build)))
        // "highest Σ weight × total … Ties: lower cost, then fewer changed paths, then the smaller sorted list of path=part."
        .min(
            Comparator.comparing((BestBuild best) -> best.benefit).reversed()
                .thenComparing(BestBuild::cost)
                .thenComparing(BestBuild::changed)
                .thenComparing(best -> Paths.list(entries, best.build), Paths.LISTS));
  }

  private static boolean keepsLimits(Entries entries, Assembly build, Demands demands) {
    return entries.section("limits").stream()
        .allMatch(limit -> Margin.of(entries, limit, build, demands.outfit()).map(Margin::holds).orElse(true));
  }

  /**
   * "Σ weight × total (sign turned for {@code better: lower}; loaded as the build says; the outfit applied)". An attribute without
   * a value adds nothing.
   */
  private static BigDecimal benefit(Entries entries, Assembly build, Demands demands) {
    Map<String, BigDecimal> weights = Fields.decimals(entries.entry("lenses", demands.lens()), "weights");
    BigDecimal benefit = BigDecimal.ZERO;
    for (AttributeEntry attribute : AttributeEntry.all(entries)) {
      Optional<BigDecimal> total = Totals.total(entries, attribute, build, demands.loaded(), demands.outfit());
      if (weights.containsKey(attribute.id()) && total.isPresent()) {
        BigDecimal weighed = total.get().multiply(weights.get(attribute.id()));
        benefit = attribute.better().equals("lower") ? benefit.subtract(weighed) : benefit.add(weighed);
      }
    }
    return Decimals.plain(benefit);
  }
}

package fettle.oracle;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;

/** "Value ladder" of meaning.md for one (platform, H, S), lens and access profile. */
public final class Ladder {
  private final Entries entries;
  private final Map<String, BigDecimal> weights;
  private final SortedMap<String, List<Offer>> groups = new TreeMap<>();

  /** How good a choice's place is among those with the same roles; the better the earlier. */
  public enum Standing {
    RUNG,
    BETWEEN,
    DOMINATED
  }

  /** One choice with what it costs and what it brings. */
  public record Offer(Choice choice, SortedSet<String> roles, BigDecimal cost, BigDecimal benefit) {}

  /** A rung: its choices, which are alike in cost and benefit, and the step price from the rung below; empty on the first. */
  public record Rung(BigDecimal cost, BigDecimal benefit, List<Choice> choices, Optional<Fraction> step) {}

  public Ladder(Space space, String host, String slot, String lens, Optional<String> access) {
    this.entries = space.entries();
    this.weights = Fields.decimals(entries.entry("lenses", lens), "weights");
    Costs costs = Costs.of(entries, access, Set.of());
    // "Take the placeable, obtainable assemblies, with the empty choice where the slot is not required"
    List<Choice> choices = new ArrayList<>(new SlotPlaces(space, host, slot).placeable());
    choices.remove(Choice.EMPTY);
    if (!entries.host(host).slot(slot).orElseThrow().required()) {
      choices.add(0, Choice.EMPTY);
    }
    for (Choice choice : choices) {
      costs
          .ofAll(choice.parts())
          .map(cost -> new Offer(choice, choice.roles(entries), cost, benefit(choice)))
          .ifPresent(offer -> groups.computeIfAbsent(offer.roles.toString(), any -> new ArrayList<>()).add(offer));
    }
  }

  /**
   * "benefit is Σ weight × contribution, with the sign turned for {@code better: lower} ({@code sum} and {@code percent}
   * attributes only)".
   */
  private BigDecimal benefit(Choice choice) {
    BigDecimal benefit = BigDecimal.ZERO;
    for (AttributeEntry attribute : AttributeEntry.all(entries)) {
      boolean counts = attribute.combine().equals("sum") || attribute.combine().equals("percent");
      if (counts && weights.containsKey(attribute.id())) {
        BigDecimal contribution =
            Contributions.of(entries, choice, new Contributions.Aspect(attribute, false)).orElseThrow();
        BigDecimal weighed = contribution.multiply(weights.get(attribute.id()));
        benefit = attribute.better().equals("lower") ? benefit.subtract(weighed) : benefit.add(weighed);
      }
    }
    return Decimals.plain(benefit);
  }

  /** The offers, "among those with the same set of role kinds". */
  public List<List<Offer>> groups() {
    return List.copyOf(groups.values());
  }

  /** Where one offer stands in its group. */
  public static Standing standing(List<Offer> group, Offer offer) {
    if (group.stream().anyMatch(other -> dominates(other, offer))) {
      return Standing.DOMINATED;
    }
    return group.stream().anyMatch(low -> group.stream().anyMatch(high -> mixBeats(low, high, offer)))
        ? Standing.BETWEEN
        : Standing.RUNG;
  }

  /** "dominated: another has no higher cost and no lower benefit, and differs in one" */
  private static boolean dominates(Offer other, Offer offer) {
    int cost = other.cost.compareTo(offer.cost);
    int benefit = other.benefit.compareTo(offer.benefit);
    return cost <= 0 && benefit >= 0 && (cost != 0 || benefit != 0);
  }

  /**
   * "between: not dominated, but a mix of two others gives no less benefit for no more cost: it lies below the upper concave hull
   * of (cost, benefit)". A point on the line between two others is on the hull, not below it.
   */
  private static boolean mixBeats(Offer low, Offer high, Offer offer) {
    if (low.cost.compareTo(offer.cost) >= 0 || high.cost.compareTo(offer.cost) <= 0) {
      return false;
    }
    // low.benefit + (high.benefit − low.benefit) × (offer.cost − low.cost) / (high.cost − low.cost)
    Fraction share =
        Fraction.of(offer.cost.subtract(low.cost)).over(Fraction.of(high.cost.subtract(low.cost)));
    Fraction mixed = Fraction.of(low.benefit).plus(Fraction.of(high.benefit.subtract(low.benefit)).times(share));
    return mixed.compareTo(Fraction.of(offer.benefit)) > 0;
  }

  /** "rung: on that hull. Each rung has a step price: extra cost over extra benefit from the rung below." Cheapest first. */
  public static List<Rung> rungs(List<Offer> group) {
    SortedMap<BigDecimal, List<Offer>> byCost = new TreeMap<>();
    group.stream()
        .filter(offer -> standing(group, offer) == Standing.RUNG)
        .forEach(offer -> byCost.computeIfAbsent(offer.cost, any -> new ArrayList<>()).add(offer));
    List<Rung> rungs = new ArrayList<>();
    for (List<Offer> alike : byCost.values()) {
      BigDecimal cost = alike.get(0).cost;
      BigDecimal benefit = alike.get(0).benefit;
      Optional<Fraction> step =
          rungs.isEmpty()
              ? Optional.empty()
              : Optional.of(
                  Fraction.of(cost.subtract(rungs.get(rungs.size() - 1).cost))
                      .over(Fraction.of(benefit.subtract(rungs.get(rungs.size() - 1).benefit))));
      rungs.add(new Rung(cost, benefit, alike.stream().map(Offer::choice).toList(), step));
    }
    return rungs;
  }

  /** "A part's standing is the best among the assemblies it heads: rung, else between, else dominated." */
  public SortedMap<String, Standing> standings() {
    SortedMap<String, Standing> standings = new TreeMap<>();
    for (List<Offer> group : groups.values()) {
      for (Offer offer : group) {
        offer.choice.head()
            .ifPresent(
                part ->
                    standings.merge(
                        part, standing(group, offer), (one, other) -> one.compareTo(other) < 0 ? one : other));
      }
    }
    return standings;
  }
}

package fettle.oracle;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.SortedSet;
import java.util.TreeSet;
import tools.jackson.databind.JsonNode;

/**
 * The fewest parts that must be exchanged, taken out or put in to make a written build a valid one, found by looking at every valid
 * build. Which position in a slot a part has makes no difference. The written build must not state notches.
 *
 * @param changes how many
 * @param likeness how like the written build a valid one so near can be
 * @param outlay the least that a valid build so near and so like comes to: the fewest parts that can't be had, then the cost of the rest
 * @param builds how many valid builds are so near
 */
public record NearestRepair(int changes, Likeness likeness, Outlay outlay, int builds) {

  /**
   * What tells a repaired build from the written one, wherever the parts sit.
   *
   * @param out how many parts that there still are it lacks
   * @param roles how many parts of a role kind it has too few
   * @param in how many parts it has that the written build hasn't
   */
  public record Likeness(int out, int roles, int in) {}

  /**
   * What a build comes to.
   *
   * @param unobtainable how many of its parts are unobtainable
   * @param cost what the others cost
   */
  public record Outlay(int unobtainable, BigDecimal cost) {}

  /** Looks at all valid builds of the build's platform; empty where there is none. */
  public static Optional<NearestRepair> of(Entries before, Space now, JsonNode build) {
    return nearest(before, now.builds(), now.entries(), build);
  }

  /** The same among those builds alone that have all parts of the written one which there still are. */
  public static Optional<NearestRepair> keeping(Entries before, Space now, JsonNode build) {
    Assembly written = WrittenBuild.read(before, build).root().orElseThrow();
    List<Assembly> keeping = now.builds().stream().filter(valid -> likeness(before, written, now.entries(), valid).out() == 0).toList();
    return nearest(before, keeping, now.entries(), build);
  }

  private static Optional<NearestRepair> nearest(Entries before, List<Assembly> builds, Entries now, JsonNode build) {
    Assembly written = WrittenBuild.read(before, build).root().orElseThrow();
    Optional<Integer> fewest = builds.stream().map(valid -> changed(written, valid)).min(Comparator.naturalOrder());
    return fewest.map(
        changes -> {
          List<Assembly> near = builds.stream().filter(valid -> changed(written, valid) == changes).toList();
          Likeness most =
              near.stream()
                  .map(valid -> likeness(before, written, now, valid))
                  .min(Comparator.comparing(Likeness::out).thenComparing(Likeness::roles).thenComparing(Likeness::in))
                  .orElseThrow();
          Outlay least =
              near.stream()
                  .filter(valid -> likeness(before, written, now, valid).equals(most))
                  .map(valid -> outlay(now, build, valid))
                  .min(Comparator.comparing(Outlay::unobtainable).thenComparing(Outlay::cost))
                  .orElseThrow();
          return new NearestRepair(changes, most, least, near.size());
        });
  }

  /** How like the written build a repaired one is. */
  public static Likeness likeness(Entries before, JsonNode build, Entries now, JsonNode repaired) {
    return likeness(
        before, WrittenBuild.read(before, build).root().orElseThrow(), now, WrittenBuild.read(now, repaired).root().orElseThrow());
  }

  private static Likeness likeness(Entries before, Assembly written, Entries now, Assembly repaired) {
    List<String> had = written.parts().subList(1, written.parts().size());
    List<String> has = repaired.parts().subList(1, repaired.parts().size());
    long out = without(had, has).stream().filter(part -> now.part(part).isPresent()).count();
    return new Likeness((int) out, without(roles(before, had), roles(now, has)).size(), without(has, had).size());
  }

  private static List<String> roles(Entries entries, List<String> parts) {
    return parts.stream().map(part -> entries.part(part).orElseThrow().kind()).filter(entries::isRole).toList();
  }

  /** The list without as many of each as are in the other one. */
  private static List<String> without(List<String> list, List<String> other) {
    List<String> left = new ArrayList<>(list);
    other.forEach(left::remove);
    return left;
  }

  /** What a repaired build comes to. */
  public static Outlay outlay(Entries now, JsonNode repaired) {
    return outlay(now, repaired, WrittenBuild.read(now, repaired).root().orElseThrow());
  }

  private static Outlay outlay(Entries now, JsonNode build, Assembly repaired) {
    Costs costs = costs(now, build);
    List<String> counted = repaired.parts().subList(1, repaired.parts().size());
    List<BigDecimal> prices = counted.stream().flatMap(part -> costs.ofPart(part).stream()).toList();
    return new Outlay(counted.size() - prices.size(), Decimals.plain(prices.stream().reduce(BigDecimal.ZERO, BigDecimal::add)));
  }

  /** What the whole costs; empty where it can't be had. */
  public static Optional<BigDecimal> cost(Entries now, JsonNode repaired) {
    return costs(now, repaired).ofBuild(WrittenBuild.read(now, repaired).root().orElseThrow());
  }

  private static Costs costs(Entries entries, JsonNode build) {
    return Costs.of(entries, Fields.named(build, "access"), new HashSet<>(Fields.texts(build, "owned")));
  }

  /** In how many seats two builds differ below hosts that are matched. */
  private static int changed(Assembly before, Assembly after) {
    SortedSet<String> slots = new TreeSet<>(before.slots().keySet());
    slots.addAll(after.slots().keySet());
    return slots.stream().mapToInt(slot -> fewest(before.held(slot), after.held(slot))).sum();
  }

  /** Leaves the first unmatched, or tries every partner for it. */
  private static int fewest(List<Assembly> before, List<Assembly> after) {
    if (before.isEmpty()) {
      return after.stream().mapToInt(assembly -> assembly.parts().size()).sum();
    }
    Assembly first = before.get(0);
    List<Assembly> rest = before.subList(1, before.size());
    int fewest = first.parts().size() + fewest(rest, after);
    for (int i = 0; i < after.size(); i++) {
      List<Assembly> others = new ArrayList<>(after);
      Assembly partner = others.remove(i);
      int here = (first.part().equals(partner.part()) ? 0 : 1) + changed(first, partner);
      fewest = Math.min(fewest, here + fewest(rest, others));
    }
    return fewest;
  }
}

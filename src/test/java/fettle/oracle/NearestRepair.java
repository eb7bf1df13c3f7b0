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
 * @param cost the least that a valid build so near costs; empty where none can be had whole
 * @param builds how many valid builds are so near
 */
public record NearestRepair(int changes, Optional<BigDecimal> cost, int builds) {

  /** Looks at all valid builds of the build's platform; empty where there is none. */
  public static Optional<NearestRepair> of(Entries before, Space now, JsonNode build) {
    Assembly written = WrittenBuild.read(before, build).root().orElseThrow();
    Costs costs = Costs.of(now.entries(), Fields.named(build, "access"), new HashSet<>(Fields.texts(build, "owned")));
    Optional<Integer> fewest = now.builds().stream().map(valid -> changed(written, valid)).min(Comparator.naturalOrder());
    return fewest.map(
        changes -> {
          List<Assembly> near = now.builds().stream().filter(valid -> changed(written, valid) == changes).toList();
          return new NearestRepair(
              changes, near.stream().flatMap(valid -> costs.ofBuild(valid).stream()).min(Comparator.naturalOrder()), near.size());
        });
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

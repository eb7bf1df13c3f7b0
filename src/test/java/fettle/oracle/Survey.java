package fettle.oracle;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;

/** "Over all valid builds of a platform", by looking at each of them. */
public final class Survey {
  private final Space space;
  private final Entries entries;
  private final PartEntry platform;

  public Survey(Space space) {
    this.space = space;
    this.entries = space.entries();
    this.platform = entries.platform(space.platform()).orElseThrow();
  }

  /** "Count: the number of different valid builds". */
  public int count() {
    return space.builds().size();
  }

  /** "Void platform: it has no valid build." */
  public boolean isVoid() {
    return count() == 0;
  }

  /** The parts that are not "unreachable": a chain of fits leads to them from the platform. */
  public SortedSet<String> reachable() {
    SortedSet<String> reached = new TreeSet<>();
    List<PartEntry> hosts = new ArrayList<>(List.of(platform));
    for (int next = 0; next < hosts.size(); next++) {
      for (SlotEntry slot : hosts.get(next).slots()) {
        for (PartEntry part : entries.parts()) {
          if (Validity.fits(part, slot) && reached.add(part.id())) {
            hosts.add(part);
          }
        }
      }
    }
    return reached;
  }

  /** "Homeless: it fits no slot of the catalog." */
  public static SortedSet<String> homeless(Entries entries) {
    SortedSet<String> homeless = new TreeSet<>(entries.partIds());
    List<PartEntry> hosts = new ArrayList<>(entries.platforms());
    hosts.addAll(entries.parts());
    for (PartEntry host : hosts) {
      for (SlotEntry slot : host.slots()) {
        homeless.removeIf(id -> Validity.fits(entries.part(id).orElseThrow(), slot));
      }
    }
    return homeless;
  }

  /** "Dead part: reachable, but in no valid build." */
  public SortedSet<String> deadParts() {
    SortedSet<String> dead = reachable();
    space.builds().forEach(build -> dead.removeAll(placed(build)));
    return dead;
  }

  /**
   * "Dead slot: a (host, slot) in which no valid build holds a part." The hosts are the platform and each reachable part, dead
   * ones too. Written "host/slot".
   */
  public SortedSet<String> deadSlots() {
    SortedSet<String> dead = new TreeSet<>();
    SortedSet<String> hosts = reachable();
    hosts.add(platform.id());
    for (String host : hosts) {
      entries.host(host).slots().forEach(slot -> dead.add(host + "/" + slot.id()));
    }
    space.builds().forEach(build -> dead.removeAll(filledSlots(build)));
    return dead;
  }

  private static List<String> filledSlots(Assembly assembly) {
    List<String> filled = new ArrayList<>();
    assembly.slots().forEach(
        (slot, held) -> {
          filled.add(assembly.part() + "/" + slot);
          held.forEach(child -> filled.addAll(filledSlots(child)));
        });
    return filled;
  }

  /** "Essential part: in every valid build." A void platform has none. */
  public SortedSet<String> essentialParts() {
    SortedSet<String> essential = new TreeSet<>(isVoid() ? List.of() : entries.partIds());
    space.builds().forEach(build -> essential.retainAll(placed(build)));
    return essential;
  }

  /** The first valid build, in the order of their texts, that holds all these parts; empty where they cannot be together. */
  public Optional<Assembly> together(Collection<String> parts) {
    return space.builds().stream().filter(build -> placed(build).containsAll(parts)).findFirst();
  }

  /** The least and the greatest of an attribute's totals. */
  public record Range(BigDecimal least, BigDecimal greatest) {}

  /**
   * "Range of an attribute: its least and greatest total over valid builds (unloaded, no outfit)", over the builds in which it
   * has a value; no entry where it has one in none.
   */
  public SortedMap<String, Range> ranges() {
    SortedMap<String, Range> ranges = new TreeMap<>();
    for (Assembly build : space.builds()) {
      Totals.of(entries, build, false, Optional.empty())
          .forEach(
              (attribute, total) ->
                  ranges.merge(
                      attribute,
                      new Range(total, total),
                      (one, other) -> new Range(one.least.min(other.least), one.greatest.max(other.greatest))));
    }
    return ranges;
  }

  private static List<String> placed(Assembly build) {
    return build.parts().subList(1, build.parts().size());
  }
}

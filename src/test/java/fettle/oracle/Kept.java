package fettle.oracle;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * What a build must keep: the part at each kept path. What stands between is free; in a slot of several parts each kept one must
 * be found among those that are there, in any order.
 *
 * @param part the part that must be here; empty where any will do
 */
record Kept(Optional<String> part, SortedMap<String, List<Kept>> slots) {

  /**
   * The demand that these paths of a build, as it is written, keep what they hold.
   *
   * @throws IllegalArgumentException where a path of them holds nothing
   */
  static Kept of(Entries entries, Assembly before, Set<String> paths) {
    List<String> open = new ArrayList<>(paths);
    Kept kept = of(entries, before, "", paths, open);
    if (!open.isEmpty()) {
      throw new IllegalArgumentException("nothing to keep at " + open);
    }
    return kept;
  }

  private static Kept of(Entries entries, Assembly here, String path, Set<String> paths, List<String> open) {
    SortedMap<String, List<Kept>> slots = new TreeMap<>();
    here.slots().forEach(
        (slot, held) -> {
          boolean numbered = entries.host(here.part()).slot(slot).orElseThrow().most() > 1;
          for (int position = 0; position < held.size(); position++) {
            String name = numbered ? slot + ":" + position : slot;
            Kept child =
                of(entries, held.get(position), path.isEmpty() ? name : path + "/" + name, paths, open);
            if (child.part.isPresent() || !child.slots.isEmpty()) {
              slots.computeIfAbsent(slot, any -> new ArrayList<>()).add(child);
            }
          }
        });
    boolean kept = paths.contains(path);
    open.remove(path);
    return new Kept(kept ? Optional.of(here.part()) : Optional.empty(), slots);
  }

  boolean by(Assembly assembly) {
    return (part.isEmpty() || part.get().equals(assembly.part()))
        && slots.entrySet().stream().allMatch(slot -> matched(slot.getValue(), assembly.held(slot.getKey())));
  }

  /** Whether each demand can be given an assembly of its own that meets it. */
  private static boolean matched(List<Kept> demands, List<Assembly> held) {
    if (demands.isEmpty()) {
      return true;
    }
    for (int i = 0; i < held.size(); i++) {
      List<Assembly> others = new ArrayList<>(held);
      others.remove(i);
      if (demands.get(0).by(held.get(i)) && matched(demands.subList(1, demands.size()), others)) {
        return true;
      }
    }
    return false;
  }
}

package fettle.oracle;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * A build written as paths. Since the order of parts within a slot is no difference, they are numbered in one order: that of
 * their own sorted lists of path=part.
 */
final class Paths {
  /** Lists of text, the first difference deciding; a list that ends where the other goes on is the smaller. */
  static final Comparator<List<String>> LISTS =
      (one, other) -> {
        for (int i = 0; i < Math.min(one.size(), other.size()); i++) {
          int order = one.get(i).compareTo(other.get(i));
          if (order != 0) {
            return order;
          }
        }
        return Integer.compare(one.size(), other.size());
      };

  private Paths() {}

  /** The part at each path of a build; the platform is not in it. */
  static SortedMap<String, String> of(Entries entries, Assembly build) {
    SortedMap<String, String> paths = new TreeMap<>();
    for (Map.Entry<String, List<Assembly>> slot : build.slots().entrySet()) {
      boolean numbered = numbered(entries, build, slot.getKey());
      List<Assembly> held =
          slot.getValue().stream()
              .sorted(Comparator.comparing((Assembly assembly) -> withHead(entries, assembly), LISTS))
              .toList();
      for (int position = 0; position < held.size(); position++) {
        String path = numbered ? slot.getKey() + ":" + position : slot.getKey();
        paths.put(path, held.get(position).part());
        of(entries, held.get(position)).forEach((inner, part) -> paths.put(path + "/" + inner, part));
      }
    }
    return paths;
  }

  /** The sorted list of path=part. */
  static List<String> list(Entries entries, Assembly build) {
    return of(entries, build).entrySet().stream().map(path -> path.getKey() + "=" + path.getValue()).sorted().toList();
  }

  private static List<String> withHead(Entries entries, Assembly assembly) {
    List<String> list = new ArrayList<>(List.of("=" + assembly.part()));
    list.addAll(list(entries, assembly));
    return list;
  }

  /**
   * How many paths have another part in one build than in the other, or have one in only one of them: the fewest over all orders
   * in which the parts of each slot can be written, since the order is no difference.
   */
  static int changed(Entries entries, Assembly before, Assembly after) {
    SortedSet<String> slots = new TreeSet<>(before.slots().keySet());
    slots.addAll(after.slots().keySet());
    int changed = 0;
    for (String slot : slots) {
      List<Assembly> was = before.held(slot);
      List<Assembly> is = after.held(slot);
      // "s" and "s:0" are two paths: where only one of two hosts numbers the slot, nothing is at the same path.
      boolean samePaths = was.isEmpty() || is.isEmpty() || numbered(entries, before, slot) == numbered(entries, after, slot);
      changed += samePaths ? fewest(entries, was, is) : size(was) + size(is);
    }
    return changed;
  }

  /** Tries every partner for the first of the shorter list. */
  private static int fewest(Entries entries, List<Assembly> one, List<Assembly> other) {
    if (one.size() > other.size()) {
      return fewest(entries, other, one);
    }
    if (one.isEmpty()) {
      return size(other);
    }
    int fewest = Integer.MAX_VALUE;
    for (int i = 0; i < other.size(); i++) {
      List<Assembly> rest = new ArrayList<>(other);
      Assembly partner = rest.remove(i);
      int here = one.get(0).part().equals(partner.part()) ? 0 : 1;
      int inside = changed(entries, one.get(0), partner);
      fewest = Math.min(fewest, here + inside + fewest(entries, one.subList(1, one.size()), rest));
    }
    return fewest;
  }

  private static int size(List<Assembly> assemblies) {
    return assemblies.stream().mapToInt(assembly -> assembly.parts().size()).sum();
  }

  /** format.md, Build file: a path names the position in a slot with {@code most} > 1. */
  private static boolean numbered(Entries entries, Assembly host, String slot) {
    return entries.host(host.part()).slot(slot).orElseThrow().most() > 1;
  }
}

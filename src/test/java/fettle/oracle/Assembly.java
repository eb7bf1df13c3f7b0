package fettle.oracle;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * A part and, for each of its slots, a list of assemblies; at the root of a build the part is the platform. Slots that hold
 * nothing are left out.
 *
 * @param at the first notch that the part takes, where the build says it
 */
public record Assembly(String part, Optional<Integer> at, SortedMap<String, List<Assembly>> slots) {

  public Assembly {
    SortedMap<String, List<Assembly>> filled = new TreeMap<>();
    slots.forEach(
        (slot, held) -> {
          if (!held.isEmpty()) {
            filled.put(slot, List.copyOf(held));
          }
        });
    slots = Collections.unmodifiableSortedMap(filled);
  }

  /** A part whose notch is not said. */
  public static Assembly of(String part, Map<String, List<Assembly>> slots) {
    return new Assembly(part, Optional.empty(), new TreeMap<>(slots));
  }

  /** A part with nothing on it. */
  public static Assembly bare(String part) {
    return of(part, Map.of());
  }

  /** What the slot holds; empty where it holds nothing. */
  public List<Assembly> held(String slot) {
    return slots.getOrDefault(slot, List.of());
  }

  /** The same with another content of one slot. */
  public Assembly with(String slot, List<Assembly> held) {
    SortedMap<String, List<Assembly>> changed = new TreeMap<>(slots);
    changed.put(slot, held);
    return new Assembly(part, at, changed);
  }

  /**
   * The one form of all builds that are the same: "Two builds are the same when they differ in nothing but {@code at} and the
   * order of parts within a slot." Forgets {@code at} and puts the parts of each slot in the order of their {@link #text}.
   */
  public Assembly canonical() {
    SortedMap<String, List<Assembly>> sorted = new TreeMap<>();
    slots.forEach(
        (slot, held) ->
            sorted.put(
                slot, held.stream().map(Assembly::canonical).sorted(Comparator.comparing(Assembly::text)).toList()));
    return new Assembly(part, Optional.empty(), sorted);
  }

  /** Every part in it, each occurrence by itself, its own first. */
  public List<String> parts() {
    List<String> all = new ArrayList<>(List.of(part));
    slots.values().forEach(held -> held.forEach(assembly -> all.addAll(assembly.parts())));
    return all;
  }

  /** For example {@code base{rail=[lamp,sight{lens=[red]}]}}. */
  public String text() {
    StringBuilder text = new StringBuilder(part);
    at.ifPresent(notch -> text.append('@').append(notch));
    if (!slots.isEmpty()) {
      text.append('{');
      String comma = "";
      for (Map.Entry<String, List<Assembly>> slot : slots.entrySet()) {
        text.append(comma).append(slot.getKey()).append("=[");
        text.append(String.join(",", slot.getValue().stream().map(Assembly::text).toList())).append(']');
        comma = ";";
      }
      text.append('}');
    }
    return text.toString();
  }

  @Override
  public String toString() {
    return text();
  }
}

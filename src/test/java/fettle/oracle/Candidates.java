package fettle.oracle;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * All ways to fill a platform that heed the clauses about one slot alone (Fit, Not in itself, Room); whoever asks holds the rest
 * of the clauses against them, and those three again.
 */
final class Candidates {
  private final Entries entries;

  private Candidates(Entries entries) {
    this.entries = entries;
  }

  /** Each candidate build of the platform once; {@link CandidateCount} tells beforehand how many there are. */
  static List<Assembly> of(Entries entries, String platform) {
    return new Candidates(entries).fillings(entries.platform(platform).orElseThrow(), List.of());
  }

  /** The host with each of its slots filled in every way. */
  private List<Assembly> fillings(PartEntry host, List<String> above) {
    List<Map<String, List<Assembly>>> fillings = List.of(Map.of());
    for (SlotEntry slot : host.slots()) {
      List<List<Assembly>> choices = choices(slot, above);
      List<Map<String, List<Assembly>>> extended = new ArrayList<>();
      for (Map<String, List<Assembly>> filling : fillings) {
        for (List<Assembly> choice : choices) {
          Map<String, List<Assembly>> more = new LinkedHashMap<>(filling);
          more.put(slot.id(), choice);
          extended.add(more);
        }
      }
      fillings = extended;
    }
    return fillings.stream().map(slots -> Assembly.of(host.id(), slots).canonical()).toList();
  }

  /** Every multiset of assemblies that the slot may hold directly. */
  private List<List<Assembly>> choices(SlotEntry slot, List<String> above) {
    List<Assembly> pool = new ArrayList<>();
    for (PartEntry part : entries.parts()) {
      if (Validity.fits(part, slot) && !above.contains(part.id())) {
        List<String> path = new ArrayList<>(above);
        path.add(part.id());
        pool.addAll(fillings(part, path));
      }
    }
    List<List<Assembly>> choices = new ArrayList<>();
    choose(slot, pool, 0, List.of(), choices);
    if (slot.required()) {
      choices.remove(List.<Assembly>of());
    }
    return choices;
  }

  /** Goes on from those chosen with the assemblies from {@code next} on: in that order, so that each multiset comes once. */
  private void choose(
      SlotEntry slot, List<Assembly> pool, int next, List<Assembly> chosen, List<List<Assembly>> choices) {
    choices.add(chosen);
    for (int i = next; i < pool.size() && chosen.size() < slot.most(); i++) {
      Assembly one = pool.get(i);
      List<Assembly> more = new ArrayList<>(chosen);
      more.add(one);
      boolean twice = chosen.stream().anyMatch(other -> other.part().equals(one.part()));
      int length = more.stream().mapToInt(assembly -> entries.host(assembly.part()).span()).sum();
      if ((!twice || slot.repeats()) && (slot.units().isEmpty() || length <= slot.units().getAsInt())) {
        choose(slot, pool, slot.repeats() ? i : i + 1, List.copyOf(more), choices);
      }
    }
  }
}

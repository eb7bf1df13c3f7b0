package fettle.oracle;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;

/** Where in the valid builds of a platform a slot S of a host H holds which choice, and what becomes of a build when it changes. */
final class SlotPlaces {
  private final Space space;
  private final String host;
  private final SlotEntry slot;
  private final Map<Choice, List<Place>> places = new TreeMap<>(Comparator.comparing(Choice::toString));

  SlotPlaces(Space space, String host, String slot) {
    this.space = space;
    this.host = host;
    this.slot = space.entries().host(host).slot(slot).orElseThrow();
    for (Assembly build : space.builds()) {
      find(build, build, List.of());
    }
  }

  /** One step down a build: the assembly at that position of the slot. */
  private record Step(String slot, int position) {}

  /** One occurrence of the host in a valid build, and the position in its slot; for the empty choice the position is 0. */
  private record Place(Assembly build, List<Step> toHost, int position) {}

  /**
   * "An assembly is placeable there when some valid build has it in S of some occurrence of H. The empty choice counts as an
   * assembly with no parts where {@code most} is 1."
   */
  Set<Choice> placeable() {
    return places.keySet();
  }

  /** "for every valid build with A in S of an occurrence of H, putting W in place of that A gives a valid build" */
  boolean keepsEveryBuildValid(Choice a, Choice w) {
    return places.getOrDefault(a, List.of()).stream().allMatch(place -> space.has(replaced(place, w)));
  }

  private void find(Assembly build, Assembly here, List<Step> path) {
    if (here.part().equals(host)) {
      List<Assembly> held = here.held(slot.id());
      for (int position = 0; position < held.size(); position++) {
        found(Choice.of(held.get(position)), new Place(build, path, position));
      }
      if (held.isEmpty() && slot.most() == 1) {
        found(Choice.EMPTY, new Place(build, path, 0));
      }
    }
    here.slots().forEach(
        (name, held) -> {
          for (int position = 0; position < held.size(); position++) {
            List<Step> further = new ArrayList<>(path);
            further.add(new Step(name, position));
            find(build, held.get(position), further);
          }
        });
  }

  private void found(Choice choice, Place place) {
    places.computeIfAbsent(choice, any -> new ArrayList<>()).add(place);
  }

  private Assembly replaced(Place place, Choice w) {
    return replaced(place.build, place.toHost, place.position, w).canonical();
  }

  private Assembly replaced(Assembly here, List<Step> path, int position, Choice w) {
    if (path.isEmpty()) {
      List<Assembly> held = new ArrayList<>(here.held(slot.id()));
      if (!held.isEmpty()) {
        held.remove(position);
      }
      w.assembly().ifPresent(held::add);
      return here.with(slot.id(), held);
    }
    Step step = path.get(0);
    List<Assembly> held = new ArrayList<>(here.held(step.slot));
    held.set(step.position, replaced(held.get(step.position), path.subList(1, path.size()), position, w));
    return here.with(step.slot, held);
  }
}

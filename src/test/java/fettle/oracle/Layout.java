package fettle.oracle;

import java.util.ArrayList;
import java.util.List;

/** A build spread out: its platform, its placed parts, each occurrence by itself, and the slots of all of them. */
record Layout(Occurrence platform, List<Occurrence> placed, List<Spot> spots) {

  /**
   * One occurrence of a part, or the platform.
   *
   * @param slotPath the path of the slot it sits in, without its position; the platform sits in none and has ""
   * @param above the parts above it, from the platform's slots outward
   */
  record Occurrence(String path, String slotPath, PartEntry entry, List<String> above) {}

  /** One slot of the platform or of an occurrence, and what sits directly in it. */
  record Spot(String path, SlotEntry slot, List<Assembly> held) {}

  static Layout of(Entries entries, Assembly build) {
    PartEntry platform = entries.platform(build.part()).orElseThrow();
    Layout layout =
        new Layout(new Occurrence("", "", platform, List.of()), new ArrayList<>(), new ArrayList<>());
    layout.spread(entries, layout.platform, build);
    return layout;
  }

  /** The platform counts like a placed part, save that it is none. */
  List<Occurrence> all() {
    List<Occurrence> all = new ArrayList<>(List.of(platform));
    all.addAll(placed);
    return all;
  }

  private void spread(Entries entries, Occurrence host, Assembly assembly) {
    for (SlotEntry slot : host.entry.slots()) {
      String slotPath = host.path.isEmpty() ? slot.id() : host.path + "/" + slot.id();
      List<Assembly> held = assembly.held(slot.id());
      spots.add(new Spot(slotPath, slot, held));
      for (int position = 0; position < held.size(); position++) {
        Assembly child = held.get(position);
        // format.md, Build file: where most > 1 a path that goes on "names the position"
        boolean numbered = slot.most() > 1 || held.size() > 1;
        List<String> above = new ArrayList<>(host.above);
        if (host != platform) {
          above.add(host.entry.id());
        }
        Occurrence occurrence =
            new Occurrence(
                numbered ? slotPath + ":" + position : slotPath,
                slotPath,
                entries.part(child.part()).orElseThrow(),
                above);
        placed.add(occurrence);
        spread(entries, occurrence, child);
      }
    }
  }
}

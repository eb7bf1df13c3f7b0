package fettle.oracle;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/** Writes assemblies as a build file's {@code parts} map has them. */
public final class BuildText {
  private final Entries entries;
  private final ObjectNode parts = Sketch.NODES.objectNode();

  private BuildText(Entries entries) {
    this.entries = entries;
  }

  /** The build as it stands: lists in their order, {@code at} where it is given. */
  public static ObjectNode parts(Entries entries, Assembly build) {
    BuildText text = new BuildText(entries);
    text.write("", build);
    return text.parts;
  }

  /** The same build, written in a random order and with places for some of its parts that the slot has room for. */
  static Assembly laidOut(Entries entries, Assembly build, Random random) {
    Assembly laidOut = build;
    for (String slot : build.slots().keySet()) {
      List<Assembly> held = new ArrayList<>(build.held(slot));
      Collections.shuffle(held, random);
      held.replaceAll(assembly -> laidOut(entries, assembly, random));
      SlotEntry entry = entries.host(build.part()).slot(slot).orElseThrow();
      laidOut = laidOut.with(slot, entry.units().isPresent() && entry.most() > 1 ? placed(entries, entry, held, random) : held);
    }
    return laidOut;
  }

  /** Places them from left to right with random gaps, and tells the places of about half. */
  private static List<Assembly> placed(Entries entries, SlotEntry slot, List<Assembly> held, Random random) {
    int spare =
        slot.units().getAsInt() - held.stream().mapToInt(assembly -> entries.host(assembly.part()).span()).sum();
    int notch = 0;
    List<Assembly> placed = new ArrayList<>();
    for (Assembly assembly : held) {
      int gap = random.nextInt(spare + 1);
      spare -= gap;
      notch += gap;
      Optional<Integer> at = random.nextBoolean() ? Optional.of(notch) : Optional.empty();
      placed.add(new Assembly(assembly.part(), at, assembly.slots()));
      notch += entries.host(assembly.part()).span();
    }
    Collections.shuffle(placed, random);
    return placed;
  }

  private void write(String path, Assembly host) {
    host.slots().forEach(
        (slot, held) -> {
          // A slot that the host does not have is written all the same: the path then leads nowhere.
          int most = entries.host(host.part()).slot(slot).map(SlotEntry::most).orElse(1);
          boolean several = most > 1 || held.size() > 1;
          String slotPath = path.isEmpty() ? slot : path + "/" + slot;
          parts.set(slotPath, several ? list(held) : Sketch.text(held.get(0).part()));
          for (int position = 0; position < held.size(); position++) {
            write(several ? slotPath + ":" + position : slotPath, held.get(position));
          }
        });
  }

  private static ArrayNode list(List<Assembly> held) {
    ArrayNode list = Sketch.NODES.arrayNode();
    held.forEach(assembly -> list.add(occupant(assembly)));
    return list;
  }

  private static JsonNode occupant(Assembly assembly) {
    return assembly
        .at()
        .map(at -> (JsonNode) Sketch.NODES.objectNode().put("part", assembly.part()).put("at", at))
        .orElse(Sketch.text(assembly.part()));
  }
}

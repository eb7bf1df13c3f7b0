package fettle.oracle;

import java.util.List;
import java.util.OptionalInt;
import tools.jackson.databind.JsonNode;

/** A slot as format.md defines it, its defaults filled in. */
record SlotEntry(
    String id,
    List<String> mounts,
    List<String> accepts,
    List<String> rejects,
    boolean required,
    List<String> tags,
    OptionalInt units,
    int most,
    boolean repeats) {

  static SlotEntry of(JsonNode slot) {
    OptionalInt units = Fields.whole(slot, "units");
    return new SlotEntry(
        Fields.text(slot, "id"),
        Fields.texts(slot, "mounts"),
        Fields.texts(slot, "accepts"),
        Fields.texts(slot, "rejects"),
        Fields.flag(slot, "required", false),
        Fields.texts(slot, "tags"),
        units,
        // format.md, Slot: "most (how many parts; default 1, or units where that is given)"
        Fields.whole(slot, "most").orElse(units.orElse(1)),
        Fields.flag(slot, "repeats", false));
  }
}

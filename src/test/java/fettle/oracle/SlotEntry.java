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
    OptionalInt units = Property.whole(slot, "units");
    return new SlotEntry(
        Property.text(slot, "id"),
        Property.texts(slot, "mounts"),
        Property.texts(slot, "accepts"),
        Property.texts(slot, "rejects"),
        Property.flag(slot, "required", false),
        Property.texts(slot, "tags"),
        units,
        // format.md, Slot: "most (how many parts; default 1, or units where that is given)"
        Property.whole(slot, "most").orElse(units.orElse(1)),
        Property.flag(slot, "repeats", false));
  }
}

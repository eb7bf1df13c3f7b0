package fettle.oracle;

import java.util.ArrayList;
import java.util.List;
import java.util.SortedSet;
import java.util.TreeSet;
import tools.jackson.databind.JsonNode;

/** Which parts fit which slots, each pair asked for by itself. */
public final class Fittings {
  private Fittings() {}

  /** Every fit of a catalog, written {@code host/slot part}. */
  public static SortedSet<String> of(JsonNode catalog) {
    Entries entries = Entries.of(catalog);
    List<PartEntry> hosts = new ArrayList<>(entries.platforms());
    hosts.addAll(entries.parts());
    SortedSet<String> fits = new TreeSet<>();
    for (PartEntry host : hosts) {
      for (SlotEntry slot : host.slots()) {
        for (PartEntry part : entries.parts()) {
          if (Validity.fits(part, slot)) {
            fits.add(host.id() + "/" + slot.id() + " " + part.id());
          }
        }
      }
    }
    return fits;
  }
}

package fettle.oracle;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import net.jqwik.api.Arbitrary;
import tools.jackson.databind.JsonNode;

/** A catalog and all valid builds of each of its platforms. */
public record Scene(JsonNode catalog, Entries entries, List<Space> spaces) {

  /** Enumerates every platform; empty where one has more than {@code most} candidates. */
  public static Optional<Scene> of(JsonNode catalog, int most) {
    Entries entries = Entries.of(catalog);
    List<Space> spaces = new ArrayList<>();
    for (String platform : entries.platformIds()) {
      Optional<Space> space = Space.of(entries, platform, most);
      if (space.isEmpty()) {
        return Optional.empty();
      }
      spaces.add(space.get());
    }
    return Optional.of(new Scene(catalog, entries, List.copyOf(spaces)));
  }

  /** Random catalogs of which no platform has more than {@code most} candidates. */
  public static Arbitrary<Scene> scenes(int most) {
    return RandomCatalogs.catalogs().map(catalog -> of(catalog, most)).filter(Optional::isPresent).map(Optional::get);
  }

  @Override
  public String toString() {
    return catalog.toString();
  }
}

package fettle.oracle;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tools.jackson.databind.JsonNode;

/** The entries of one merged catalog: an object with the sections of format.md, looked up by id. */
public final class Entries {
  private final JsonNode catalog;
  private final Map<String, PartEntry> parts = new LinkedHashMap<>();
  private final Map<String, PartEntry> platforms = new LinkedHashMap<>();

  private Entries(JsonNode catalog) {
    this.catalog = catalog;
    section("parts").forEach(entry -> parts.put(Fields.text(entry, "id"), PartEntry.of(entry)));
    section("platforms").forEach(entry -> platforms.put(Fields.text(entry, "id"), PartEntry.of(entry)));
  }

  /** Reads a merged catalog; references are taken to name something, and ids to be unique. */
  public static Entries of(JsonNode catalog) {
    return new Entries(catalog);
  }

  /** The ids of all platforms, in the order of the catalog. */
  public List<String> platformIds() {
    return List.copyOf(platforms.keySet());
  }

  /** The ids of all parts, in the order of the catalog. */
  public List<String> partIds() {
    return List.copyOf(parts.keySet());
  }

  List<PartEntry> parts() {
    return List.copyOf(parts.values());
  }

  List<PartEntry> platforms() {
    return List.copyOf(platforms.values());
  }

  Optional<PartEntry> part(String id) {
    return Optional.ofNullable(parts.get(id));
  }

  Optional<PartEntry> platform(String id) {
    return Optional.ofNullable(platforms.get(id));
  }

  /** The part or platform of that id; they share one space of ids. */
  PartEntry host(String id) {
    return part(id).or(() -> platform(id)).orElseThrow(() -> new IllegalArgumentException("no host " + id));
  }

  List<JsonNode> section(String name) {
    return catalog.path(name).valueStream().toList();
  }

  JsonNode entry(String section, String id) {
    return section(section).stream()
        .filter(entry -> Fields.text(entry, "id").equals(id))
        .findFirst()
        .orElseThrow(() -> new IllegalArgumentException("no " + id + " in " + section));
  }

  String baseCurrency() {
    return Fields.text(catalog.path("catalog"), "currency");
  }

  /** format.md, kinds: "role (boolean, default false)". */
  boolean isRole(String kind) {
    return section("kinds").stream()
        .anyMatch(entry -> Fields.text(entry, "id").equals(kind) && Fields.flag(entry, "role", false));
  }
}

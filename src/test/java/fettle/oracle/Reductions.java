package fettle.oracle;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.function.Consumer;
import java.util.stream.Stream;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/**
 * What may be left out of a catalog, or of a catalog with a build, so that a failing example gets small enough to read. The
 * document is a catalog, or an object of {@code catalog} and {@code build}. What is left keeps to the schemas; the first platform,
 * access profile, outfit and lens stay, and one part.
 */
final class Reductions {
  private static final Set<String> LISTED = Set.of("constraints", "offers", "limits");
  private static final Set<String> REFERRED = Set.of("platforms", "access", "outfits", "lenses");
  private static final Set<String> NEEDED = Set.of("id", "kind", "when", "because", "platform", "patch", "part");

  private final JsonNode document;
  private final List<JsonNode> smaller = new ArrayList<>();

  private Reductions(JsonNode document) {
    this.document = document;
  }

  /** All documents with one thing less, the greatest cuts first. */
  static Stream<JsonNode> of(JsonNode document) {
    Reductions reductions = new Reductions(document);
    reductions.withoutEntries();
    reductions.withoutProperties();
    return reductions.smaller.stream();
  }

  private static ObjectNode catalog(JsonNode document) {
    return (ObjectNode) (document.has("build") ? document.get("catalog") : document);
  }

  private void withoutEntries() {
    JsonNode catalog = catalog(document);
    if (catalog.get("parts").size() > 1) {
      for (JsonNode part : catalog.get("parts")) {
        cut(
            copy -> {
              forget(copy, part.get("id"));
              catalog(copy).withArray("constraints").removeIf(one -> one.get("when").isEmpty());
            });
      }
    }
    for (String section : REFERRED) {
      // The first of them always stays: a property may count on it.
      for (int i = 1; i < catalog.path(section).size(); i++) {
        int entry = i;
        boolean used = document.path("build").toString().contains(catalog.get(section).get(i).get("id").toString());
        if (!used) {
          cut(copy -> ((ArrayNode) catalog(copy).get(section)).remove(entry));
        }
      }
    }
    for (String section : LISTED) {
      for (int i = 0; i < catalog.path(section).size(); i++) {
        int entry = i;
        cut(copy -> ((ArrayNode) catalog(copy).get(section)).remove(entry));
      }
    }
  }

  /** Takes a part out of its section and out of every list and map that names it. */
  private static void forget(JsonNode here, JsonNode id) {
    if (here instanceof ArrayNode list) {
      list.removeIf(item -> item.equals(id) || item.path("part").equals(id) || item.path("id").equals(id));
    }
    if (here instanceof ObjectNode object) {
      object.removeIf(value -> value.equals(id));
    }
    here.forEach(child -> forget(child, id));
  }

  private void withoutProperties() {
    for (String section : List.of("platforms", "parts", "constraints")) {
      for (int i = 0; i < catalog(document).path(section).size(); i++) {
        int entry = i;
        within(catalog(document).get(section).get(i), copy -> catalog(copy).get(section).get(entry), section.equals("platforms"));
      }
    }
    if (document.has("build")) {
      within(document.get("build"), copy -> copy.get("build"), false);
    }
  }

  private interface Find {
    JsonNode in(JsonNode copy);
  }

  /** Cuts each member and item below; a platform's stats stay, since some attributes cannot do without them. */
  private void within(JsonNode here, Find find, boolean platform) {
    for (String name : here.propertyNames()) {
      if (!NEEDED.contains(name) && !(platform && name.equals("stats"))) {
        cut(copy -> ((ObjectNode) find.in(copy)).remove(name));
        within(here.get(name), copy -> find.in(copy).get(name), false);
      }
    }
    if (here.isArray()) {
      for (int i = 0; i < here.size(); i++) {
        int item = i;
        cut(copy -> ((ArrayNode) find.in(copy)).remove(item));
        within(here.get(i), copy -> find.in(copy).get(item), false);
      }
    }
  }

  private void cut(Consumer<JsonNode> cut) {
    JsonNode copy = document.deepCopy();
    cut.accept(copy);
    smaller.add(copy);
  }
}

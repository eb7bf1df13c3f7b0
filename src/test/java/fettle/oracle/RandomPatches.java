package fettle.oracle;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/**
 * A random catalog, the same after a random patch, and builds for the first. The patch takes some entries, or some of their
 * properties, from a second random catalog, and leaves some parts out.
 */
public final class RandomPatches {
  private final Random random;

  private RandomPatches(Random random) {
    this.random = random;
  }

  /** Both catalogs, and some builds of the old one, more valid ones than not. */
  public record Patch(JsonNode old, JsonNode now, List<JsonNode> builds) {
    @Override
    public String toString() {
      return "old " + old + "\nnow " + now + "\nbuilds " + builds;
    }
  }

  /** Patches of catalogs of which no platform has more than {@code most} candidates. */
  public static Arbitrary<Patch> patches(int most) {
    return Combinators.combine(Scene.scenes(most), RandomCatalogs.catalogs(), Arbitraries.longs().between(0, 1_000_000))
        .flatAs((old, other, seed) -> {
          JsonNode now = new RandomPatches(new Random(seed)).patched(old.catalog(), other);
          return builds(old).list().ofSize(4).map(builds -> new Patch(old.catalog(), now, builds));
        });
  }

  private static Arbitrary<JsonNode> builds(Scene old) {
    Arbitrary<JsonNode> any = RandomBuilds.builds(old);
    return RandomBuilds.validBuilds(old).map(valid -> Arbitraries.oneOf(valid, valid, any)).orElse(any);
  }

  private JsonNode patched(JsonNode old, JsonNode other) {
    ObjectNode now = (ObjectNode) old.deepCopy();
    now.set("platforms", mixed(old.path("platforms"), other.path("platforms"), false));
    now.set("parts", mixed(old.path("parts"), other.path("parts"), true));
    now.set("constraints", mixed(old.path("constraints"), other.path("constraints"), true));
    now.set("attributes", mixed(old.path("attributes"), other.path("attributes"), false));
    for (String section : List.of("access", "outfits", "limits", "currencies", "goods")) {
      now.set(section, mixed(old.path(section), other.path(section), false));
    }
    ArrayNode offers = now.putArray("offers");
    old.path("offers").forEach(offer -> keep(offers, offer, 85));
    other.path("offers").forEach(offer -> keep(offers, offer, 15));
    keepNumbering(old.path("platforms"), now.path("platforms"));
    keepNumbering(old.path("parts"), now.path("parts"));
    return now;
  }

  /** A slot that held one part goes on to, and one that held several too: else builds would have to be written anew. */
  private static void keepNumbering(JsonNode old, JsonNode now) {
    Map<String, JsonNode> slots = new LinkedHashMap<>();
    old.forEach(host -> host.path("slots").forEach(slot -> slots.put(Fields.text(host, "id") + "/" + Fields.text(slot, "id"), slot)));
    for (JsonNode host : now) {
      for (JsonNode slot : host.path("slots")) {
        JsonNode was = slots.get(Fields.text(host, "id") + "/" + Fields.text(slot, "id"));
        if (was != null && SlotEntry.of(was).most() > 1 != SlotEntry.of(slot).most() > 1) {
          for (String name : List.of("most", "units")) {
            ((ObjectNode) slot).remove(name);
            if (was.has(name)) {
              ((ObjectNode) slot).set(name, was.get(name));
            }
          }
        }
      }
    }
  }

  private void keep(ArrayNode list, JsonNode item, int percent) {
    if (random.nextInt(100) < percent) {
      list.add(item);
    }
  }

  /** The old entries, some with properties of those of the same id, and, where entries come and go, some others. */
  private ArrayNode mixed(JsonNode old, JsonNode other, boolean comeAndGo) {
    Map<String, JsonNode> entries = new LinkedHashMap<>();
    old.forEach(entry -> entries.put(Fields.text(entry, "id"), entry));
    for (JsonNode entry : other) {
      String id = Fields.text(entry, "id");
      if (entries.containsKey(id) && random.nextInt(100) < 35) {
        entries.put(id, crossed(entries.get(id), entry));
      } else if (comeAndGo && random.nextInt(100) < 10) {
        entries.put(id, entry);
      }
    }
    ArrayNode mixed = Sketch.NODES.arrayNode();
    entries.values().forEach(entry -> keep(mixed, entry, comeAndGo ? 93 : 100));
    return mixed;
  }

  /** One entry with some properties of another, or without them where the other has none. */
  private JsonNode crossed(JsonNode entry, JsonNode other) {
    ObjectNode crossed = (ObjectNode) entry.deepCopy();
    List<String> names = new ArrayList<>(entry.propertyNames());
    other.propertyNames().forEach(names::add);
    boolean whole = names.contains("atLeast") || names.contains("atMost") || names.contains("when") || names.contains("combine");
    if (whole) {
      return other;
    }
    for (String name : names) {
      if (!name.equals("id") && random.nextInt(100) < 30) {
        JsonNode value = other.get(name);
        if (value != null) {
          crossed.set(name, value);
        } else if (!name.equals("kind") && !(name.equals("stats") && entry.has("factory"))) {
          crossed.remove(name);
        }
      }
    }
    return crossed;
  }
}

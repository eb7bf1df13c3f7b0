package fettle.oracle;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/** Puts random JSON together, property by property; shrinking leaves out what may be left out. */
final class Sketch {
  static final JsonNodeFactory NODES = JsonNodeFactory.instance;

  private final List<String> names = new ArrayList<>();
  private final List<Arbitrary<Optional<JsonNode>>> values = new ArrayList<>();

  static Sketch object() {
    return new Sketch();
  }

  Sketch always(String name, Arbitrary<? extends JsonNode> value) {
    return with(name, value.map(Optional::of));
  }

  Sketch always(String name, String text) {
    return always(name, Arbitraries.just(text(text)));
  }

  /** A property that is there with this chance, in percent. */
  Sketch maybe(String name, int chance, Arbitrary<? extends JsonNode> value) {
    return with(name, value.optional(chance / 100.0).map(present -> present.map(JsonNode.class::cast)));
  }

  private Sketch with(String name, Arbitrary<Optional<JsonNode>> value) {
    names.add(name);
    values.add(value.withoutEdgeCases());
    return this;
  }

  Arbitrary<JsonNode> sketched() {
    List<String> keys = List.copyOf(names);
    return Combinators.combine(List.copyOf(values))
        .as(
            chosen -> {
              ObjectNode object = NODES.objectNode();
              for (int i = 0; i < keys.size(); i++) {
                String key = keys.get(i);
                chosen.get(i).ifPresent(value -> object.set(key, value));
              }
              return (JsonNode) object;
            });
  }

  static JsonNode text(String text) {
    return NODES.stringNode(text);
  }

  static Arbitrary<JsonNode> texts(String... texts) {
    return texts(List.of(texts));
  }

  static Arbitrary<JsonNode> texts(Collection<String> texts) {
    return Arbitraries.of(texts).map(Sketch::text);
  }

  static Arbitrary<JsonNode> decimals(String... decimals) {
    return Arbitraries.of(decimals).map(decimal -> NODES.numberNode(new BigDecimal(decimal)));
  }

  static Arbitrary<JsonNode> whole(int least, int greatest) {
    return Arbitraries.integers().between(least, greatest).map(NODES::numberNode);
  }

  static Arbitrary<JsonNode> yes() {
    return Arbitraries.just(NODES.booleanNode(true));
  }

  static Arbitrary<JsonNode> no() {
    return Arbitraries.just(NODES.booleanNode(false));
  }

  static Arbitrary<JsonNode> list(Arbitrary<JsonNode> items, int least, int greatest) {
    return items.list().ofMinSize(least).ofMaxSize(greatest).map(Sketch::array);
  }

  /** A list without repetition, which may be shorter than asked for where items came twice. */
  static Arbitrary<JsonNode> set(Arbitrary<JsonNode> items, int least, int greatest) {
    return items.list().ofMinSize(least).ofMaxSize(greatest).map(LinkedHashSet::new).map(Sketch::array);
  }

  /** One item from each, in this order. */
  static Arbitrary<JsonNode> each(List<Arbitrary<JsonNode>> items) {
    return Combinators.combine(items).as(Sketch::array);
  }

  /** The entry, with that id, of each of these. */
  static JsonNode entries(Set<String> ids) {
    return array(ids.stream().map(id -> (JsonNode) NODES.objectNode().put("id", id)).toList());
  }

  private static JsonNode array(Collection<? extends JsonNode> items) {
    ArrayNode array = NODES.arrayNode();
    items.forEach(array::add);
    return array;
  }
}

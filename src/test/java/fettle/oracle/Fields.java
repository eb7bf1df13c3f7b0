package fettle.oracle;

import java.math.BigDecimal;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Function;
import tools.jackson.databind.JsonNode;

/** Reads one property of an entry as format.md types it; what is left out is empty. */
final class Fields {
  private Fields() {}

  static String text(JsonNode entry, String name) {
    return entry.path(name).asString("");
  }

  static Optional<String> named(JsonNode entry, String name) {
    return entry.path(name).stringValueOpt();
  }

  static List<String> texts(JsonNode entry, String name) {
    return entry.path(name).valueStream().map(JsonNode::stringValue).toList();
  }

  static boolean flag(JsonNode entry, String name, boolean otherwise) {
    return entry.path(name).booleanValue(otherwise);
  }

  static OptionalInt whole(JsonNode entry, String name) {
    return entry.path(name).intValueOpt();
  }

  static Map<String, BigDecimal> decimals(JsonNode entry, String name) {
    return map(entry, name, JsonNode::decimalValue);
  }

  static Map<String, List<String>> lists(JsonNode entry, String name) {
    return map(entry, name, values -> values.valueStream().map(JsonNode::asString).toList());
  }

  private static <T> Map<String, T> map(JsonNode entry, String name, Function<JsonNode, T> read) {
    Map<String, T> values = new LinkedHashMap<>();
    for (Map.Entry<String, JsonNode> member : entry.path(name).properties()) {
      values.put(member.getKey(), read.apply(member.getValue()));
    }
    return Collections.unmodifiableMap(values);
  }
}

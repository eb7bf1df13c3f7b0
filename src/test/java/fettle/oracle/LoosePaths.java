package fettle.oracle;

import java.util.Random;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ObjectNode;

/** Writes the paths of a build as people do after a patch: with a position where a slot holds one part, and without where it could hold more. */
final class LoosePaths {

  private LoosePaths() {}

  /** The same parts, at paths that lead to the same places. */
  static ObjectNode of(ObjectNode parts, Random random) {
    ObjectNode loose = Sketch.NODES.objectNode();
    parts.properties().forEach(member -> loose.set(loose(parts, member.getKey(), random), member.getValue()));
    return loose;
  }

  private static String loose(ObjectNode parts, String path, Random random) {
    String[] segments = path.split("/", -1);
    StringBuilder through = new StringBuilder();
    for (int i = 0; i < segments.length - 1; i++) {
      String slot = segments[i].replaceFirst(":.*", "");
      JsonNode held = parts.path(through + slot);
      through.append(segments[i]).append('/');
      boolean one = !held.isArray() || held.size() == 1;
      if (one && random.nextBoolean()) {
        segments[i] = segments[i].equals(slot) ? slot + ":0" : slot;
      }
    }
    return String.join("/", segments);
  }
}

package fettle.oracle;

import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tools.jackson.databind.JsonNode;

/** A part or a platform as format.md defines it, its defaults filled in. */
record PartEntry(
    String id,
    String kind,
    List<String> mounts,
    Map<String, BigDecimal> stats,
    Map<String, BigDecimal> loaded,
    List<SlotEntry> slots,
    int span,
    List<String> tags,
    Map<String, List<String>> traits,
    List<String> claims,
    List<String> blocks,
    List<String> excludes,
    List<List<String>> needs) {

  static PartEntry of(JsonNode part) {
    return new PartEntry(
        Fields.text(part, "id"),
        Fields.text(part, "kind"),
        Fields.texts(part, "mounts"),
        Fields.decimals(part, "stats"),
        Fields.decimals(part, "loaded"),
        part.path("slots").valueStream().map(SlotEntry::of).toList(),
        Fields.whole(part, "span").orElse(1),
        Fields.texts(part, "tags"),
        Fields.lists(part, "traits"),
        Fields.texts(part, "claims"),
        Fields.texts(part, "blocks"),
        Fields.texts(part, "excludes"),
        part.path("needs")
            .valueStream()
            .map(group -> group.valueStream().map(JsonNode::stringValue).toList())
            .toList());
  }

  Optional<SlotEntry> slot(String id) {
    return slots.stream().filter(slot -> slot.id().equals(id)).findFirst();
  }

  /** format.md, Selector: "A part id, {@code kind:K}, or {@code tag:T}." */
  boolean matches(String selector) {
    if (selector.startsWith("kind:")) {
      return kind.equals(selector.substring("kind:".length()));
    }
    if (selector.startsWith("tag:")) {
      return tags.contains(selector.substring("tag:".length()));
    }
    return id.equals(selector);
  }

  boolean matchesAny(List<String> selectors) {
    return selectors.stream().anyMatch(this::matches);
  }
}

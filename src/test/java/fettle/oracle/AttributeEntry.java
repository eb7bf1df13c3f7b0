package fettle.oracle;

import java.util.List;
import tools.jackson.databind.JsonNode;

/** What an attribute says of how its numbers combine and which of two is better. */
record AttributeEntry(String id, String better, String combine) {
  static List<AttributeEntry> all(Entries entries) {
    return entries.section("attributes").stream().map(AttributeEntry::of).toList();
  }

  static AttributeEntry of(JsonNode attribute) {
    return new AttributeEntry(
        Property.text(attribute, "id"), Property.text(attribute, "better"), Property.text(attribute, "combine"));
  }
}

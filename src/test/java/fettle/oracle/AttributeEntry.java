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
        Fields.text(attribute, "id"), Fields.text(attribute, "better"), Fields.text(attribute, "combine"));
  }
}

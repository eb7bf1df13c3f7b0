package fettle.oracle;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import tools.jackson.databind.JsonNode;

/** What a failing example may leave out. */
class ReductionsTest {
  private static final JsonNode DOCUMENT =
      JsonText.read(
          """
          {'catalog': {'platforms': [{'id': 'frame', 'stats': {'kick': 1}, 'slots': [{'id': 's', 'accepts': ['a', 'b']}]}],
                       'parts': [{'id': 'a', 'kind': 'k'}, {'id': 'b', 'kind': 'k', 'excludes': ['a']}],
                       'offers': [{'part': 'a', 'vendor': 'market', 'price': 1}], 'access': [{'id': 'one'}, {'id': 'two'}],
                       'constraints': [{'id': 'c', 'when': ['a']}, {'id': 'd', 'when': ['a', 'b']}]},
           'build': {'id': 'x', 'platform': 'frame', 'parts': {'s': 'a'}, 'access': 'two'}}
          """);

  @Test
  void a_part_goes_with_all_that_names_it() {
    assertEquals(
        JsonText.read(
            """
            {'catalog': {'platforms': [{'id': 'frame', 'stats': {'kick': 1}, 'slots': [{'id': 's', 'accepts': ['b']}]}],
                         'parts': [{'id': 'b', 'kind': 'k', 'excludes': []}], 'offers': [], 'access': [{'id': 'one'}, {'id': 'two'}],
                         'constraints': [{'id': 'd', 'when': ['b']}]},
             'build': {'id': 'x', 'platform': 'frame', 'parts': {}, 'access': 'two'}}
            """),
        Reductions.of(DOCUMENT).findFirst().orElseThrow());
  }

  @Test
  void what_is_needed_or_referred_to_stays() {
    List<JsonNode> reduced = Reductions.of(DOCUMENT).toList();
    // 2 parts, 2 constraints, 1 offer; slots, slot, accepts and its 2; excludes and its 1; parts, its path and access of the build
    assertEquals(15, reduced.size());
    for (JsonNode less : reduced) {
      assertTrue(less.at("/catalog/access").size() == 2, less::toString);
      assertTrue(less.at("/catalog/platforms/0/stats/kick").isNumber(), less::toString);
      assertEquals("frame", less.at("/build/platform").stringValue());
    }
  }
}

package fettle.oracle;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.math.BigDecimal;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import tools.jackson.databind.JsonNode;

/** The figures of a build as its file asks for them. */
class OracleTest {
  private static final JsonNode CATALOG =
      JsonText.read(
          """
          {'catalog': {'id': 'c', 'currency': 'scrip'},
           'attributes': [{'id': 'mass', 'better': 'lower', 'combine': 'sum'}],
           'platforms': [{'id': 'frame', 'stats': {'mass': 10}, 'slots': [{'id': 'a', 'accepts': ['tank']}, {'id': 'b', 'accepts': ['pad']}]}],
           'parts': [{'id': 'tank', 'kind': 'k', 'stats': {'mass': 1}, 'loaded': {'mass': 4}}, {'id': 'pad', 'kind': 'k'}],
           'vendors': [{'id': 'market', 'tiers': 0}],
           'offers': [{'part': 'tank', 'vendor': 'market', 'price': 7}],
           'access': [{'id': 'open', 'vendors': {'market': 0}}, {'id': 'shut', 'vendors': {}}],
           'outfits': [{'id': 'pack', 'effects': {'mass': 20}}],
           'limits': [{'id': 'carry', 'attribute': 'mass', 'atMost': 17}]}
          """);

  @Test
  void totals_are_loaded_unless_the_build_says_otherwise_and_without_outfit() {
    assertEquals(
        Map.of("mass", new BigDecimal("15")),
        Oracle.totals(CATALOG, JsonText.read("{'platform': 'frame', 'parts': {'a': 'tank'}, 'outfit': 'pack'}")));
    assertEquals(
        Map.of("mass", new BigDecimal("11")),
        Oracle.totals(CATALOG, JsonText.read("{'platform': 'frame', 'parts': {'a': 'tank'}, 'loaded': false}")));
  }

  @Test
  void cost_heeds_access_and_owned_parts() {
    String build = "{'platform': 'frame', 'parts': {'a': 'tank', 'b': 'pad'}, %s}";
    assertEquals(
        Optional.of(new BigDecimal("7")),
        Oracle.cost(CATALOG, JsonText.read(build.formatted("'access': 'open', 'owned': ['pad']"))));
    assertEquals(Optional.empty(), Oracle.cost(CATALOG, JsonText.read(build.formatted("'access': 'open'"))));
    assertEquals(Optional.empty(), Oracle.cost(CATALOG, JsonText.read(build.formatted("'access': 'shut', 'owned': ['pad']"))));
  }

  @Test
  void limits_are_measured_in_the_outfit_and_full() {
    JsonNode build = JsonText.read("{'platform': 'frame', 'parts': {'a': 'tank'}, 'outfit': 'pack', 'loaded': false}");
    Margin carry = Oracle.limits(CATALOG, build).get(0);
    assertEquals("18 -1 false", carry.value() + " " + carry.margin() + " " + carry.holds());
  }
}

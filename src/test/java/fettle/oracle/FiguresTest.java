package fettle.oracle;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import tools.jackson.databind.JsonNode;

/** Totals, costs and margins worked by hand. */
class FiguresTest {
  private static final Entries ENTRIES =
      Entries.of(
          JsonText.read(
              """
              {'catalog': {'id': 'c', 'currency': 'scrip'},
               'attributes': [{'id': 'grip', 'better': 'higher', 'combine': 'sum'},
                              {'id': 'kick', 'better': 'lower', 'combine': 'percent'},
                              {'id': 'hush', 'better': 'higher', 'combine': 'product'},
                              {'id': 'reach', 'better': 'higher', 'combine': 'max'},
                              {'id': 'calm', 'better': 'lower', 'combine': 'min'}],
               'platforms': [{'id': 'frame', 'stats': {'grip': 40.5, 'kick': 200, 'hush': 10, 'reach': 3}},
                             {'id': 'bare', 'stats': {'kick': 1, 'hush': 1}}],
               'parts': [{'id': 'a', 'kind': 'k', 'stats': {'grip': 0.5, 'kick': -1.5, 'hush': 50, 'reach': 2, 'calm': 4}},
                         {'id': 'b', 'kind': 'k', 'stats': {'grip': -3, 'kick': -120, 'hush': -150, 'reach': 7},
                          'loaded': {'grip': 1.25, 'hush': 10, 'calm': -1}},
                         {'id': 'gone', 'kind': 'k'}],
               'currencies': [{'id': 'scrip', 'rate': 1}, {'id': 'token', 'rate': 1.005}],
               'vendors': [{'id': 'market', 'tiers': 0}, {'id': 'smith', 'tiers': 3}],
               'goods': [{'id': 'bolt', 'value': 0.335}, {'id': 'wire', 'value': 2}],
               'offers': [{'part': 'a', 'vendor': 'market', 'price': 9.99},
                          {'part': 'a', 'vendor': 'smith', 'tier': 2, 'price': 5, 'currency': 'token'},
                          {'part': 'a', 'vendor': 'smith', 'tier': 3, 'price': 1},
                          {'part': 'b', 'vendor': 'smith', 'tier': 1, 'barter': [{'good': 'bolt', 'count': 3}, {'good': 'wire', 'count': 2}]}],
               'access': [{'id': 'novice', 'vendors': {'market': 0}}, {'id': 'known', 'vendors': {'market': 0, 'smith': 2}}],
               'outfits': [{'id': 'coat', 'effects': {'grip': -10, 'calm': 25}}]}
              """));
  private static final Assembly FRAME = frame("frame");

  private static Assembly frame(String platform) {
    return Assembly.bare(platform)
        .with("s", List.of(Assembly.bare("a")))
        .with("t", List.of(Assembly.bare("b")));
  }

  private static Map<String, String> totals(Assembly build, boolean loaded, Optional<String> outfit) {
    Map<String, String> texts = new TreeMap<>();
    Totals.of(ENTRIES, build, loaded, outfit).forEach((id, value) -> texts.put(id, Decimals.text(value)));
    return texts;
  }

  @Test
  void each_way_to_combine_is_exact() {
    // 40.5+0.5−3; 200×(1−1.215); 10×1.5×−0.5; max(3,2,7); min(4)
    assertEquals(
        Map.of("grip", "38", "kick", "-43", "hush", "-7.5", "reach", "7", "calm", "4"),
        totals(FRAME, false, Optional.empty()));
  }

  @Test
  void loaded_stats_are_further_stats() {
    // +1.25; the same; ×1.1; the same; min(4,−1)
    assertEquals(
        Map.of("grip", "39.25", "kick", "-43", "hush", "-8.25", "reach", "7", "calm", "-1"),
        totals(FRAME, true, Optional.empty()));
  }

  @Test
  void an_outfit_multiplies_the_final_value() {
    assertEquals(
        Map.of("grip", "34.2", "kick", "-43", "hush", "-7.5", "reach", "7", "calm", "5"),
        totals(FRAME, false, Optional.of("coat")));
  }

  @Test
  void an_attribute_with_neither_base_nor_stat_has_no_value() {
    assertEquals(
        Map.of("grip", "0", "kick", "1", "hush", "1"), totals(Assembly.bare("bare"), true, Optional.empty()));
  }

  @Test
  void a_part_costs_its_cheapest_open_offer() {
    Costs all = Costs.of(ENTRIES, Optional.empty(), Set.of());
    Costs novice = Costs.of(ENTRIES, Optional.of("novice"), Set.of());
    Costs known = Costs.of(ENTRIES, Optional.of("known"), Set.of());
    assertEquals(Optional.of(new BigDecimal("1.00")), all.ofPart("a"));
    assertEquals(Optional.of(new BigDecimal("9.99")), novice.ofPart("a"));
    // 5 × 1.005 = 5.025, half up
    assertEquals(Optional.of(new BigDecimal("5.03")), known.ofPart("a"));
    // 3 × 0.335 + 2 × 2 = 5.005, half up
    assertEquals(Optional.of(new BigDecimal("5.01")), known.ofPart("b"));
    assertEquals(Optional.empty(), novice.ofPart("b"));
    assertEquals(Optional.empty(), all.ofPart("gone"));
  }

  @Test
  void a_build_costs_its_parts_and_owned_ones_nothing() {
    assertEquals(
        Optional.of(new BigDecimal("10.04")), Costs.of(ENTRIES, Optional.of("known"), Set.of()).ofBuild(FRAME));
    assertEquals(Optional.empty(), Costs.of(ENTRIES, Optional.of("novice"), Set.of()).ofBuild(FRAME));
    assertEquals(
        Optional.of(new BigDecimal("9.99")), Costs.of(ENTRIES, Optional.of("novice"), Set.of("b")).ofBuild(FRAME));
    assertEquals(Optional.of(BigDecimal.ZERO), Costs.of(ENTRIES, Optional.of("novice"), Set.of()).ofBuild(Assembly.bare("frame")));
  }

  private static Optional<Margin> margin(String limit, Assembly build, Optional<String> outfit) {
    JsonNode read = JsonText.read(limit);
    return Margin.of(ENTRIES, read, build, outfit);
  }

  @Test
  void a_limit_is_measured_loaded_unless_it_says_otherwise() {
    Margin loaded = margin("{'id': 'l', 'attribute': 'grip', 'atLeast': 39}", FRAME, Optional.empty()).orElseThrow();
    assertEquals("0.25", loaded.margin().toString());
    assertEquals(true, loaded.holds());
    Margin empty =
        margin("{'id': 'l', 'attribute': 'grip', 'atLeast': 39, 'loaded': false}", FRAME, Optional.empty()).orElseThrow();
    assertEquals("-1", empty.margin().toString());
    assertEquals(false, empty.holds());
    Margin most = margin("{'id': 'l', 'attribute': 'grip', 'atMost': 39.25}", FRAME, Optional.empty()).orElseThrow();
    assertEquals("0", most.margin().toString());
    assertEquals(true, most.holds());
  }

  @Test
  void a_table_is_straight_between_its_points_and_flat_beyond() {
    String table = "{'id': 'l', 'attribute': 'grip', 'atMost': {'by': 'reach', 'points': %s}}";
    // reach is 7: a third of the way from 6 to 9
    Margin between = margin(table.formatted("[[0, 1], [6, 40], [9, 41]]"), FRAME, Optional.empty()).orElseThrow();
    assertEquals("121/3", between.threshold().toString());
    // 121/3 − 157/4 = 13/12
    assertEquals("13/12", between.margin().toString());
    assertEquals(
        "5", margin(table.formatted("[[8, 5], [9, 41]]"), FRAME, Optional.empty()).orElseThrow().threshold().toString());
    assertEquals(
        "41", margin(table.formatted("[[1, 5], [7, 41]]"), FRAME, Optional.empty()).orElseThrow().threshold().toString());
    assertEquals(
        "41", margin(table.formatted("[[1, 5], [2, 41]]"), FRAME, Optional.empty()).orElseThrow().threshold().toString());
    assertEquals("12", margin(table.formatted("[[1, 12]]"), FRAME, Optional.empty()).orElseThrow().threshold().toString());
  }

  @Test
  void an_outfit_worn_counts_in_a_limit() {
    Margin worn = margin("{'id': 'l', 'attribute': 'grip', 'atLeast': 39}", FRAME, Optional.of("coat")).orElseThrow();
    assertEquals("-3.675", worn.margin().toString());
  }

  @Test
  void a_limit_without_a_value_has_no_margin_and_holds() {
    Assembly bare = Assembly.bare("bare");
    assertEquals(Optional.empty(), margin("{'id': 'l', 'attribute': 'calm', 'atLeast': 39}", bare, Optional.empty()));
    assertEquals(
        Optional.empty(),
        margin("{'id': 'l', 'attribute': 'kick', 'atLeast': {'by': 'reach', 'points': [[0, 99]]}}", bare, Optional.empty()));
  }

  @Test
  void a_fraction_is_exact_and_told_as_a_decimal_where_one_ends() {
    assertEquals("1/3", Fraction.of("1").over(Fraction.of("3")).toString());
    assertEquals("-0.125", Fraction.of("1").over(Fraction.of("-8")).toString());
    assertEquals("1200", Fraction.of("1.2E3").toString());
    assertEquals(Fraction.of("0.5"), Fraction.of("1").over(Fraction.of("3")).plus(Fraction.of("1").over(Fraction.of("6"))));
  }
}

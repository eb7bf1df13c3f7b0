package fettle.oracle;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Value ladders: a published table, and cases worked by hand. */
class LadderTest {

  private static Ladder ladder(String slot, Map<String, String> costAndBenefit) {
    return ladder(
        slot,
        costAndBenefit.keySet().stream()
            .map(
                id ->
                    "{'id': '%s', 'kind': 'plain', 'tags': ['t'], 'stats': {'grip': %s}}"
                        .formatted(id, costAndBenefit.get(id).split(" ")[1]))
            .collect(Collectors.joining(",")),
        costAndBenefit.keySet().stream()
            .map(
                id ->
                    "{'part': '%s', 'vendor': 'market', 'price': %s}"
                        .formatted(id, costAndBenefit.get(id).split(" ")[0]))
            .collect(Collectors.joining(",")));
  }

  private static Ladder ladder(String slot, String parts, String offers) {
    Entries entries =
        Entries.of(
            JsonText.read(
                """
                {'catalog': {'id': 'c', 'currency': 'scrip'},
                 'attributes': [{'id': 'grip', 'better': 'higher', 'combine': 'sum'}, {'id': 'kick', 'better': 'lower', 'combine': 'percent'},
                                {'id': 'reach', 'better': 'higher', 'combine': 'max'}],
                 'kinds': [{'id': 'plain'}, {'id': 'sight', 'role': true}], 'vendors': [{'id': 'market', 'tiers': 0}],
                 'lenses': [{'id': 'steady', 'weights': {'grip': 1, 'kick': 0.5, 'reach': 7}}],
                 'platforms': [{'id': 'frame', 'stats': {'kick': 10}, 'slots': [{'id': 's', 'accepts': ['tag:t'] %s}]}],
                 'parts': [%s], 'offers': [%s]}
                """
                    .formatted(slot, parts, offers)));
    return new Ladder(Space.of(entries, "frame", 1000).orElseThrow(), "frame", "s", "steady", Optional.empty());
  }

  private static List<String> rungs(List<Ladder.Offer> group) {
    return Ladder.rungs(group).stream()
        .map(rung -> rung.choices() + " " + rung.step().map(Fraction::toString).orElse("-"))
        .toList();
  }

  /**
   * Paltiel et al., Expanded HIV screening in the United States, Annals of Internal Medicine 145 (2006) 797–806, Table 4, high-risk
   * population, patient-level benefit; as restated in the DAMPACK package's introduction to cost-effectiveness analysis.
   */
  @Test
  void a_published_cost_effectiveness_table_comes_out() {
    Ladder ladder =
        ladder(
            ", 'required': true",
            new TreeMap<>(
                Map.of(
                    "status-quo", "26000 277.25",
                    "one-time", "27000 277.57",
                    "every-5-years", "28020 277.78",
                    "every-3-years", "28440 277.83",
                    "annual", "29440 277.76")));
    // 1000/0.32 = 3125, 1020/0.21 = 34000/7, 420/0.05 = 8400
    assertEquals(
        List.of("[status-quo] -", "[one-time] 3125", "[every-5-years] 34000/7", "[every-3-years] 8400"),
        rungs(ladder.groups().get(0)));
    assertEquals(
        "{annual=DOMINATED, every-3-years=RUNG, every-5-years=RUNG, one-time=RUNG, status-quo=RUNG}",
        ladder.standings().toString());
  }

  @Test
  void extended_dominance_is_below_the_hull_and_a_point_on_the_line_is_a_rung() {
    // From empty (0, 0) to top (10, 10): mid (5, 4) lies below the line, line (6, 6) on it; from top to peak (20, 12)
    Ladder ladder =
        ladder("", new TreeMap<>(Map.of("mid", "5 4", "line", "6 6", "top", "10 10", "peak", "20 12", "worse", "12 10")));
    assertEquals(List.of("[(empty)] -", "[line] 1", "[top] 1", "[peak] 5"), rungs(ladder.groups().get(0)));
    assertEquals("{line=RUNG, mid=BETWEEN, peak=RUNG, top=RUNG, worse=DOMINATED}", ladder.standings().toString());
  }

  @Test
  void equals_share_a_rung_and_steps_are_exact_fractions() {
    Ladder ladder = ladder("", new TreeMap<>(Map.of("one", "1 3", "same", "1.00 3.0")));
    assertEquals(List.of("[(empty)] -", "[one, same] 1/3"), rungs(ladder.groups().get(0)));
    assertEquals("{one=RUNG, same=RUNG}", ladder.standings().toString());
  }

  @Test
  void roles_are_groups_of_their_own_and_a_part_stands_by_its_best_assembly() {
    Ladder ladder =
        ladder(
            "",
            """
            {'id': 'lens', 'kind': 'sight', 'tags': ['t'], 'stats': {'grip': -1, 'kick': 2, 'reach': 100}},
            {'id': 'pad', 'kind': 'plain', 'tags': ['t'], 'stats': {'kick': -4}, 'slots': [{'id': 'u', 'accepts': ['gem', 'lens', 'relic']}]},
            {'id': 'gem', 'kind': 'plain', 'stats': {'grip': -3}}, {'id': 'relic', 'kind': 'plain', 'stats': {'grip': 30}}
            """,
            Stream.of("lens", "pad", "gem")
                .map(id -> "{'part': '%s', 'vendor': 'market', 'price': 4}".formatted(id))
                .collect(Collectors.joining(",")));
    assertEquals(2, ladder.groups().size());
    // no roles: empty (0, 0), pad (4, 2), pad with gem (8, −1); the relic is not sold, so no assembly with it counts
    assertEquals(List.of("[(empty)] -", "[pad] 2"), rungs(ladder.groups().get(0)));
    assertEquals(3, ladder.groups().get(0).size());
    // sight: lens (4, −2), pad with lens (8, 0)
    assertEquals(List.of("[lens] -", "[pad{u=[lens]}] 2"), rungs(ladder.groups().get(1)));
    assertEquals("{lens=RUNG, pad=RUNG}", ladder.standings().toString());
  }
}

package fettle.oracle;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;
import tools.jackson.databind.JsonNode;

/** Each clause of "Valid build", worked by hand: builds that breach it and near neighbours that do not. */
class ValidityTest {

  private static void assertClauses(List<Integer> expected, JsonNode catalog, String parts) {
    JsonNode build = JsonText.read("{'id': 'b', 'platform': 'frame', 'parts': " + parts + "}");
    assertEquals(
        expected, Oracle.valid(catalog, build).stream().map(Violation::clause).toList(), () -> parts + " in " + catalog);
  }

  private static JsonNode catalog(String platform, String parts) {
    return catalog(platform, parts, "");
  }

  private static JsonNode catalog(String platform, String parts, String constraints) {
    return JsonText.read(
        """
        {'platforms': [{'id': 'frame', %s}], 'parts': [%s], 'constraints': [%s]}
        """
            .formatted(platform, parts, constraints));
  }

  @Test
  void names_that_lead_nowhere_are_structure() {
    JsonNode catalog =
        catalog(
            "'slots': [{'id': 'front', 'accepts': ['lamp']}, {'id': 'rail', 'accepts': ['riser'], 'most': 2, 'repeats': true}]",
            "{'id': 'lamp', 'kind': 'k'}, {'id': 'riser', 'kind': 'k', 'slots': [{'id': 'top', 'accepts': ['lamp']}]}");
    assertClauses(List.of(), catalog, "{'front': 'lamp'}");
    assertClauses(List.of(0), catalog, "{'front': 'lamb'}");
    assertClauses(List.of(0), catalog, "{'back': 'lamp'}");
    assertClauses(List.of(0), catalog, "{'front': 'lamp', 'front/top': 'lamp'}");
    assertClauses(List.of(0), catalog, "{'front/top': 'lamp'}");
    assertClauses(List.of(), catalog, "{'rail': ['riser'], 'rail:0/top': 'lamp'}");
    assertClauses(List.of(), catalog, "{'rail:0/top': 'lamp', 'rail': [{'part': 'riser'}]}");
    assertClauses(List.of(0), catalog, "{'rail': ['riser'], 'rail:1/top': 'lamp'}");
    assertClauses(List.of(0), catalog, "{'rail': ['riser', 'riser'], 'rail/top': 'lamp'}");
    JsonNode unknown = JsonText.read("{'id': 'b', 'platform': 'fame', 'parts': {}}");
    assertEquals(List.of(new Violation(0, List.of(""), "no platform fame")), Oracle.valid(catalog, unknown));
  }

  @Test
  void a_position_may_be_told_or_left_out_where_one_part_sits() {
    JsonNode catalog =
        catalog(
            "'slots': [{'id': 'front', 'accepts': ['riser']}, {'id': 'rail', 'accepts': ['riser'], 'most': 2}]",
            "{'id': 'lamp', 'kind': 'k'}, {'id': 'riser', 'kind': 'k', 'slots': [{'id': 'top', 'accepts': ['lamp']}]}");
    assertClauses(List.of(), catalog, "{'rail': ['riser'], 'rail/top': 'lamp'}");
    assertClauses(List.of(), catalog, "{'front': 'riser', 'front:0/top': 'lamp'}");
    assertClauses(List.of(0), catalog, "{'front': 'riser', 'front:1/top': 'lamp'}");
  }

  @Test
  void clause_1_fit_by_mount_or_selector_unless_rejected() {
    JsonNode catalog =
        catalog(
            """
            'slots': [{'id': 'a', 'mounts': ['pin', 'clip'], 'accepts': ['kind:lens', 'tag:odd', 'plate'],
                       'rejects': ['heavy', 'tag:cracked']}]
            """,
            """
            {'id': 'by-mount', 'kind': 'k', 'mounts': ['clip']}, {'id': 'wrong-mount', 'kind': 'k', 'mounts': ['screw']},
            {'id': 'by-kind', 'kind': 'lens'}, {'id': 'by-tag', 'kind': 'k', 'tags': ['odd']}, {'id': 'plate', 'kind': 'k'},
            {'id': 'heavy', 'kind': 'lens', 'mounts': ['pin']}, {'id': 'bad', 'kind': 'k', 'mounts': ['pin'], 'tags': ['cracked']},
            {'id': 'lens', 'kind': 'k'}
            """);
    assertClauses(List.of(), catalog, "{'a': 'by-mount'}");
    assertClauses(List.of(), catalog, "{'a': 'by-kind'}");
    assertClauses(List.of(), catalog, "{'a': 'by-tag'}");
    assertClauses(List.of(), catalog, "{'a': 'plate'}");
    assertClauses(List.of(1), catalog, "{'a': 'wrong-mount'}");
    assertClauses(List.of(1), catalog, "{'a': 'heavy'}");
    assertClauses(List.of(1), catalog, "{'a': 'bad'}");
    // An id is not a kind, and a kind is not an id.
    assertClauses(List.of(1), catalog, "{'a': 'lens'}");
  }

  @Test
  void clause_2_no_part_above_itself_but_beside_itself_it_may_be() {
    JsonNode catalog =
        catalog(
            "'slots': [{'id': 'a', 'accepts': ['tag:t']}, {'id': 'b', 'accepts': ['tag:t']}]",
            """
            {'id': 'x', 'kind': 'k', 'tags': ['t'], 'slots': [{'id': 's', 'accepts': ['tag:t']}]},
            {'id': 'y', 'kind': 'k', 'tags': ['t'], 'slots': [{'id': 's', 'accepts': ['tag:t']}]}
            """);
    assertClauses(List.of(), catalog, "{'a': 'x', 'b': 'x'}");
    assertClauses(List.of(), catalog, "{'a': 'x', 'a/s': 'y', 'b': 'y', 'b/s': 'x'}");
    assertClauses(List.of(2), catalog, "{'a': 'x', 'a/s': 'x'}");
    assertClauses(List.of(2), catalog, "{'a': 'x', 'a/s': 'y', 'a/s/s': 'x'}");
  }

  @Test
  void clause_3_most_repeats_and_required() {
    JsonNode catalog =
        catalog(
            """
            'slots': [{'id': 'one', 'accepts': ['tag:t']}, {'id': 'two', 'accepts': ['tag:t'], 'most': 2},
                      {'id': 'again', 'accepts': ['tag:t'], 'most': 2, 'repeats': true},
                      {'id': 'must', 'accepts': ['tag:t'], 'required': true}]
            """,
            """
            {'id': 'x', 'kind': 'k', 'tags': ['t']}, {'id': 'y', 'kind': 'k', 'tags': ['t']}, {'id': 'z', 'kind': 'k', 'tags': ['t']},
            {'id': 'host', 'kind': 'k', 'tags': ['t'], 'slots': [{'id': 's', 'accepts': ['x'], 'required': true}]}
            """);
    assertClauses(List.of(), catalog, "{'must': 'x', 'one': 'x', 'two': ['x', 'y'], 'again': ['x', 'x']}");
    assertClauses(List.of(3), catalog, "{}");
    assertClauses(List.of(3), catalog, "{'must': 'x', 'one': ['x', 'y']}");
    assertClauses(List.of(3), catalog, "{'must': 'x', 'two': ['x', 'y', 'z']}");
    assertClauses(List.of(3), catalog, "{'must': 'x', 'two': ['x', 'x']}");
    assertClauses(List.of(3), catalog, "{'must': 'x', 'again': ['x', 'x', 'x']}");
    assertClauses(List.of(3), catalog, "{'must': 'host'}");
    assertClauses(List.of(), catalog, "{'must': 'host', 'must/s': 'x'}");
  }

  @Test
  void clause_3_spans_and_notches() {
    JsonNode catalog =
        catalog(
            "'slots': [{'id': 'rail', 'accepts': ['tag:t'], 'units': 5, 'repeats': true}]",
            """
            {'id': 'one', 'kind': 'k', 'tags': ['t']}, {'id': 'two', 'kind': 'k', 'tags': ['t'], 'span': 2},
            {'id': 'three', 'kind': 'k', 'tags': ['t'], 'span': 3}
            """);
    assertClauses(List.of(), catalog, "{'rail': ['two', 'three']}");
    assertClauses(List.of(3), catalog, "{'rail': ['three', 'three']}");
    // `most` is `units` where left out: five parts of one notch, not six
    assertClauses(List.of(), catalog, "{'rail': ['one', 'one', 'one', 'one', 'one']}");
    assertClauses(List.of(3, 3), catalog, "{'rail': ['one', 'one', 'one', 'one', 'one', 'one']}");
    assertClauses(List.of(), catalog, "{'rail': [{'part': 'three', 'at': 2}, {'part': 'two', 'at': 0}]}");
    assertClauses(List.of(3), catalog, "{'rail': [{'part': 'three', 'at': 3}]}");
    assertClauses(List.of(3), catalog, "{'rail': [{'part': 'three', 'at': 1}, {'part': 'two', 'at': 0}]}");
    // two free runs of one notch each cannot take a part of two
    assertClauses(List.of(3), catalog, "{'rail': [{'part': 'three', 'at': 1}, 'two']}");
    assertClauses(List.of(), catalog, "{'rail': [{'part': 'three', 'at': 1}, 'one', 'one']}");
    assertClauses(List.of(), catalog, "{'rail': [{'part': 'one', 'at': 2}, 'two', 'two']}");
    assertClauses(List.of(3), catalog, "{'rail': [{'part': 'one', 'at': 1}, 'two', 'two']}");
  }

  @Test
  void clause_4_exclusion_of_others_and_of_a_second_self() {
    JsonNode catalog =
        catalog(
            """
            'slots': [{'id': 'a', 'accepts': ['tag:t']}, {'id': 'b', 'accepts': ['tag:t']}, {'id': 'c', 'accepts': ['kind:far']}],
            'excludes': ['kind:far']
            """,
            """
            {'id': 'x', 'kind': 'k', 'tags': ['t'], 'excludes': ['y']}, {'id': 'y', 'kind': 'k', 'tags': ['t']},
            {'id': 'loner', 'kind': 'solo', 'tags': ['t'], 'excludes': ['kind:solo']}, {'id': 'f', 'kind': 'far'}
            """);
    assertClauses(List.of(4), catalog, "{'a': 'x', 'b': 'y'}");
    assertClauses(List.of(), catalog, "{'a': 'x', 'b': 'x'}");
    assertClauses(List.of(), catalog, "{'a': 'loner'}");
    // each of the two excludes the other
    assertClauses(List.of(4, 4), catalog, "{'a': 'loner', 'b': 'loner'}");
    assertClauses(List.of(4), catalog, "{'c': 'f'}");
  }

  @Test
  void clause_5_a_zone_has_one_taker_and_the_platform_may_be_it() {
    JsonNode catalog =
        catalog(
            "'slots': [{'id': 'a', 'accepts': ['tag:t']}, {'id': 'b', 'accepts': ['tag:t']}], 'claims': ['under']",
            """
            {'id': 'x', 'kind': 'k', 'tags': ['t'], 'claims': ['over', 'side']},
            {'id': 'y', 'kind': 'k', 'tags': ['t'], 'claims': ['side']},
            {'id': 'z', 'kind': 'k', 'tags': ['t'], 'claims': ['under']}
            """);
    assertClauses(List.of(), catalog, "{'a': 'x'}");
    assertClauses(List.of(5), catalog, "{'a': 'x', 'b': 'y'}");
    assertClauses(List.of(5), catalog, "{'a': 'y', 'b': 'y'}");
    assertClauses(List.of(5), catalog, "{'a': 'z'}");
  }

  @Test
  void clause_6_blocks_spare_only_the_slot_the_blocker_sits_in() {
    JsonNode catalog =
        catalog(
            """
            'slots': [{'id': 'a', 'accepts': ['tag:t'], 'tags': ['top'], 'most': 2}, {'id': 'b', 'accepts': ['tag:t'], 'tags': ['top']},
                      {'id': 'c', 'accepts': ['tag:t'], 'tags': ['low']}],
            'blocks': ['low']
            """,
            """
            {'id': 'x', 'kind': 'k', 'tags': ['t'], 'blocks': ['top'], 'slots': [{'id': 's', 'accepts': ['y'], 'tags': ['top']}]},
            {'id': 'y', 'kind': 'k', 'tags': ['t']}
            """);
    assertClauses(List.of(), catalog, "{'a': ['x']}");
    assertClauses(List.of(), catalog, "{'a': ['x', 'y']}");
    assertClauses(List.of(6), catalog, "{'a': ['x'], 'b': 'y'}");
    // its own child slot is not the slot in which it sits
    assertClauses(List.of(6), catalog, "{'a': ['x'], 'a:0/s': 'y'}");
    assertClauses(List.of(6, 6), catalog, "{'a': ['x'], 'b': 'x'}");
    assertClauses(List.of(6), catalog, "{'c': 'y'}");
  }

  @Test
  void clause_7_each_group_needs_another_part() {
    JsonNode catalog =
        catalog(
            "'slots': [{'id': 'a', 'accepts': ['tag:t']}, {'id': 'b', 'accepts': ['tag:t']}], 'needs': [['tag:t']]",
            """
            {'id': 'x', 'kind': 'k', 'tags': ['t'], 'needs': [['y', 'z'], ['tag:wide']]}, {'id': 'y', 'kind': 'k', 'tags': ['t']},
            {'id': 'z', 'kind': 'k', 'tags': ['t', 'wide']}, {'id': 'pair', 'kind': 'k', 'tags': ['t'], 'needs': [['pair']]}
            """);
    assertClauses(List.of(), catalog, "{'a': 'y'}");
    assertClauses(List.of(7), catalog, "{}");
    assertClauses(List.of(7, 7), catalog, "{'a': 'x'}");
    assertClauses(List.of(7), catalog, "{'a': 'x', 'b': 'y'}");
    assertClauses(List.of(), catalog, "{'a': 'x', 'b': 'z'}");
    assertClauses(List.of(7), catalog, "{'a': 'pair'}");
    assertClauses(List.of(), catalog, "{'a': 'pair', 'b': 'pair'}");
  }

  @Test
  void clause_8_agreement_is_of_all_together_not_pair_by_pair() {
    JsonNode catalog =
        catalog(
            """
            'slots': [{'id': 'a', 'accepts': ['tag:t']}, {'id': 'b', 'accepts': ['tag:t']}, {'id': 'c', 'accepts': ['tag:t']}],
            'traits': {'bore': ['1', '2', '3']}
            """,
            """
            {'id': 'x', 'kind': 'k', 'tags': ['t'], 'traits': {'bore': ['1', '2']}},
            {'id': 'y', 'kind': 'k', 'tags': ['t'], 'traits': {'bore': ['2', '3']}},
            {'id': 'z', 'kind': 'k', 'tags': ['t'], 'traits': {'bore': ['1', '3']}},
            {'id': 'w', 'kind': 'k', 'tags': ['t'], 'traits': {'bore': ['4']}}, {'id': 'v', 'kind': 'k', 'tags': ['t']}
            """);
    assertClauses(List.of(), catalog, "{'a': 'x', 'b': 'y', 'c': 'v'}");
    assertClauses(List.of(8), catalog, "{'a': 'x', 'b': 'y', 'c': 'z'}");
    assertClauses(List.of(8), catalog, "{'a': 'w'}");
  }

  @Test
  void clause_9_constraints_apply_when_all_is_there() {
    JsonNode catalog =
        catalog(
            "'slots': [{'id': 'a', 'accepts': ['tag:t']}, {'id': 'b', 'accepts': ['tag:t']}, {'id': 'c', 'accepts': ['tag:t']}]",
            """
            {'id': 'x', 'kind': 'k', 'tags': ['t', 'red']}, {'id': 'y', 'kind': 'k', 'tags': ['t']}, {'id': 'z', 'kind': 'k', 'tags': ['t']},
            {'id': 'w', 'kind': 'odd', 'tags': ['t']}
            """,
            "{'id': 'both', 'when': ['x', 'y'], 'need': ['z', 'kind:odd']}, {'id': 'never', 'when': ['kind:odd', 'tag:red']},"
                + "{'id': 'itself', 'when': ['z', 'tag:t'], 'need': ['tag:t']}");
    assertClauses(List.of(), catalog, "{'a': 'x'}");
    assertClauses(List.of(9), catalog, "{'a': 'x', 'b': 'y'}");
    assertClauses(List.of(), catalog, "{'a': 'x', 'b': 'y', 'c': 'z'}");
    // w meets the first constraint and breaks the second
    assertClauses(List.of(9), catalog, "{'a': 'x', 'b': 'y', 'c': 'w'}");
    assertClauses(List.of(), catalog, "{'a': 'z'}");
  }

  @Test
  void the_platform_is_no_placed_part_so_no_selector_matches_it() {
    JsonNode catalog =
        catalog(
            "'slots': [{'id': 'a', 'accepts': ['tag:t']}], 'tags': ['base']",
            """
            {'id': 'x', 'kind': 'k', 'tags': ['t'], 'excludes': ['frame', 'tag:base']},
            {'id': 'y', 'kind': 'k', 'tags': ['t'], 'needs': [['frame', 'tag:base']]}
            """,
            "{'id': 'c', 'when': ['tag:base'], 'need': []}");
    assertClauses(List.of(), catalog, "{'a': 'x'}");
    assertClauses(List.of(7), catalog, "{'a': 'y'}");
  }

  @Test
  void a_violation_names_its_paths() {
    JsonNode catalog =
        catalog(
            "'slots': [{'id': 'rail', 'accepts': ['tag:t'], 'most': 2}]",
            "{'id': 'x', 'kind': 'k', 'tags': ['t'], 'excludes': ['y']}, {'id': 'y', 'kind': 'k', 'tags': ['t']}");
    JsonNode build = JsonText.read("{'platform': 'frame', 'parts': {'rail': ['y', 'x']}}");
    assertEquals(List.of(new Violation(4, List.of("rail:1", "rail:0"), "x excludes y")), Oracle.valid(catalog, build));
  }
}

package fettle.oracle;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;

/** Spaces of builds small enough to list by hand. */
class SurveyTest {

  private static Entries entries(String platform, String parts) {
    return Entries.of(
        JsonText.read(
            """
            {'attributes': [{'id': 'grip', 'better': 'higher', 'combine': 'sum'}, {'id': 'top', 'better': 'higher', 'combine': 'max'}],
             'platforms': [{'id': 'frame', %s}], 'parts': [%s]}
            """
                .formatted(platform, parts)));
  }

  private static Space space(Entries entries) {
    return Space.of(entries, "frame", 1000).orElseThrow();
  }

  private static List<String> texts(Space space) {
    return space.builds().stream().map(Assembly::text).toList();
  }

  @Test
  void an_empty_optional_slot_is_a_choice_and_order_is_none() {
    Space space =
        space(
            entries(
                "'slots': [{'id': 'a', 'accepts': ['tag:t'], 'most': 2}]",
                "{'id': 'x', 'kind': 'k', 'tags': ['t']}, {'id': 'y', 'kind': 'k', 'tags': ['t']}"));
    assertEquals(List.of("frame", "frame{a=[x,y]}", "frame{a=[x]}", "frame{a=[y]}"), texts(space));
  }

  @Test
  void a_slot_that_repeats_holds_multisets() {
    Space space =
        space(
            entries(
                "'slots': [{'id': 'a', 'accepts': ['tag:t'], 'units': 4, 'repeats': true, 'required': true}]",
                "{'id': 'x', 'kind': 'k', 'tags': ['t'], 'span': 2}, {'id': 'y', 'kind': 'k', 'tags': ['t'], 'span': 3}"));
    assertEquals(List.of("frame{a=[x,x]}", "frame{a=[x]}", "frame{a=[y]}"), texts(space));
  }

  @Test
  void parts_that_hold_each_other_nest_until_one_would_stand_in_itself() {
    Space space =
        space(
            entries(
                "'slots': [{'id': 'a', 'accepts': ['x', 'y'], 'required': true}]",
                """
                {'id': 'x', 'kind': 'k', 'slots': [{'id': 's', 'accepts': ['x', 'y']}]},
                {'id': 'y', 'kind': 'k', 'slots': [{'id': 's', 'accepts': ['x', 'y']}]}
                """));
    assertEquals(
        List.of("frame{a=[x]}", "frame{a=[x{s=[y]}]}", "frame{a=[y]}", "frame{a=[y{s=[x]}]}"), texts(space));
  }

  @Test
  void too_many_candidates_are_not_tried() {
    Entries entries =
        entries(
            "'slots': [{'id': 'a', 'accepts': ['x'], 'most': 9, 'repeats': true}, {'id': 'b', 'accepts': ['x'], 'most': 9, 'repeats': true}]",
            "{'id': 'x', 'kind': 'k'}");
    assertEquals(Optional.empty(), Space.of(entries, "frame", 99).map(Space::platform));
    assertEquals(100, Space.of(entries, "frame", 100).orElseThrow().builds().size());
  }

  @Test
  void dead_essential_unreachable_and_homeless() {
    Entries entries =
        entries(
            """
            'slots': [{'id': 'a', 'accepts': ['tag:t'], 'required': true}, {'id': 'b', 'accepts': ['tag:u'], 'tags': ['low']}],
            'needs': [['core']], 'stats': {'grip': 1}
            """,
            """
            {'id': 'core', 'kind': 'k', 'tags': ['t'], 'blocks': ['low'], 'stats': {'grip': -2},
             'slots': [{'id': 's', 'accepts': ['gem']}, {'id': 'low', 'accepts': ['gem'], 'tags': ['low']}]},
            {'id': 'gem', 'kind': 'k', 'stats': {'grip': 0.5, 'top': 3}},
            {'id': 'rest', 'kind': 'k', 'tags': ['t'], 'slots': [{'id': 's', 'accepts': ['gem']}]},
            {'id': 'under', 'kind': 'k', 'tags': ['u']},
            {'id': 'far', 'kind': 'k', 'slots': [{'id': 's', 'accepts': ['near', 'gem']}]},
            {'id': 'near', 'kind': 'k'}
            """);
    Survey survey = new Survey(space(entries));
    assertEquals(2, survey.count());
    assertEquals(false, survey.isVoid());
    assertEquals(new TreeSet<>(Set.of("core", "gem", "rest", "under")), survey.reachable());
    assertEquals(new TreeSet<>(Set.of("rest", "under")), survey.deadParts());
    assertEquals(new TreeSet<>(Set.of("core/low", "frame/b", "rest/s")), survey.deadSlots());
    assertEquals(new TreeSet<>(Set.of("core")), survey.essentialParts());
    assertEquals(new TreeSet<>(Set.of("far")), Survey.homeless(entries));
    assertEquals(Optional.of("frame{a=[core{s=[gem]}]}"), survey.together(List.of("gem", "core")).map(Assembly::text));
    assertEquals(Optional.empty(), survey.together(List.of("gem", "rest")));
    assertEquals("{grip=Range[least=-1, greatest=-0.5], top=Range[least=3, greatest=3]}", survey.ranges().toString());
  }

  @Test
  void a_void_platform_has_no_build_and_everything_in_reach_is_dead() {
    Survey survey =
        new Survey(
            space(
                entries(
                    "'slots': [{'id': 'a', 'accepts': ['x'], 'required': true}], 'excludes': ['x']", "{'id': 'x', 'kind': 'k'}")));
    assertEquals(true, survey.isVoid());
    assertEquals(new TreeSet<>(Set.of("x")), survey.deadParts());
    assertEquals(new TreeSet<>(), survey.essentialParts());
    assertEquals(Map.of(), survey.ranges());
  }
}

package fettle.oracle;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;

/** Dominance worked by hand in spaces of a few builds. */
class DominanceTest {

  private static Space space(String platform, String parts) {
    Entries entries =
        Entries.of(
            JsonText.read(
                """
                {'catalog': {'id': 'c', 'currency': 'scrip'},
                 'attributes': [{'id': 'grip', 'better': 'higher', 'combine': 'sum'}, {'id': 'kick', 'better': 'lower', 'combine': 'percent'},
                                {'id': 'hush', 'better': 'higher', 'combine': 'product'}, {'id': 'hue', 'better': 'none', 'combine': 'sum'},
                                {'id': 'reach', 'better': 'higher', 'combine': 'max'}, {'id': 'glare', 'better': 'lower', 'combine': 'max'}],
                 'kinds': [{'id': 'sight', 'role': true}, {'id': 'plain'}],
                 'vendors': [{'id': 'market', 'tiers': 0}],
                 'access': [{'id': 'shut', 'vendors': {}}],
                 'platforms': [{'id': 'frame', 'stats': {'kick': 1, 'hush': 1}, %s}], 'parts': [%s],
                 'offers': [{'part': 'good', 'vendor': 'market', 'price': 50}, {'part': 'poor', 'vendor': 'market', 'price': 10},
                            {'part': 'twin-a', 'vendor': 'market', 'price': 1}]}
                """
                    .formatted(platform, parts)));
    return Space.of(entries, "frame", 1000).orElseThrow();
  }

  private static String dominated(Space space, String host, String slot) {
    return Dominance.ignoringCost(space, host, slot).dominated().toString();
  }

  private static final String ONE_SLOT = "'slots': [{'id': 's', 'accepts': ['tag:t'], 'required': true}]";

  @Test
  void better_on_one_attribute_and_no_worse_on_any() {
    Space space =
        space(
            ONE_SLOT,
            """
            {'id': 'good', 'kind': 'plain', 'tags': ['t'], 'stats': {'grip': 2, 'kick': -1}},
            {'id': 'poor', 'kind': 'plain', 'tags': ['t'], 'stats': {'grip': 2, 'hue': 9}},
            {'id': 'other', 'kind': 'plain', 'tags': ['t'], 'stats': {'grip': 3}}
            """);
    assertEquals("{poor={poor=[good, other]}}", dominated(space, "frame", "s"));
  }

  @Test
  void with_cost_the_dearer_is_no_longer_better_and_the_unobtainable_take_no_part() {
    Space space =
        space(
            ONE_SLOT,
            """
            {'id': 'good', 'kind': 'plain', 'tags': ['t'], 'stats': {'grip': 3}},
            {'id': 'poor', 'kind': 'plain', 'tags': ['t'], 'stats': {'grip': 2}},
            {'id': 'unsold', 'kind': 'plain', 'tags': ['t'], 'stats': {'grip': 9}}
            """);
    assertEquals("{good={good=[unsold]}, poor={poor=[good, unsold]}}", dominated(space, "frame", "s"));
    assertEquals("{}", Dominance.withCost(space, "frame", "s", Optional.empty()).dominated().toString());
    assertEquals(List.of(), Dominance.withCost(space, "frame", "s", Optional.of("shut")).choices());
  }

  @Test
  void cost_alone_can_be_what_is_better() {
    Space space =
        space(
            ONE_SLOT,
            "{'id': 'good', 'kind': 'plain', 'tags': ['t']}, {'id': 'poor', 'kind': 'plain', 'tags': ['t']}");
    assertEquals("{}", dominated(space, "frame", "s"));
    assertEquals(
        "{good={good=[poor]}}", Dominance.withCost(space, "frame", "s", Optional.empty()).dominated().toString());
  }

  @Test
  void a_role_is_never_traded_away_but_the_empty_choice_beats_what_only_harms() {
    Space space =
        space(
            "'slots': [{'id': 's', 'accepts': ['tag:t']}]",
            """
            {'id': 'lens', 'kind': 'sight', 'tags': ['t'], 'stats': {'grip': -2}},
            {'id': 'ballast', 'kind': 'plain', 'tags': ['t'], 'stats': {'grip': -1}}
            """);
    assertEquals("{ballast={ballast=[(empty)]}}", dominated(space, "frame", "s"));
    assertEquals(
        new TreeSet<>(Set.of("ballast")), Dominance.ignoringCost(space, "frame", "s").worseThanEmpty());
  }

  @Test
  void the_empty_choice_is_none_where_most_is_above_one() {
    Space space =
        space(
            "'slots': [{'id': 's', 'accepts': ['tag:t'], 'most': 2}]",
            "{'id': 'ballast', 'kind': 'plain', 'tags': ['t'], 'stats': {'grip': -1}}");
    assertEquals("{}", dominated(space, "frame", "s"));
  }

  @Test
  void the_witness_must_keep_every_valid_build_valid() {
    String parts =
        """
        {'id': 'good', 'kind': 'plain', 'tags': ['t'], 'stats': {'grip': 3}, 'excludes': ['lamp']},
        {'id': 'poor', 'kind': 'plain', 'tags': ['t'], 'stats': {'grip': 2}},
        {'id': 'lamp', 'kind': 'plain'%s}
        """;
    String slots = "'slots': [{'id': 's', 'accepts': ['tag:t']}, {'id': 'l', 'accepts': ['lamp']}]";
    assertEquals("{}", dominated(space(slots, parts.formatted("")), "frame", "s"));
    // where the lamp can be in no build, the exclusion rules nothing out
    assertEquals(
        "{poor={poor=[good]}}", dominated(space(slots, parts.formatted(", 'needs': [['lamp']]")), "frame", "s"));
  }

  @Test
  void a_part_that_needs_more_may_still_replace_where_every_build_has_it() {
    String platform = "'slots': [{'id': 's', 'accepts': ['tag:t']}, {'id': 'l', 'accepts': ['lamp']%s}]";
    String parts =
        """
        {'id': 'good', 'kind': 'plain', 'tags': ['t'], 'stats': {'grip': 3}, 'needs': [['lamp']]},
        {'id': 'poor', 'kind': 'plain', 'tags': ['t'], 'stats': {'grip': 2}}, {'id': 'lamp', 'kind': 'plain'}
        """;
    assertEquals("{}", dominated(space(platform.formatted(""), parts), "frame", "s"));
    assertEquals(
        "{poor={poor=[good]}}", dominated(space(platform.formatted(", 'required': true"), parts), "frame", "s"));
  }

  @Test
  void whole_assemblies_are_compared_and_a_part_falls_only_when_each_of_its_assemblies_does() {
    String parts =
        """
        {'id': 'direct', 'kind': 'plain', 'tags': ['t'], 'stats': {'grip': 2}},
        {'id': 'riser', 'kind': 'plain', 'tags': ['t'], 'stats': {'grip': -1}, 'slots': [{'id': 'top', 'accepts': ['far']}]},
        {'id': 'far', 'kind': 'plain', 'stats': {'grip': %s}}
        """;
    assertEquals("{direct={direct=[riser{top=[far]}]}}", dominated(space(ONE_SLOT, parts.formatted("4")), "frame", "s"));
    assertEquals(
        "{riser={riser=[direct], riser{top=[far]}=[direct]}}",
        dominated(space(ONE_SLOT, parts.formatted("2.5")), "frame", "s"));
    // within the riser, the far part beats leaving the slot empty; both are choices there
    Dominance top = Dominance.ignoringCost(space(ONE_SLOT, parts.formatted("4")), "riser", "top");
    assertEquals("[(empty), far]", top.choices().toString());
    assertEquals(true, top.dominates(Choice.of(Assembly.bare("far")), Choice.EMPTY));
  }

  @Test
  void in_a_slot_of_several_one_is_replaced_at_a_time() {
    String platform = "'slots': [{'id': 's', 'accepts': ['tag:t'], 'most': 2%s}]";
    String parts =
        """
        {'id': 'good', 'kind': 'plain', 'tags': ['t'], 'stats': {'grip': 3}},
        {'id': 'poor', 'kind': 'plain', 'tags': ['t'], 'stats': {'grip': 2}}
        """;
    // beside a good one there is no place for a second, unless the slot repeats
    assertEquals("{}", dominated(space(platform.formatted(""), parts), "frame", "s"));
    assertEquals(
        "{poor={poor=[good]}}", dominated(space(platform.formatted(", 'repeats': true"), parts), "frame", "s"));
  }

  @Test
  void no_stat_is_the_worst_or_the_best_for_max_as_the_attribute_has_it() {
    Space space =
        space(
            ONE_SLOT,
            """
            {'id': 'none', 'kind': 'plain', 'tags': ['t']}, {'id': 'reach', 'kind': 'plain', 'tags': ['t'], 'stats': {'reach': -5}},
            {'id': 'glare', 'kind': 'plain', 'tags': ['t'], 'stats': {'glare': -5}}
            """);
    assertEquals("{glare={glare=[none, reach]}, none={none=[reach]}}", dominated(space, "frame", "s"));
  }

  @Test
  void a_product_multiplies_and_loaded_stats_are_attributes_of_their_own() {
    Space space =
        space(
            ONE_SLOT,
            """
            {'id': 'flip', 'kind': 'plain', 'tags': ['t'], 'stats': {'hush': -150}},
            {'id': 'flip-flip', 'kind': 'plain', 'tags': ['t'], 'stats': {'hush': -150}, 'slots': [{'id': 'u', 'accepts': ['flop'], 'required': true}]},
            {'id': 'flop', 'kind': 'plain', 'stats': {'hush': -150}},
            {'id': 'full', 'kind': 'plain', 'tags': ['t'], 'stats': {'hush': -150}, 'loaded': {'grip': 1}}
            """);
    // −0.5 against −0.5 × −0.5 = 0.25; and full against flip by its loaded grip
    assertEquals("{flip={flip=[flip-flip{u=[flop]}, full]}}", dominated(space, "frame", "s"));
  }

  @Test
  void twins_have_equal_figures_and_can_always_stand_in_for_each_other() {
    String parts =
        """
        {'id': 'twin-a', 'kind': 'plain', 'tags': ['t'], 'stats': {'grip': 3, 'hue': 1}},
        {'id': 'twin-b', 'kind': 'plain', 'tags': ['t'], 'stats': {'grip': 3.0, 'hue': 1}},
        {'id': 'dyed', 'kind': 'plain', 'tags': ['t'], 'stats': {'grip': 3, 'hue': 2}},
        {'id': 'shy', 'kind': 'plain', 'tags': ['t'], 'stats': {'grip': 3, 'hue': 1}, 'excludes': ['lamp']},
        {'id': 'hook', 'kind': 'plain', 'tags': ['t'], 'stats': {'grip': 3, 'hue': 1}, 'slots': [{'id': 'u', 'accepts': ['lamp']}]},
        {'id': 'lamp', 'kind': 'plain'}
        """;
    Space space =
        space("'slots': [{'id': 's', 'accepts': ['tag:t']}, {'id': 'l', 'accepts': ['lamp']}]", parts);
    assertEquals(Set.of(List.of("twin-a", "twin-b")), Dominance.ignoringCost(space, "frame", "s").twins());
  }

  @Test
  void never_worth_using_speaks_of_every_slot_where_the_part_can_be() {
    String parts =
        """
        {'id': 'good', 'kind': 'plain', 'tags': ['t'], 'stats': {'grip': 3}},
        {'id': 'poor', 'kind': 'plain', 'tags': ['t', 'u'], 'stats': {'grip': 2}}
        """;
    Space one = space("'slots': [{'id': 's', 'accepts': ['tag:t']}]", parts);
    Space two = space("'slots': [{'id': 's', 'accepts': ['tag:t']}, {'id': 'z', 'accepts': ['tag:u']}]", parts);
    assertEquals(new TreeSet<>(Set.of("poor")), Worth.neverWorthUsing(List.of(one)));
    assertEquals(new TreeSet<>(), Worth.neverWorthUsing(new ArrayList<>(List.of(two))));
    assertEquals(new TreeSet<>(), Worth.neverWorthUsingWithCost(List.of(one), Optional.empty()));
  }
}

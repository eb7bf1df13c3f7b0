package fettle.oracle;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.math.BigDecimal;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import tools.jackson.databind.JsonNode;

/** Best builds found by hand in a space of a few builds. */
class BestBuildTest {
  private static final Entries ENTRIES =
      Entries.of(
          JsonText.read(
              """
              {'catalog': {'id': 'c', 'currency': 'scrip'},
               'attributes': [{'id': 'grip', 'better': 'higher', 'combine': 'sum'}, {'id': 'mass', 'better': 'lower', 'combine': 'sum'}],
               'kinds': [{'id': 'k'}], 'vendors': [{'id': 'market', 'tiers': 0}, {'id': 'smith', 'tiers': 1}],
               'access': [{'id': 'novice', 'vendors': {'market': 0}}],
               'outfits': [{'id': 'pack', 'effects': {'mass': 100}}],
               'lenses': [{'id': 'hold', 'weights': {'grip': 1}}, {'id': 'light', 'weights': {'mass': 2, 'grip': 0.1}}],
               'limits': [{'id': 'carry', 'attribute': 'mass', 'atMost': 30}],
               'platforms': [{'id': 'frame', 'stats': {'mass': 10}, 'slots': [
                   {'id': 'a', 'accepts': ['tag:a']}, {'id': 'r', 'accepts': ['tag:r'], 'most': 2}]}],
               'parts': [{'id': 'bar', 'kind': 'k', 'tags': ['a'], 'stats': {'grip': 5, 'mass': 4}},
                         {'id': 'beam', 'kind': 'k', 'tags': ['a'], 'stats': {'grip': 9, 'mass': 6}},
                         {'id': 'keg', 'kind': 'k', 'tags': ['a'], 'stats': {'grip': 20, 'mass': 2}, 'loaded': {'mass': 19}},
                         {'id': 'pin', 'kind': 'k', 'tags': ['r'], 'stats': {'grip': 1}},
                         {'id': 'nub', 'kind': 'k', 'tags': ['r'], 'stats': {'grip': 1}},
                         {'id': 'zip', 'kind': 'k', 'tags': ['r'], 'stats': {'grip': 1}}],
               'offers': [{'part': 'bar', 'vendor': 'market', 'price': 10}, {'part': 'beam', 'vendor': 'smith', 'tier': 1, 'price': 30},
                          {'part': 'keg', 'vendor': 'market', 'price': 1}, {'part': 'pin', 'vendor': 'market', 'price': 2},
                          {'part': 'nub', 'vendor': 'market', 'price': 2}, {'part': 'zip', 'vendor': 'market', 'price': 2}]}
              """));
  private static final Space SPACE = Space.of(ENTRIES, "frame", 1000).orElseThrow();

  private static String best(String build, String... keep) {
    JsonNode read = JsonText.read(build);
    return BestBuild.of(SPACE, Demands.of(ENTRIES, read, "hold", Set.of(keep)))
        .map(best -> best.paths() + " " + best.benefit() + " for " + best.cost() + ", changed " + best.changed())
        .orElse("none");
  }

  @Test
  void the_highest_benefit_within_the_limits() {
    // the keg, full, is one over; of the three pairs on r, each as good and as dear, nub and pin come first in the alphabet
    assertEquals(28, SPACE.builds().size());
    assertEquals(
        "{a=beam, r:0=nub, r:1=pin} 11 for 34, changed 3", best("{'platform': 'frame', 'parts': {}}"));
    assertEquals(
        Optional.of(new BigDecimal("11")), BestBuild.of(SPACE, Demands.lens("hold")).map(BestBuild::benefit));
  }

  @Test
  void limits_are_measured_full_whatever_the_build_says_and_the_outfit_counts() {
    assertEquals(
        "{a=beam, r:0=nub, r:1=pin} 11 for 34, changed 3", best("{'platform': 'frame', 'parts': {}, 'loaded': false}"));
    // with the pack, (10 + 6) × 2 is over 30, and (10 + 4) × 2 is not
    assertEquals(
        "{a=bar, r:0=nub, r:1=pin} 7 for 14, changed 3", best("{'platform': 'frame', 'parts': {}, 'outfit': 'pack'}"));
  }

  @Test
  void lower_is_better_turns_the_sign_and_the_outfit_applies() {
    // −2 × 10 × 2 + 0.1 × 2
    assertEquals(
        "{r:0=nub, r:1=pin} -39.8 for 4, changed 2",
        best("{'platform': 'frame', 'parts': {}, 'outfit': 'pack', 'lens': 'light'}"));
  }

  @Test
  void budget_access_and_owned_parts() {
    assertEquals(
        "{a=bar, r:0=nub, r:1=pin} 7 for 14, changed 3", best("{'platform': 'frame', 'parts': {}, 'access': 'novice'}"));
    assertEquals(
        "{a=beam, r:0=nub, r:1=pin} 11 for 4, changed 3",
        best("{'platform': 'frame', 'parts': {}, 'access': 'novice', 'owned': ['beam']}"));
    assertEquals("{a=bar, r:0=nub} 6 for 12, changed 2", best("{'platform': 'frame', 'parts': {}, 'budget': 13}"));
    assertEquals("none", best("{'platform': 'frame', 'parts': {}, 'budget': -1}"));
  }

  @Test
  void among_equals_the_cheaper_then_the_one_with_fewer_changes() {
    assertEquals(
        "{a=beam, r:0=nub, r:1=zip} 11 for 32, changed 2",
        best("{'platform': 'frame', 'parts': {'r': ['zip']}, 'owned': ['zip']}"));
    assertEquals(
        "{a=beam, r:0=pin, r:1=zip} 11 for 34, changed 0",
        best("{'platform': 'frame', 'parts': {'a': 'beam', 'r': ['zip', 'pin']}}"));
  }

  @Test
  void kept_paths_keep_their_part_in_any_order() {
    assertEquals(
        "{a=beam, r:0=nub, r:1=zip} 11 for 34, changed 1",
        best("{'platform': 'frame', 'parts': {'a': 'bar', 'r': ['zip', 'nub']}}", "r:0"));
    assertEquals(
        "{a=bar, r:0=nub, r:1=zip} 7 for 14, changed 0",
        best("{'platform': 'frame', 'parts': {'a': 'bar', 'r': ['zip', 'nub']}}", "a", "r:0", "r:1"));
    assertThrows(
        IllegalArgumentException.class, () -> best("{'platform': 'frame', 'parts': {}}", "a"));
  }
}

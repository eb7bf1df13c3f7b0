package fettle.space;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Surveys worked out by hand. */
class SpaceTest {

    private static Survey.Known frame(String platform, String... parts) {
        return Catalogs.survey(catalog(platform, parts), "frame");
    }

    private static String catalog(String platform, String... parts) {
        return """
                {'catalog': {'id': 'c', 'patch': '1', 'released': '2031-01-01', 'currency': 'scrip'}, 'currencies': [{'id': 'scrip', 'rate': 1}],
                 'attributes': [{'id': 'grip', 'better': 'higher', 'combine': 'sum'}, {'id': 'kick', 'better': 'lower', 'combine': 'percent'},
                  {'id': 'pace', 'better': 'higher', 'combine': 'product'}, {'id': 'top', 'better': 'higher', 'combine': 'max'}],
                 'platforms': [{'id': 'frame', %s}], 'parts': [%s]}
                """.formatted(platform, String.join(", ", parts));
    }

    private static void assertCount(long expected, Survey.Known survey) {
        assertEquals(BigInteger.valueOf(expected), survey.count());
    }

    @Test
    void a_platform_without_slots_has_one_build() {
        Survey.Known frame = frame("'stats': {'kick': 80}");
        assertCount(1, frame);
        assertEquals(new Range(new BigDecimal("8E+1"), new BigDecimal("8E+1")), frame.ranges().get("kick"));
        assertEquals(Set.of("grip", "kick"), frame.ranges().keySet());
    }

    @Test
    void optional_slots_multiply() {
        assertCount(9, frame("'slots': [{'id': 'a', 'accepts': ['tag:t']}, {'id': 'b', 'accepts': ['tag:t']}]",
                "{'id': 'x', 'kind': 'k', 'tags': ['t']}", "{'id': 'y', 'kind': 'k', 'tags': ['t']}"));
    }

    @Test
    void a_rail_that_repeats_counts_each_multiset_of_assemblies_once() {
        // Two assemblies of lamp (with and without a filter) fill 0 to 3 notches: 1 + 2 + 3 + 4 multisets.
        assertCount(10, frame("'slots': [{'id': 'rail', 'accepts': ['lamp'], 'units': 3, 'repeats': true}]",
                "{'id': 'lamp', 'kind': 'k', 'slots': [{'id': 'lens', 'accepts': ['filter']}]}", "{'id': 'filter', 'kind': 'k'}"));
    }

    @Test
    void how_long_a_rail_for_one_part_is_matters_only_to_what_is_longer() {
        String spans = "{'id': 'x', 'kind': 'k', 'tags': ['t']}, {'id': 'y', 'kind': 'k', 'tags': ['t'], 'span': 2}, {'id': 'z', 'kind': 'k', 'tags': ['t'], 'span': 3}";
        String catalog = catalog("'slots': [{'id': 'a', 'accepts': ['tag:t'], 'units': 4, 'most': 1}, {'id': 'b', 'accepts': ['tag:t'], 'units': 9, 'most': 1}, "
                + "{'id': 'c', 'accepts': ['tag:t'], 'units': 2, 'most': 1}, {'id': 'd', 'accepts': ['tag:t'], 'units': 9, 'most': 2}]", spans);
        Terrain terrain = Space.of(Catalogs.relations(catalog)).landscape(Set.of("frame")).terrain();
        assertEquals(terrain.room()[0], terrain.room()[1]);
        assertNotEquals(terrain.room()[0], terrain.room()[2]);
        assertNotEquals(terrain.room()[0], terrain.room()[3]);
        // Each of the first two holds one of three or nothing, the third not the longest, the fourth any two as well.
        assertCount(4 * 4 * 3 * 7, Catalogs.survey(catalog, "frame"));
    }

    @Test
    void a_rail_holds_what_its_notches_and_its_number_allow() {
        // Spans 1, 2, 3 on 4 notches, at most 2 parts: none, each alone, 1+2, 1+3.
        assertCount(6, frame("'slots': [{'id': 'rail', 'accepts': ['tag:t'], 'units': 4, 'most': 2}]", "{'id': 'x', 'kind': 'k', 'tags': ['t']}",
                "{'id': 'y', 'kind': 'k', 'tags': ['t'], 'span': 2}", "{'id': 'z', 'kind': 'k', 'tags': ['t'], 'span': 3}"));
    }

    @Test
    void a_blocker_may_sit_in_the_slot_it_blocks_but_no_other_may_be_used() {
        Survey.Known frame = frame("'slots': [{'id': 'a', 'accepts': ['x', 'y'], 'tags': ['low']}, {'id': 'b', 'accepts': ['x', 'y'], 'tags': ['low']}]",
                "{'id': 'x', 'kind': 'k', 'blocks': ['low']}", "{'id': 'y', 'kind': 'k'}");
        // Without x: 2 × 2; with x: alone in a, alone in b.
        assertCount(6, frame);
    }

    @Test
    void a_need_is_not_answered_by_the_part_itself() {
        String need = "{'id': 'x', 'kind': 'k', 'tags': ['t'], 'needs': [['tag:t']]}";
        assertCount(1, frame("'slots': [{'id': 'a', 'accepts': ['x']}]", need));
        assertCount(2, frame("'slots': [{'id': 'a', 'accepts': ['x']}, {'id': 'b', 'accepts': ['x']}]", need));
    }

    @Test
    void a_platform_needs_blocks_claims_and_excludes_like_a_part() {
        assertCount(2, frame("'slots': [{'id': 'a', 'accepts': ['tag:t']}], 'needs': [['tag:t']]", "{'id': 'x', 'kind': 'k', 'tags': ['t']}",
                "{'id': 'y', 'kind': 'k', 'tags': ['t']}"));
        assertCount(1, frame("'slots': [{'id': 'a', 'accepts': ['x'], 'tags': ['low']}], 'blocks': ['low']", "{'id': 'x', 'kind': 'k'}"));
        assertCount(1, frame("'slots': [{'id': 'a', 'accepts': ['x']}], 'claims': ['z']", "{'id': 'x', 'kind': 'k', 'claims': ['z']}"));
        assertCount(1, frame("'slots': [{'id': 'a', 'accepts': ['x']}], 'excludes': ['kind:k']", "{'id': 'x', 'kind': 'k'}"));
    }

    @Test
    void values_of_a_trait_are_shared_by_all_and_not_pair_by_pair() {
        String slots = "'slots': [{'id': 'a', 'accepts': ['x'], 'required': true}, {'id': 'b', 'accepts': ['y'], 'required': true}, {'id': 'c', 'accepts': ['z'], 'required': true}]";
        Survey.Known frame = frame(slots, "{'id': 'x', 'kind': 'k', 'traits': {'bore': ['p', 'q']}}", "{'id': 'y', 'kind': 'k', 'traits': {'bore': ['q', 'r']}}",
                "{'id': 'z', 'kind': 'k', 'traits': {'bore': ['p', 'r']}}");
        assertTrue(frame.isVoid());
        assertEquals(Set.of("x", "y", "z"), frame.dead());
        assertEquals(Set.of(), frame.essential());
        assertEquals(List.of("frame/a", "frame/b", "frame/c"), frame.deadSlots().stream().map(Object::toString).toList());
    }

    @Test
    void parts_that_hold_each_other_nest_until_one_would_stand_in_itself() {
        // Each of three in a chain of at most three, no part twice: 3 + 6 + 6.
        String slot = "'slots': [{'id': 's', 'accepts': ['tag:t']}]";
        assertCount(15, frame("'slots': [{'id': 'a', 'accepts': ['tag:t'], 'required': true}]", "{'id': 'x', 'kind': 'k', 'tags': ['t'], " + slot + "}",
                "{'id': 'y', 'kind': 'k', 'tags': ['t'], " + slot + "}", "{'id': 'z', 'kind': 'k', 'tags': ['t'], " + slot + "}"));
    }

    @Test
    void a_slot_of_a_dead_part_is_dead() {
        Survey.Known frame = frame("'slots': [{'id': 'a', 'accepts': ['x', 'y']}]", "{'id': 'x', 'kind': 'k', 'needs': [['absent']], 'slots': [{'id': 's', 'accepts': ['y']}]}",
                "{'id': 'y', 'kind': 'k'}", "{'id': 'absent', 'kind': 'k'}");
        assertEquals(new TreeSet<>(Set.of("x", "y")), frame.reachable());
        assertEquals(new TreeSet<>(Set.of("x")), frame.dead());
        assertEquals(List.of("x/s"), frame.deadSlots().stream().map(Object::toString).toList());
    }

    @Test
    void ranges_keep_each_way_of_combining() {
        Survey.Known frame = frame("'stats': {'grip': 1, 'kick': -50, 'pace': 200}, 'slots': [{'id': 'a', 'accepts': ['x']}, {'id': 'b', 'accepts': ['y']}]",
                "{'id': 'x', 'kind': 'k', 'stats': {'grip': 0.5, 'kick': 10, 'pace': -150, 'top': 3}}", "{'id': 'y', 'kind': 'k', 'stats': {'grip': -2, 'kick': 6, 'pace': -200, 'top': 7}}");
        assertEquals("{grip=-1 to 1.5, kick=-58 to -50, pace=-200 to 200, top=3 to 7}", frame.ranges().entrySet().stream()
                .map(entry -> entry.getKey() + "=" + Exact.text(entry.getValue().least()) + " to " + Exact.text(entry.getValue().greatest()))
                .collect(Collectors.joining(", ", "{", "}")));
    }

    @Test
    void a_chain_of_five_thousand_adapters_is_counted() {
        int length = 5_000;
        String[] parts = IntStream.range(0, length).mapToObj(i -> "{'id': 'p%d', 'kind': 'k', 'slots': [{'id': 's', 'accepts': ['p%d']}]}".formatted(i, i + 1)).toArray(String[]::new);
        Survey.Known frame = frame("'slots': [{'id': 's', 'accepts': ['p0']}]", parts);
        assertCount(length + 1, frame);
        assertEquals(length, frame.reachable().size());
    }

    @Test
    void numbers_of_hundreds_of_digits_are_exact() {
        String slots = IntStream.range(0, 400).mapToObj(i -> "{'id': 's%d', 'accepts': ['kind:k']}".formatted(i)).collect(Collectors.joining(", "));
        String[] parts = IntStream.range(0, 9).mapToObj(i -> "{'id': 'p%d', 'kind': 'k'}".formatted(i)).toArray(String[]::new);
        assertEquals(BigInteger.TEN.pow(400), frame("'slots': [" + slots + "]", parts).count());
    }

    @Test
    void what_is_too_large_is_said_to_be_undecided_and_the_rest_is_still_decided() {
        String parts = IntStream.range(0, 40).mapToObj(i -> "{'id': 'p%d', 'kind': 'k', 'mounts': ['m'], 'slots': [{'id': 's', 'mounts': ['m']}]}".formatted(i))
                .collect(Collectors.joining(", "));
        String json = """
                {'catalog': {'id': 'c', 'patch': '1', 'released': '2031-01-01', 'currency': 'scrip'},
                 'platforms': [{'id': 'hard', 'slots': [{'id': 'a', 'mounts': ['m']}]}, {'id': 'plain', 'slots': [{'id': 'a', 'accepts': ['q']}]}],
                 'parts': [{'id': 'q', 'kind': 'k'}, %s]}
                """.formatted(parts);
        var surveys = Space.of(Catalogs.relations(json), new Bounds(1000, 1000, 100_000)).survey();
        Survey.Open hard = assertInstanceOf(Survey.Open.class, surveys.get("hard"));
        assertEquals("It takes more than 100000 steps.", hard.undecided().why());
        assertEquals(40, hard.reachable().size());
        assertCount(2, assertInstanceOf(Survey.Known.class, surveys.get("plain")));
    }
}

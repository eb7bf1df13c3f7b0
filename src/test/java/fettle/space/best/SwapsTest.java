package fettle.space.best;

import static org.junit.jupiter.api.Assertions.assertEquals;

import fettle.catalog.Build;
import fettle.catalog.BuildReader;
import fettle.document.Documents;
import fettle.relation.Relations;
import fettle.space.Catalogs;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Which assemblies are thought of for the place of another. */
class SwapsTest {

    /** The swaps of a build at the frame's only slot, each as what it puts there, what it gains, and what falls off. */
    private static List<String> swaps(String parts, String build) {
        Improving improving = new Improving(relations(parts));
        Improvement improvement = improved(parts, build);
        return told(improving.swaps(improvement.before(), improvement.weighing(), Optional.empty()));
    }

    private static List<String> told(Swaps.Found found) {
        return found.swaps().stream().filter(swap -> swap.path().equals("front")).map(swap -> swap.to() + " " + swap.gain() + " " + swap.lost()).toList();
    }

    private static Improvement improved(String parts, String build) {
        String owned = IntStream.rangeClosed(1, 9).mapToObj(i -> ", 'part-" + i + "'").collect(Collectors.joining());
        String json = "{'build': {'id': 'b', 'platform': 'frame', 'patch': '1', 'lens': 'hold', 'owned': ['plain', 'plate', 'broad', 'knob', 'wheel'%s], 'parts': %s}}".formatted(owned, build);
        Build read = BuildReader.read(Documents.content("build.json", json.replace('\'', '"').getBytes(StandardCharsets.UTF_8))).get(0);
        Relations relations = relations(parts);
        return new Improving(relations).of(read, relations.catalog().lenses().get("hold"), Set.of(), 1, Effort.unbounded(), Effort.unbounded());
    }

    private static Relations relations(String parts) {
        return Catalogs.relations("""
                {'catalog': {'id': 'c', 'patch': '1', 'released': '2031-01-01', 'currency': 'scrip'},
                 'currencies': [{'id': 'scrip', 'rate': 1}],
                 'attributes': [{'id': 'grip', 'unit': 'pt', 'better': 'higher', 'combine': 'sum', 'decimals': 0}],
                 'lenses': [{'id': 'hold', 'weights': {'grip': 1}}],
                 'platforms': [{'id': 'frame', 'slots': [{'id': 'front', 'accepts': ['tag:head'], 'required': true}]}],
                 'parts': [%s]}
                """.formatted(parts));
    }

    private static final String TOPS = "{'id': 'knob', 'tags': ['top'], 'stats': {'grip': 3}}, {'id': 'wheel', 'tags': ['top'], 'stats': {'grip': 2}}";

    @Test
    void two_slots_of_a_new_head_are_filled_at_once_where_neither_alone_is_enough() {
        String parts = "{'id': 'plain', 'tags': ['head'], 'stats': {'grip': 1}}, {'id': 'plate', 'tags': ['head'], 'stats': {'grip': -3},"
                + " 'slots': [{'id': 'left', 'accepts': ['tag:top']}, {'id': 'right', 'accepts': ['tag:top']}]}, " + TOPS;
        assertEquals("{=plate, left=knob, right=knob} 2 []", swaps(parts, "{'front': 'plain'}").get(0));
    }

    @Test
    void a_slot_of_two_is_filled_with_the_two_that_gain_the_most() {
        String parts = "{'id': 'plain', 'tags': ['head'], 'stats': {'grip': 1}}, {'id': 'plate', 'tags': ['head'], 'stats': {'grip': -3},"
                + " 'slots': [{'id': 'rail', 'accepts': ['tag:top'], 'most': 2}]}, " + TOPS;
        assertEquals("{=plate, rail:0=knob, rail:1=wheel} 1 []", swaps(parts, "{'front': 'plain'}").get(0));
    }

    @Test
    void where_a_part_may_come_twice_it_is_put_in_as_often_as_there_is_room_for() {
        String parts = "{'id': 'plain', 'tags': ['head'], 'stats': {'grip': 1}}, {'id': 'plate', 'tags': ['head'], 'stats': {'grip': -3},"
                + " 'slots': [{'id': 'rail', 'accepts': ['tag:top'], 'units': 5, 'most': 3, 'repeats': true}]},"
                + " {'id': 'knob', 'tags': ['top'], 'span': 2, 'stats': {'grip': 3}}, {'id': 'wheel', 'tags': ['top'], 'stats': {'grip': 2}}";
        assertEquals("{=plate, rail:0=knob, rail:1=knob, rail:2=wheel} 4 []", swaps(parts, "{'front': 'plain'}").get(0));
    }

    @Test
    void a_new_head_is_offered_with_what_hung_there_and_without() {
        String heads = "{'id': 'plate', 'tags': ['head'], 'stats': {'grip': 1}, 'slots': [{'id': 'left', 'accepts': ['tag:top']}]},"
                + " {'id': 'broad', 'tags': ['head'], 'stats': {'grip': 5}, 'slots': [{'id': 'left', 'accepts': ['tag:top']}]}, ";
        assertEquals(List.of("{=broad} 5 [front/left]", "{=broad, left=knob} 4 []"),
                swaps(heads + "{'id': 'knob', 'tags': ['top'], 'stats': {'grip': -1}}", "{'front': 'plate', 'front/left': 'knob'}"));
        assertEquals(List.of("{=broad, left=knob} 4 []", "{=broad} 3 [front/left]"),
                swaps(heads + "{'id': 'knob', 'tags': ['top'], 'stats': {'grip': 1}}", "{'front': 'plate', 'front/left': 'knob'}"));
    }

    /** Parts that each carry the next, the first of them a head and the last with so much grip. */
    private static String chain(int length, int grip) {
        return IntStream.rangeClosed(1, length).mapToObj(i -> "{'id': 'part-%d'%s, 'stats': {'grip': %d}%s}".formatted(i, i == 1 ? ", 'tags': ['head']" : "",
                i == length ? grip : -1, i == length ? "" : ", 'slots': [{'id': 'x', 'accepts': ['part-%d']}]".formatted(i + 1))).collect(Collectors.joining(", "));
    }

    @Test
    void a_chain_is_thought_of_however_many_parts_it_takes_to_gain_something() {
        String parts = "{'id': 'plate', 'tags': ['head'], 'stats': {'grip': 1}}, " + chain(6, 9);
        assertEquals("{=part-1, x=part-2, x/x=part-3, x/x/x=part-4, x/x/x/x=part-5, x/x/x/x/x=part-6} 3 []", swaps(parts, "{'front': 'plate'}").get(0));
        assertEquals(List.of(), improved(parts, "{'front': 'plate'}").swaps().bounded());
    }

    @Test
    void where_the_chains_of_more_than_three_are_too_many_they_are_left_out_and_that_is_told() {
        String parts = "{'id': 'plate', 'tags': ['head'], 'stats': {'grip': 1}}, " + IntStream.rangeClosed(1, 8)
                .mapToObj(i -> "{'id': 'part-%d', 'tags': ['head'], 'stats': {'grip': 1}, 'slots': [{'id': 'x', 'accepts': ['tag:head']}]}".formatted(i)).collect(Collectors.joining(", "));
        Improvement improvement = improved(parts, "{'front': 'plate'}");
        assertEquals(List.of("front"), improvement.swaps().bounded());
        // Eight heads, plate on each of them, and so on: 8 + 8 * 8 + 8 * 7 * 7 and what the best build has there, which has every part.
        assertEquals(8 + 8 * 8 + 8 * 7 * 7 + 1, told(improvement.swaps()).size());
        assertEquals(8, improvement.swaps().swaps().get(0).gain().intValueExact());
    }

    @Test
    void what_the_best_build_has_on_the_same_head_in_two_slots_is_a_swap_though_neither_goes_without_the_other() {
        String parts = "{'id': 'plate', 'tags': ['head'], 'slots': [{'id': 'left', 'accepts': ['part-1', 'part-2'], 'required': true},"
                + " {'id': 'right', 'accepts': ['part-3', 'part-4'], 'required': true}]},"
                + " {'id': 'part-1', 'stats': {'grip': 1}}, {'id': 'part-2', 'stats': {'grip': 2}, 'excludes': ['part-3']},"
                + " {'id': 'part-3', 'stats': {'grip': 1}}, {'id': 'part-4', 'stats': {'grip': 2}, 'excludes': ['part-1']}";
        assertEquals(List.of("{=plate, left=part-2, right=part-4} 2 [front/left, front/right]"),
                told(improved(parts, "{'front': 'plate', 'front/left': 'part-1', 'front/right': 'part-3'}").swaps()));
    }

    @Test
    void an_assembly_is_offered_in_one_order_and_what_stays_is_not_told_as_lost() {
        String parts = "{'id': 'plate', 'tags': ['head'], 'stats': {'grip': 1}, 'slots': [{'id': 'rail', 'accepts': ['tag:top'], 'most': 2}]},"
                + " {'id': 'broad', 'tags': ['head'], 'stats': {'grip': 5}, 'slots': [{'id': 'rail', 'accepts': ['tag:top'], 'most': 2}]},"
                + " {'id': 'knob', 'tags': ['top'], 'stats': {'grip': 3}}, {'id': 'wheel', 'tags': ['top'], 'stats': {'grip': -2}}";
        assertEquals(List.of("{=broad, rail=knob} 6 [front/rail:1]", "{=broad, rail:0=knob, rail:1=wheel} 4 []", "{=broad} 3 [front/rail:0, front/rail:1]",
                        "{=broad, rail=wheel} 1 [front/rail:0]"),
                swaps(parts, "{'front': 'plate', 'front/rail': ['knob', 'wheel']}"));
    }

    @Test
    void a_part_written_as_a_list_of_one_is_swapped_with_what_hangs_on_it_like_the_part_by_itself() {
        String parts = "{'id': 'plate', 'tags': ['head'], 'stats': {'grip': 1}, 'slots': [{'id': 'left', 'accepts': ['tag:top']}]},"
                + " {'id': 'broad', 'tags': ['head'], 'stats': {'grip': 5}, 'slots': [{'id': 'left', 'accepts': ['tag:top']}]},"
                + " {'id': 'knob', 'tags': ['top'], 'stats': {'grip': 1}, 'slots': [{'id': 'tip', 'accepts': ['bead']}]}, {'id': 'bead', 'stats': {'grip': 2}}";
        List<String> plain = swaps(parts, "{'front': 'plate', 'front/left': 'knob', 'front/left/tip': 'bead'}");
        assertEquals(List.of("{=broad, left=knob, left/tip=bead} 4 []", "{=broad, left=knob} 2 [front/left/tip]", "{=broad} 1 [front/left]"), plain);
        assertEquals(plain, swaps(parts, "{'front': ['plate'], 'front:0/left': ['knob'], 'front:0/left:0/tip': 'bead'}"));
    }

    @Test
    void what_hangs_on_a_part_is_carried_over_in_one_order_however_its_paths_are_written() {
        String parts = "{'id': 'plate', 'tags': ['head'], 'stats': {'grip': 1}, 'slots': [{'id': 'left', 'accepts': ['tag:top']}, {'id': 'right', 'accepts': ['tag:top']}]},"
                + " {'id': 'broad', 'tags': ['head'], 'stats': {'grip': 5}, 'slots': [{'id': 'front', 'accepts': ['tag:top']}]},"
                + " {'id': 'knob', 'tags': ['top'], 'stats': {'grip': 1}}, {'id': 'wheel', 'tags': ['top'], 'stats': {'grip': 2}}";
        List<String> plain = swaps(parts, "{'front': 'plate', 'front/left': 'knob', 'front/right': 'wheel'}");
        assertEquals(plain, swaps(parts, "{'front': 'plate', 'front:0/left': 'knob', 'front/right': 'wheel'}"));
        assertEquals(plain, swaps(parts, "{'front': 'plate', 'front/left': 'knob', 'front:0/right': 'wheel'}"));
    }

    @Test
    void a_part_that_moves_up_is_not_told_as_lost_but_what_it_leaves_behind_is() {
        String parts = "{'id': 'ring', 'tags': ['head'], 'stats': {'grip': -3}, 'slots': [{'id': 'x', 'accepts': ['tag:head', 'tag:top']}, {'id': 'w', 'accepts': ['tag:top']}]},"
                + " {'id': 'eye', 'tags': ['head'], 'stats': {'grip': 1}, 'slots': [{'id': 'y', 'accepts': ['tag:end']}, {'id': 'z', 'accepts': ['tag:end']}]},"
                + " {'id': 'cap', 'tags': ['end'], 'stats': {'grip': 1}}, {'id': 'knob', 'tags': ['top']}";
        // Nothing sells these parts, so that each is to be had as often as the build has it.
        List<String> swaps = swaps(parts, "{'front': 'ring', 'front/w': 'knob', 'front/x': 'eye', 'front/x/y': 'cap', 'front/x/z': 'cap'}");
        assertEquals("{=eye, y=cap, z=cap} 3 [front/w]", swaps.get(0));
        assertEquals(List.of("{=eye, y=cap} 2 [front/w, front/x/z]", "{=eye, z=cap} 2 [front/w, front/x/z]", "{=eye} 1 [front/w, front/x/y, front/x/z]"),
                swaps.stream().filter(swap -> swap.startsWith("{=eye")).skip(1).toList());
    }
}

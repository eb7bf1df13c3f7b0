package fettle.space;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;

import fettle.catalog.SlotId;
import fettle.document.Origin;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** What can be together, and why what can't cannot. */
class TogetherTest {

    private static Space space(String platform, String... parts) {
        return Space.of(Catalogs.relations("{'platforms': [{'id': 'frame', %s}], 'parts': [%s]}".formatted(platform, String.join(", ", parts))));
    }

    private static Map<String, String> build(Together together) {
        return assertInstanceOf(Together.Possible.class, together, together::toString).parts();
    }

    /** One line a cause: what it is, and where its facts stand. */
    private static String reasons(Together together) {
        return assertInstanceOf(Together.Impossible.class, together, together::toString).because().stream().map(TogetherTest::line).collect(Collectors.joining("\n"));
    }

    private static String line(Cause cause) {
        String what = switch (cause.getClass().getSimpleName()) {
            case "Asked" -> "asked for " + ((Cause.Asked) cause).part();
            case "AskedSlot" -> "asked for something in " + ((Cause.AskedSlot) cause).slot();
            case "Only" -> ((Cause.Only) cause).part() + " fits only " + ((Cause.Only) cause).places();
            case "Unreached" -> "no chain to " + ((Cause.Unreached) cause).parts();
            case "Space" -> ((Cause.Space) cause).room().getClass().getSimpleName() + " of " + ((Cause.Space) cause).room().slot() + " " + ((Cause.Space) cause).candidates();
            case "Rule" -> ((Cause.Rule) cause).clause().rule();
            case "Values" -> ((Cause.Values) cause).agreement().part() + " has " + ((Cause.Values) cause).agreement().values();
            default -> ((Cause.Nesting) cause).noReentry().part() + " not in itself";
        };
        String where = cause.because().stream().map(fact -> fact.origin()).map(Origin::pointer).collect(Collectors.joining(" "));
        return where.isEmpty() ? what : what + " (" + where + ")";
    }

    @Test
    void two_parts_for_one_place_cannot_be_together() {
        Space space = space("'slots': [{'id': 'a', 'accepts': ['x', 'y']}]", "{'id': 'x', 'kind': 'k'}", "{'id': 'y', 'kind': 'k'}");
        assertEquals(Map.of("a", "x"), build(space.together("frame", List.of("x"))));
        assertEquals("""
                asked for x
                asked for y
                x fits only [frame/a] (/platforms/0/slots/0/accepts/0 /parts/0/id)
                y fits only [frame/a] (/platforms/0/slots/0/accepts/1 /parts/1/id)
                Holds of frame/a [] (/platforms/0/slots/0)""", reasons(space.together("frame", List.of("x", "y"))));
    }

    @Test
    void an_exclusion_is_the_reason_where_there_is_room() {
        Space space = space("'slots': [{'id': 'a', 'accepts': ['x']}, {'id': 'b', 'accepts': ['y']}]",
                "{'id': 'x', 'kind': 'k', 'excludes': ['tag:t']}", "{'id': 'y', 'kind': 'k', 'tags': ['t']}");
        assertEquals("""
                asked for x
                asked for y
                excluded-pair (/parts/0/excludes/0 /parts/1/tags/0)""", reasons(space.together("frame", List.of("x", "y"))));
    }

    @Test
    void a_part_may_be_out_of_reach_through_what_its_only_host_needs() {
        Space space = space("'slots': [{'id': 'a', 'accepts': ['x']}, {'id': 'b', 'accepts': ['q']}]",
                "{'id': 'x', 'kind': 'k', 'needs': [['q']], 'slots': [{'id': 's', 'accepts': ['p']}]}", "{'id': 'p', 'kind': 'k'}",
                "{'id': 'q', 'kind': 'k', 'excludes': ['p']}");
        assertEquals("""
                asked for p
                p fits only [x/s] (/parts/0/slots/0/accepts/0 /parts/1/id)
                unmet-need (/parts/0/needs/0 /parts/2/id)
                excluded-pair (/parts/2/excludes/0 /parts/1/id)""", reasons(space.together("frame", List.of("p"))));
    }

    @Test
    void a_part_that_no_chain_reaches_fits_nothing_here() {
        Space space = space("'slots': [{'id': 'a', 'accepts': ['x']}]", "{'id': 'x', 'kind': 'k'}", "{'id': 'host', 'kind': 'k', 'slots': [{'id': 's', 'accepts': ['p']}]}",
                "{'id': 'p', 'kind': 'k'}");
        assertEquals("""
                asked for p
                no chain to [p] (/parts/2)""", reasons(space.together("frame", List.of("p"))));
    }

    @Test
    void a_void_platform_is_explained_by_asking_for_nothing() {
        Space space = space("'slots': [{'id': 'a', 'accepts': ['x', 'y'], 'required': true}], 'traits': {'bore': ['wide']}",
                "{'id': 'x', 'kind': 'k', 'traits': {'bore': ['narrow']}}", "{'id': 'y', 'kind': 'k', 'blocks': ['low'], 'needs': [['absent']]}", "{'id': 'absent', 'kind': 'k'}");
        assertEquals("""
                Filled of frame/a [x, y] (/platforms/0/slots/0)
                unmet-need (/parts/1/needs/0 /parts/2/id)
                no chain to [absent] (/parts/2)
                frame has [wide] (/platforms/0/traits/bore)
                x has [narrow] (/parts/0/traits/bore)""", reasons(space.together("frame", List.of())));
    }

    @Test
    void three_lists_of_values_can_clash_where_no_two_do() {
        Space space = space("'slots': [{'id': 'a', 'accepts': ['x']}, {'id': 'b', 'accepts': ['y']}, {'id': 'c', 'accepts': ['z']}]",
                "{'id': 'x', 'kind': 'k', 'traits': {'bore': ['p', 'q']}}", "{'id': 'y', 'kind': 'k', 'traits': {'bore': ['q', 'r']}}",
                "{'id': 'z', 'kind': 'k', 'traits': {'bore': ['p', 'r']}}");
        assertEquals(Map.of("a", "x", "b", "y"), build(space.together("frame", List.of("x", "y"))));
        assertEquals("""
                asked for x
                asked for y
                asked for z
                x has [p, q] (/parts/0/traits/bore)
                y has [q, r] (/parts/1/traits/bore)
                z has [p, r] (/parts/2/traits/bore)""", reasons(space.together("frame", List.of("x", "y", "z"))));
    }

    @Test
    void parts_too_long_for_a_rail_cannot_share_it() {
        Space space = space("'slots': [{'id': 'rail', 'accepts': ['tag:t'], 'units': 4}]", "{'id': 'x', 'kind': 'k', 'tags': ['t'], 'span': 2}",
                "{'id': 'y', 'kind': 'k', 'tags': ['t'], 'span': 3}", "{'id': 'z', 'kind': 'k', 'tags': ['t'], 'span': 2}");
        assertEquals(Map.of("rail:0", "x", "rail:1", "z"), build(space.together("frame", List.of("z", "x"))));
        Together.Impossible together = assertInstanceOf(Together.Impossible.class, space.together("frame", List.of("x", "y")));
        assertEquals(List.of("Asked", "Asked", "Only", "Only", "Space"), together.because().stream().map(cause -> cause.getClass().getSimpleName()).toList());
    }

    @Test
    void a_part_may_be_ruled_out_because_it_cannot_stand_in_itself() {
        // x needs another x, and the only place left for one is below x.
        Space space = space("'slots': [{'id': 'a', 'accepts': ['x']}]", "{'id': 'x', 'kind': 'k', 'needs': [['tag:t']], 'tags': ['t'], 'slots': [{'id': 's', 'accepts': ['x']}]}");
        String reasons = reasons(space.together("frame", List.of("x")));
        assertEquals("""
                asked for x
                x fits only [frame/a, x/s] (/platforms/0/slots/0/accepts/0 /parts/0/id /parts/0/slots/0/accepts/0)
                unmet-need (/parts/0/needs/0 /parts/0/tags/0)
                Holds of frame/a [] (/platforms/0/slots/0)
                x not in itself (/parts/0)""", reasons);
    }

    @Test
    void a_dead_slot_is_explained_like_a_dead_part() {
        Space space = space("'slots': [{'id': 'a', 'accepts': ['x'], 'tags': ['low']}], 'blocks': ['low']", "{'id': 'x', 'kind': 'k'}");
        assertEquals("""
                asked for something in frame/a
                blocked-slot (/platforms/0/blocks/0 /platforms/0/slots/0/tags/0)""", reasons(space.inUse("frame", new SlotId("frame", "a"))));
    }

    @Test
    void a_long_chain_is_explained_link_by_link() {
        int length = 250;
        String[] parts = IntStream.rangeClosed(0, length).mapToObj(i -> "{'id': 'p%d', 'kind': 'k'%s, 'slots': [{'id': 's', 'accepts': ['p%d']}]}"
                .formatted(i, i == length ? ", 'excludes': ['p0']" : "", i + 1)).toArray(String[]::new);
        Space space = space("'slots': [{'id': 's', 'accepts': ['p0']}]", parts);
        assertEquals(length, build(space.together("frame", List.of("p" + (length - 1)))).size());
        assertEquals(length + 2, assertInstanceOf(Together.Impossible.class, space.together("frame", List.of("p" + length))).because().size());
    }

    @Test
    void asking_for_what_the_catalog_lacks_is_refused() {
        Space space = space("'slots': []");
        assertThrows(IllegalArgumentException.class, () -> space.together("frame", List.of("nobody")));
        assertThrows(IllegalArgumentException.class, () -> space.together("nowhere", List.of()));
    }

    /** Bounds within which nothing can be reasoned about. */
    private static final Bounds NONE = new Bounds(1, 1, 1);

    @Test
    void where_nothing_can_be_reasoned_about_a_build_that_is_come_upon_answers_all_the_same() {
        Space space = Space.of(Catalogs.relations("""
                {'platforms': [{'id': 'frame', 'slots': [{'id': 'a', 'accepts': ['x', 'y'], 'most': 2}, {'id': 'b', 'accepts': ['plug', 'cap'], 'required': true}]}], 'parts': [
                {'id': 'x', 'kind': 'k', 'slots': [{'id': 's', 'accepts': ['p', 'q']}], 'excludes': ['plug']}, {'id': 'y', 'kind': 'k', 'slots': [{'id': 't', 'accepts': ['q']}]},
                {'id': 'p', 'kind': 'k'}, {'id': 'q', 'kind': 'k'}, {'id': 'plug', 'kind': 'k'}, {'id': 'cap', 'kind': 'k'}]}"""), NONE);
        assertEquals(Map.of("a:0", "x", "a:0/s", "p", "b", "cap"), build(space.together("frame", List.of("p"))));
        assertEquals(Map.of("a:0", "x", "a:0/s", "q", "b", "cap"), build(space.together("frame", List.of("q"))));
        assertEquals(Map.of("b", "cap"), build(space.together("frame", List.of())));
    }

    @Test
    void where_none_is_come_upon_it_stays_undecided() {
        Space space = Space.of(Catalogs.relations("""
                {'platforms': [{'id': 'frame', 'slots': [{'id': 'a', 'accepts': ['x', 'y']}, {'id': 'b', 'accepts': ['x', 'y']}]}], 'parts': [
                {'id': 'x', 'kind': 'k', 'excludes': ['y']}, {'id': 'y', 'kind': 'k'}]}"""), NONE);
        assertInstanceOf(Together.Open.class, space.together("frame", List.of("x", "y")));
    }
}

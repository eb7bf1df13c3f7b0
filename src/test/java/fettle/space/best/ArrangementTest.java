package fettle.space.best;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

/** What stays in a slot of several keeps its position, so that a change is told of the place where it is to be made. */
class ArrangementTest {

    private static Arrangement part(String id) {
        return new Arrangement(id, new TreeMap<>(), Set.of());
    }

    private static Arrangement carrying(String id, String slot, Arrangement... held) {
        return new Arrangement(id, new TreeMap<>(Map.of(slot, Arrays.asList(held))), Set.of(slot));
    }

    private static final Arrangement NOW = carrying("frame", "rail", part("short"), part("middle"), part("long"));

    private static String beside(Arrangement... held) {
        return carrying("frame", "rail", held).pathsBeside(NOW).toString();
    }

    @Test
    void what_takes_the_place_of_another_stands_where_that_stood() {
        assertEquals("{rail:0=twin, rail:1=middle, rail:2=long}", beside(part("long"), part("middle"), part("twin")));
    }

    @Test
    void what_is_taken_out_leaves_its_position_free() {
        assertEquals("{rail:0=short, rail:2=long}", beside(part("long"), part("short")));
    }

    @Test
    void what_is_added_comes_last_where_all_the_rest_stays() {
        assertEquals("{rail:0=short, rail:1=middle, rail:2=long, rail:3=extra}", beside(part("extra"), part("long"), part("middle"), part("short")));
    }

    @Test
    void the_same_part_with_something_else_on_it_stays_too() {
        assertEquals("{rail:0=twin, rail:1=middle, rail:1/top:0=bead, rail:2=long}", beside(carrying("middle", "top", part("bead")), part("long"), part("twin")));
    }

    @Test
    void of_equals_each_stands_once() {
        Arrangement twice = carrying("frame", "rail", part("short"), part("short"));
        assertEquals("{rail:0=short, rail:1=short}", twice.pathsBeside(twice).toString());
        assertEquals(List.of("rail:0=short", "rail:1=short"), twice.list());
    }
}

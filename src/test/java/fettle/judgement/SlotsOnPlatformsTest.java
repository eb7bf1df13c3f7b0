package fettle.judgement;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** How slots are told of which something holds on some platforms only. */
class SlotsOnPlatformsTest {

    private static SortedSet<String> platforms(int count) {
        return new TreeSet<>(IntStream.range(0, count).mapToObj(i -> "p" + i).toList());
    }

    private static SlotsOnPlatforms where(List<String> onAll, List<String> onSome, int platforms) {
        TreeMap<String, SortedSet<String>> some = new TreeMap<>();
        onSome.forEach(slot -> some.put(slot, platforms(platforms)));
        return new SlotsOnPlatforms(onAll, some);
    }

    @Test
    void platforms_are_told_only_of_slots_in_which_it_does_not_hold_on_all() {
        assertEquals("a/x, a/y and a/z", where(List.of("a/x", "a/y", "a/z"), List.of(), 0).words());
        assertEquals("a/x on p0", where(List.of(), List.of("a/x"), 1).words());
        assertEquals("a/x, and in b/x and b/y on p0 and p1", where(List.of("a/x"), List.of("b/y", "b/x"), 2).words());
        assertEquals("a/x, in b/x, b/y on p0 and p1", where(List.of("a/x"), List.of("b/y", "b/x"), 2).listed());
    }

    @Test
    void long_lists_are_cut() {
        assertEquals("a/x on p0, p1 and p2", where(List.of(), List.of("a/x"), 3).words());
        assertEquals("a/x on p0, p1 and 2 more platforms", where(List.of(), List.of("a/x"), 4).words());
        assertEquals("p0, p1, p10, p11, p12, p2, p3, p4, p5, p6, p7 and 2 more", where(List.copyOf(platforms(13)), List.of(), 0).words());
        TreeMap<String, SortedSet<String>> some = new TreeMap<>();
        IntStream.range(1, 5).forEach(i -> some.put("a/" + i, platforms(i)));
        assertEquals("a/1 on p0, and in a/2 on p0 and p1, and in 2 more on some platforms", new SlotsOnPlatforms(List.of(), some).words());
    }
}

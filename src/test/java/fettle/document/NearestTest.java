package fettle.document;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.From;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.AlphaChars;
import net.jqwik.api.constraints.Size;
import net.jqwik.api.constraints.StringLength;
import org.junit.jupiter.api.Test;

/** Tests which known names are offered for a wrong one. */
class NearestTest {
    @Test
    void distance_counts_each_slip_once() {
        assertEquals(0, Nearest.distance("grip", "grip"));
        assertEquals(1, Nearest.distance("grip", "grp"));
        assertEquals(1, Nearest.distance("grip", "gripp"));
        assertEquals(1, Nearest.distance("grip", "grop"));
        assertEquals(1, Nearest.distance("grip", "girp"));
        assertEquals(4, Nearest.distance("", "grip"));
        assertEquals(3, Nearest.distance("kitten", "sitting"));
        assertEquals(3, Nearest.distance("ca", "abc"));
    }

    @Test
    void the_best_come_first_and_at_most_three() {
        assertEquals(List.of("muzzle-b", "muzzle-c", "muzzle-bb"), Nearest.names("muzzle-d",
                List.of("stock", "muzzle-cc", "muzzle-c", "muzzle-bb", "muzzle-b", "muzzle-ccc")));
        assertEquals(List.of("mounts", "mount"), Nearest.names("mounst", List.of("mount", "mounts", "stats")));
    }

    @Test
    void nothing_is_offered_where_nothing_is_near() {
        assertEquals(List.of(), Nearest.names("colour", List.of("grip", "kick", "mass")));
        assertEquals(List.of(), Nearest.names("x", List.of()));
        assertEquals(List.of(), Nearest.names("", List.of("grip")));
    }

    @Test
    void case_and_the_mark_between_words_hardly_count() {
        assertEquals(List.of("long-guard"), Nearest.names("Long_Guard", List.of("long-guard", "short-guard")));
        assertEquals(List.of("atLeast"), Nearest.names("at-least", List.of("atLeast", "atMost")));
    }

    @Test
    void the_name_itself_is_no_suggestion() {
        assertEquals(List.of(), Nearest.names("grip", List.of("grip")));
    }

    @Test
    void equally_near_names_come_in_alphabetical_order_whatever_order_they_are_known_in() {
        assertEquals(List.of("part-a", "part-b", "part-c"), Nearest.names("part-x", List.of("part-c", "part-a", "part-d", "part-b")));
    }

    @Test
    void a_letter_too_few_too_many_or_out_of_order_is_a_slip() {
        assertTrue(Nearest.slip("dovetial", "dovetail"));
        assertTrue(Nearest.slip("long-dovetal", "long-dovetail"));
        assertTrue(Nearest.slip("gasblock", "gas-block"));
        assertTrue(Nearest.slip("Optic", "optic"));
    }

    @Test
    void what_tells_words_of_a_kind_apart_is_no_slip() {
        assertFalse(Nearest.slip("type-a", "type-b"));
        assertFalse(Nearest.slip("size-12", "size-13"));
        assertFalse(Nearest.slip("m1200", "m1201"));
        assertFalse(Nearest.slip("xl", "xs"));
        assertFalse(Nearest.slip("upper-front", "upper-rear"));
        assertFalse(Nearest.slip("upper", "upper-front"));
        assertFalse(Nearest.slip("dovetail", "dovetail"));
    }

    @Property
    void slips_are_looked_up_as_they_are_found_one_by_one(@ForAll @Size(max = 30) List<@From("words") String> words, @ForAll("words") String word) {
        List<String> all = words.stream().distinct().filter(other -> Nearest.slip(word, other)).sorted().toList();
        assertEquals(all, new Slips(words.stream().distinct().toList()).of(word).stream().sorted().toList());
    }

    @Provide
    Arbitrary<String> words() {
        return Arbitraries.strings().withChars("ab-.B1").ofMinLength(1).ofMaxLength(8);
    }

    @Property
    void distance_is_the_same_both_ways_and_bounded_by_the_longer_name(
            @ForAll @AlphaChars @StringLength(max = 12) String one, @ForAll @AlphaChars @StringLength(max = 12) String other) {
        int distance = Nearest.distance(one, other);
        assertEquals(distance, Nearest.distance(other, one));
        assertEquals(one.equals(other), distance == 0);
        assertEquals(true, distance <= Math.max(one.length(), other.length()));
        assertEquals(true, distance >= Math.abs(one.length() - other.length()));
    }
}

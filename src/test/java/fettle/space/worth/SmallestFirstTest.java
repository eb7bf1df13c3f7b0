package fettle.space.worth;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;

import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.LongRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;

class SmallestFirstTest {

    private static final long MOST = Long.MAX_VALUE;

    /** The order told in words: by how many bits there are, then by number. */
    private static long[] ordered(Stream<Long> sets) {
        Set<Long> all = new TreeSet<>(Comparator.<Long>comparingInt(set -> Long.toBinaryString(set).replace("0", "").length()).thenComparing(Comparator.naturalOrder()));
        sets.forEach(all::add);
        return all.stream().mapToLong(Long::longValue).toArray();
    }

    @Property
    void either_list_s_sets_are_listed_once_with_the_fewest_kinds_first(
            @ForAll @Size(max = 12) List<@LongRange(min = 0, max = MOST) Long> one, @ForAll @Size(max = 12) List<@LongRange(min = 0, max = 40) Long> other) {
        assertArrayEquals(ordered(Stream.concat(one.stream(), other.stream())), SmallestFirst.either(ordered(one.stream()), ordered(other.stream())));
    }

    @Property
    void each_pair_makes_up_what_either_has(
            @ForAll @Size(max = 12) List<@LongRange(min = 0, max = MOST) Long> one, @ForAll @Size(max = 12) List<@LongRange(min = 0, max = 40) Long> other) {
        long[] expected = ordered(one.stream().flatMap(some -> other.stream().map(others -> some | others)));
        assertArrayEquals(expected, SmallestFirst.both(ordered(one.stream()), ordered(other.stream())));
    }

    @Test
    void more_pairs_than_are_put_in_order_at_once_are_all_made_up() {
        long[] low = ordered(LongStream.range(0, 300).boxed());
        long[] high = ordered(LongStream.range(0, 300).map(each -> each << 20).boxed());
        long[] both = SmallestFirst.both(low, high);
        assertArrayEquals(ordered(LongStream.range(0, 300).boxed().flatMap(one -> LongStream.range(0, 300).mapToObj(other -> one | other << 20))), both);
    }
}

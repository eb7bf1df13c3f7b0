package fettle.judgement;

import static org.junit.jupiter.api.Assertions.assertEquals;

import fettle.space.worth.Hull;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.IntStream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;

/** A ladder out of what was tried is that of all that holds, though little was tried. */
class PlaceLadderTest {

    private static PlaceLadder.Priced point(String name, int cost, int benefit, boolean bears) {
        return new PlaceLadder.Priced(name, BigDecimal.valueOf(cost), BigDecimal.valueOf(benefit), Optional.of(() -> bears));
    }

    private static PlaceLadder.Priced now(int cost, int benefit) {
        return new PlaceLadder.Priced("now", BigDecimal.valueOf(cost), BigDecimal.valueOf(benefit), Optional.empty());
    }

    @Property(tries = 2000)
    void the_ladder_is_that_of_what_holds(@ForAll @Size(max = 14) List<@IntRange(max = 287) Integer> drawn, @ForAll @IntRange(max = 143) int there) {
        List<PlaceLadder.Priced> swaps = IntStream.range(0, drawn.size())
                .mapToObj(i -> point("swap " + i, drawn.get(i) % 12, drawn.get(i) / 12 % 12, drawn.get(i) >= 144)).toList();
        PlaceLadder.Priced now = now(there % 12, there / 12);
        PlaceLadder ladder = new PlaceLadder(swaps, Optional.of(now));
        PlaceLadder other = new PlaceLadder(swaps, Optional.empty());
        PlaceLadder.settle(List.of(ladder, other));

        List<PlaceLadder.Priced> holding = new ArrayList<>(IntStream.range(0, drawn.size()).filter(i -> drawn.get(i) >= 144).mapToObj(swaps::get).toList());
        assertEquals(names(new Hull<>(holding).rungs()), names(other.rungs()));
        holding.add(now);
        Hull<PlaceLadder.Priced> expected = new Hull<>(holding);
        assertEquals(names(expected.rungs()), names(ladder.rungs()));
        assertEquals(expected.standing(now), ladder.standing());
    }

    private static List<String> names(List<PlaceLadder.Priced> points) {
        return points.stream().map(PlaceLadder.Priced::assembly).toList();
    }

    @Test
    void what_lies_below_the_rungs_is_never_tried() {
        AtomicInteger tried = new AtomicInteger();
        List<PlaceLadder.Priced> swaps = IntStream.range(0, 500).mapToObj(i -> new PlaceLadder.Priced(
                "swap " + i, BigDecimal.valueOf(10 + i), BigDecimal.valueOf(i == 100 ? 400 : i % 100), Optional.of(() -> tried.incrementAndGet() > 0))).toList();
        PlaceLadder ladder = new PlaceLadder(swaps, Optional.of(now(0, 0)));
        PlaceLadder.settle(List.of(ladder));
        assertEquals(List.of("now", "swap 100"), names(ladder.rungs()));
        assertEquals(1, tried.get());
    }
}

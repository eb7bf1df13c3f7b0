package fettle.judgement;

import static org.junit.jupiter.api.Assertions.assertEquals;

import fettle.catalog.SlotId;
import fettle.space.patch.FitShift;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Fits are told in sets that say of no part and slot more than is so, and in as few as may be. */
class FitSetsTest {

    private static List<String> sets(String... fits) {
        return FitSets.of(Stream.of(fits).map(fit -> fit.split(" ")).map(fit -> new FitShift(new SlotId(fit[1], "top"), fit[0])).toList()).sets().stream()
                .map(set -> String.join(",", set.parts()) + " in " + String.join(",", set.slots()))
                .toList();
    }

    @Test
    void parts_with_the_very_same_slots_are_one_set() {
        assertEquals(List.of("ash,elm in mill/top,pier/top"), sets("ash mill", "elm pier", "elm mill", "ash pier"));
    }

    @Test
    void a_part_with_other_slots_is_another_set() {
        assertEquals(List.of("ash,elm in mill/top", "oak in pier/top"), sets("oak pier", "elm mill", "ash mill"));
        assertEquals(List.of("ash in mill/top,pier/top", "elm in mill/top"), sets("ash mill", "ash pier", "elm mill"));
    }

    @Test
    void slots_with_the_very_same_parts_are_taken_together_where_that_makes_fewer_sets() {
        assertEquals(
                List.of("ash,elm in mill/top,pier/top", "elm,oak in dock/top"),
                sets("ash mill", "elm mill", "ash pier", "elm pier", "elm dock", "oak dock"));
    }
}

package fettle.space.best;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fettle.catalog.Attribute;
import fettle.document.Origin;
import java.math.BigDecimal;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Having no value is the worst where the greatest counts and higher is better, or the least and lower is, and the best otherwise. */
class TurnTest {

    private static Attribute attribute(Attribute.Combine combine, Attribute.Better better) {
        return new Attribute("reach", "reach", "m", better, combine, 1, 1, BigDecimal.valueOf(5), Origin.startOf(""));
    }

    private static Optional<BigDecimal> value(String value) {
        return Optional.ofNullable(value).map(BigDecimal::new);
    }

    @ParameterizedTest
    @CsvSource({
        "MAX, HIGHER, , 3, true", "MAX, HIGHER, 3, , false", "MIN, LOWER, , 3, true", "MIN, LOWER, 3, , false",
        "MAX, LOWER, , 3, false", "MAX, LOWER, 3, , true", "MIN, HIGHER, , 3, false", "MIN, HIGHER, 3, , true"})
    void what_one_side_alone_has_is_better_or_worse_by_more_than_matters(
            Attribute.Combine combine, Attribute.Better better, String before, String after, boolean gains) {
        Turn turn = new Turn(attribute(combine, better), value(before), value(after));

        assertEquals(gains, turn.better());
        assertTrue(turn.matters());
        assertEquals(Optional.empty(), turn.size());
    }

    @ParameterizedTest
    @CsvSource({"HIGHER, 3, 8, true, true", "HIGHER, 8, 3, false, true", "LOWER, 3, 7.9, false, false", "LOWER, 7.9, 3, true, false"})
    void what_both_have_is_held_against_what_matters(Attribute.Better better, String before, String after, boolean gains, boolean matters) {
        Turn turn = new Turn(attribute(Attribute.Combine.SUM, better), value(before), value(after));

        assertEquals(gains, turn.better());
        assertEquals(matters, turn.matters());
    }

    @Test
    void the_least_difference_that_there_can_be_matters_where_nothing_is_said() {
        Attribute fine = new Attribute("mass", "mass", "kg", Attribute.Better.LOWER, Attribute.Combine.SUM, 2, 2, BigDecimal.ZERO, Origin.startOf(""));

        assertTrue(new Turn(fine, value("0.5"), value("0.51")).matters());
    }
}

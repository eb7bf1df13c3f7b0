package fettle.view;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fettle.engine.RuleIndex;
import fettle.engine.RuleInfo;
import fettle.space.Fraction;
import java.math.BigDecimal;
import java.math.BigInteger;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class TemplateTest {

    private static final Template TEMPLATE = new Template("tally");

    @Test
    void anAmountOfMoneyIsWrittenWithItsThousandsApartAndItsCurrency() {
        assertEquals("12,345.50 tally; 12345.5", TEMPLATE.filled("{n|money}; {n}", Map.of("n", new BigDecimal("12345.5"))));
    }

    @Test
    void values_take_the_place_of_their_names() {
        assertEquals("ember does not fit anvil/tail", TEMPLATE.filled("{part} does not fit {slot}", Map.of("part", "ember", "slot", "anvil/tail")));
    }

    @Test
    void lists_are_joined_by_and_or_by_or_where_the_template_says_so() {
        Map<String, Object> data = Map.of("parts", List.of("a", "b", "c"), "two", List.of("a", "b"), "one", List.of("a"));
        assertEquals("a, b and c; a and b; a", TEMPLATE.filled("{parts}; {two}; {one}", data));
        assertEquals("a, b or c; a or b; a", TEMPLATE.filled("{parts|or}; {two|or}; {one|or}", data));
    }

    @Test
    void a_long_list_is_cut_short_and_counted() {
        List<String> many = IntStream.rangeClosed(1, 40).mapToObj(i -> "p" + i).toList();
        assertEquals("p1, p2, p3, p4, p5, p6, p7, p8, p9, p10, p11 and 29 more", TEMPLATE.filled("{many}", Map.of("many", many)));
        assertEquals("p1, p2, p3, p4, p5, p6, p7, p8, p9, p10, p11 and p12", TEMPLATE.filled("{many}", Map.of("many", many.subList(0, 12))));
    }

    @Test
    void decimals_are_exact_and_fractions_readable() {
        assertEquals("1.5", TEMPLATE.filled("{n}", Map.of("n", new BigDecimal("1.500"))));
        assertEquals("1000", TEMPLATE.filled("{n}", Map.of("n", new BigDecimal("1E+3"))));
        assertEquals("3", TEMPLATE.filled("{n}", Map.of("n", 3)));
        assertEquals("0.125", TEMPLATE.filled("{n}", Map.of("n", new Fraction(BigInteger.ONE, BigInteger.valueOf(8)))));
        assertEquals("about 3.333", TEMPLATE.filled("{n}", Map.of("n", new Fraction(BigInteger.TEN, BigInteger.valueOf(3)))));
    }

    @Test
    void what_a_value_says_is_never_a_template() {
        assertEquals("{other} and $1 \\", TEMPLATE.filled("{part}", Map.of("part", "{other} and $1 \\", "other", "x")));
    }

    @Test
    void a_name_without_a_value_is_put_in_words() {
        assertEquals("some part stands at some other path", TEMPLATE.filled("{part} stands at {otherPath}", Map.of()));
        assertEquals("some part", TEMPLATE.filled("{part}", Map.of("part", List.of())));
    }

    @Test
    void a_remedy_with_a_name_without_a_value_is_left_out() {
        assertEquals(Optional.empty(), TEMPLATE.whole("Take {part} out of {path}.", Map.of("part", "a")));
        assertEquals(Optional.of("Take a out."), TEMPLATE.whole("Take {part} out.", Map.of("part", "a")));
    }

    @Test
    void what_stands_between_double_brackets_is_left_out_with_a_name_in_it_that_has_no_value() {
        String template = "{part} goes[[; so does {other}]][[, {third} too]].";
        assertEquals("a goes.", TEMPLATE.filled(template, Map.of("part", "a", "other", List.of())));
        assertEquals("a goes; so does b.", TEMPLATE.filled(template, Map.of("part", "a", "other", "b")));
        assertEquals("some part goes, [[b]] too.", TEMPLATE.filled(template, Map.of("third", "[[b]]")));
    }

    @Test
    void no_rule_ever_shows_a_brace_in_its_message_or_remedies() {
        List<RuleInfo> rules = RuleIndex.builtIn().rules();
        assertTrue(rules.size() >= 12, "only " + rules.size() + " rules were looked at");
        for (RuleInfo rule : rules) {
            String message = TEMPLATE.filled(rule.message(), Map.of());
            assertFalse(message.contains("{") || message.contains("}"), rule.name() + ": " + message);
            for (String remedy : rule.remedies()) {
                String filled = TEMPLATE.filled(remedy, Map.of());
                assertFalse(filled.contains("{") || filled.contains("}"), rule.name() + ": " + filled);
            }
        }
    }

    @Test
    void templates_and_data_do_not_look_alike_by_accident() {
        for (String plain : Arrays.asList("{", "}", "{}", "{ part }", "{1}", "{part|nor}")) {
            assertEquals(plain, TEMPLATE.filled(plain, Map.of("part", "x")));
        }
    }
}

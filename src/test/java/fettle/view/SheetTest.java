package fettle.view;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.AlphaChars;
import net.jqwik.api.constraints.Chars;
import net.jqwik.api.constraints.StringLength;
import org.junit.jupiter.api.Test;

class SheetTest {

    @Test
    void text_is_wrapped_beside_its_gutter() {
        Sheet sheet = new Sheet(false);
        sheet.entry(Span.plain("error"), Span.plain("word ".repeat(30)));
        assertEquals("  error  " + "word ".repeat(18).strip() + "\n         " + "word ".repeat(12).strip() + "\n", sheet.toString());
    }

    @Test
    void a_word_longer_than_the_line_is_not_broken() {
        Sheet sheet = new Sheet(false);
        sheet.entry(Span.plain("at"), Span.plain("before " + "x".repeat(120) + " after"));
        assertEquals("     at  before\n         " + "x".repeat(120) + "\n         after\n", sheet.toString());
    }

    @Test
    void of_a_word_longer_than_any_path_only_the_beginning_is_shown() {
        Sheet sheet = new Sheet(false);
        sheet.entry(Span.plain("at"), Span.plain("before " + "x".repeat(5_000) + " " + "y".repeat(5_001) + " after"));
        assertEquals("     at  before\n         " + "x".repeat(5_000) + "\n         " + "y".repeat(60) + "… after\n", sheet.toString());
    }

    @Test
    void spans_that_touch_stay_together() {
        Sheet sheet = new Sheet(false);
        sheet.entry(Span.plain("at"), Span.strong("a".repeat(85)), Span.plain(","), Span.faint(" b"), Span.plain("c ".repeat(5)));
        assertEquals("     at  " + "a".repeat(85) + ", bc c\n         c c c\n", sheet.toString());
    }

    @Test
    void rows_are_aligned_where_both_sides_fit_and_otherwise_follow_below() {
        Sheet sheet = new Sheet(false);
        sheet.aligned(Span.plain("why"), List.of(
                new Sheet.Row(0, "short", "a.yaml:1:1"), new Sheet.Row(2, "a longer one", "b.yaml:2:2"), new Sheet.Row(0, "x".repeat(60), "y".repeat(40)), new Sheet.Row(0, "alone", "")));
        assertEquals(
                "    why  short           a.yaml:1:1\n"
                        + "           a longer one  b.yaml:2:2\n"
                        + "         " + "x".repeat(60) + "\n"
                        + "           " + "y".repeat(40) + "\n"
                        + "         alone\n",
                sheet.toString());
    }

    @Test
    void colour_is_added_around_text_that_is_harmless_already() {
        Sheet sheet = new Sheet(true);
        sheet.entry(new Span("error", Tone.ERROR), Span.strong("bad \u001B[2J label"), Span.plain(" plain"));
        assertEquals("  \u001B[1;31merror\u001B[0m  \u001B[1mbad\u001B[0m \u001B[1m\\u001B[2J\u001B[0m \u001B[1mlabel\u001B[0m plain\n", sheet.toString());
    }

    @Test
    void wide_letters_take_two_columns_and_marks_none() {
        assertEquals(4, Columns.of("測定"));
        assertEquals(1, Columns.of("e\u0301"));
        assertEquals(2, Columns.of("\uD83D\uDD27"));
        assertEquals(3, Columns.of("abc"));
    }

    @Property
    void no_line_of_ordinary_words_is_wider_than_the_sheet(@ForAll @AlphaChars @Chars(' ') @StringLength(max = 600) String text) {
        Sheet sheet = new Sheet(false);
        sheet.entry(Span.plain("note"), Span.plain(text), Span.faint(" " + text));
        int longest = List.of(text.split(" ")).stream().mapToInt(String::length).max().orElse(0);
        sheet.toString().lines().forEach(line -> assertTrue(line.length() <= Math.max(Sheet.WIDTH, Sheet.GUTTER + 2 * longest), line));
        assertEquals((text + " " + text).replaceAll(" +", ""), sheet.toString().substring(Sheet.GUTTER).replaceAll("\\s+", ""));
    }
}

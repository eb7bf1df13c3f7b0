package fettle.view;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;

class SafeTextTest {

    @Test
    void escape_sequences_are_shown_and_not_sent() {
        assertEquals("\\u001B[31mred\\u001B[0m\\u0007", SafeText.of("\u001B[31mred\u001B[0m\u0007"));
        assertEquals("\\u009B2J", SafeText.of("\u009B2J"));
        assertEquals("a\\u0008b\\u007F\\u0000", SafeText.of("a\bb\u007F\u0000"));
    }

    @Test
    void line_breaks_and_tabs_are_spaces() {
        assertEquals("one two three four", SafeText.of("one\ntwo\r\nthree\tfour"));
        assertEquals("a\\u2028b\\u2029c\\u0085d", SafeText.of("a\u2028b\u2029c\u0085d"));
    }

    @Test
    void what_turns_the_reading_direction_is_shown() {
        assertEquals("\\u202Egnp.exe\\u202C \\u2066x\\u2069 \\u200F\\u061C", SafeText.of("\u202Egnp.exe\u202C \u2066x\u2069 \u200F\u061C"));
    }

    @Test
    void what_hides_is_shown() {
        assertEquals("a\\u200Bb\\uFEFFc\\u00ADd\\u{E0041}", SafeText.of("a\u200Bb\uFEFFc\u00ADd" + Character.toString(0xE0041)));
        assertEquals("\\uD800", SafeText.of("\uD800"));
    }

    @Test
    void letters_of_every_script_and_pictures_stay() {
        String text = "Größe 測定 مقياس नमस्ते e\u0301 \uD83D\uDD27 \u2265 \u200D";
        assertEquals(text, SafeText.of(text));
    }

    @Property
    void nothing_that_acts_on_a_terminal_passes(@ForAll String text) {
        String safe = SafeText.of(text);
        assertTrue(safe.codePoints().allMatch(SafeText::harmless), safe);
        assertEquals(safe, SafeText.of(safe));
    }
}

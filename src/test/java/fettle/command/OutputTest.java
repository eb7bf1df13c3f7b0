package fettle.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fettle.view.Shown;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is shown, whole, and how options change it. */
class OutputTest {

    private static final String TIDEMILL = Shown.FOLDER.resolve("tidemill").toString();
    private static final String HOSTILE = Shown.FOLDER.resolve("hostile").toString();

    @TempDir
    private Path folder;

    @Test
    void builds_are_told_whole() {
        Shown.equalsFile("validate-tidemill.txt", Ran.fettle("validate", TIDEMILL, TIDEMILL + "/builds").out());
    }

    @Test
    void a_catalog_is_told_whole() {
        Shown.equalsFile("lint-tidemill.txt", Ran.fettle("lint", TIDEMILL).out());
    }

    @Test
    void a_part_is_explained_whole() {
        Shown.equalsFile("explain-glass-old.txt", Ran.fettle("explain", TIDEMILL, "glass-old").out());
        Shown.equalsFile("explain-barrel-long.txt", Ran.fettle("explain", TIDEMILL, "barrel-long", "--access", "new").out());
    }

    /** What outdoes a part, by how much and through which adapters; or where it wins, and against what. */
    @Test
    void standings_are_told_whole() {
        StringBuilder all = new StringBuilder();
        for (String asked : new String[] {
            "outclassed-direct-mount/cases/better-on-a-plate dull-glass", "outclassed-direct-mount/cases/better-on-a-plate plate",
            "dominated-part/cases/dearer-for-the-same dear-glass", "dominated-part/cases/one-slot-of-two dull-glass",
            "between-rungs/cases/neither-cheap-nor-good rope-grip", "worse-than-empty/cases/weighs-and-does-nothing oilcloth"
        }) {
            all.append("> fettle explain ").append(asked).append('\n').append(Ran.fettle(("explain rules/worth/" + asked).split(" ")).out()).append('\n');
        }
        Shown.equalsFile("explain-standings.txt", all.toString());
        Shown.equalsFile("explain-standing.json", Ran.fettle("explain", "rules/worth/dominated-part/cases/one-slot-of-two", "dull-glass", "--format", "json").out());
    }

    @Test
    void other_ids_are_explained_whole() {
        StringBuilder all = new StringBuilder();
        for (String id : new String[] {
            "anvil", "riser", "anvil/rail", "kind:light", "tag:long", "mount:dovetail", "over-rail", "calibre", "mass", "no-two-long", "pearl", "mill", "rope", "new",
            "coat", "arm", "steady"
        }) {
            all.append("> fettle explain tidemill ").append(id).append('\n').append(Ran.fettle("explain", TIDEMILL, id).out()).append('\n');
        }
        Shown.equalsFile("explain-others.txt", all.toString());
    }

    @Test
    void parts_are_told_whole_to_be_together_or_not() {
        StringBuilder all = new StringBuilder();
        for (String asked : new String[] {
            "barrel-short riser glass-old", "barrel-long riser --platform anvil", "leaf riser", "barrel-short barrel-long", "lamp-small glass-old",
            "stock-stone leaf", "lamp-big stock-ember --platform anvil"
        }) {
            all.append("> fettle explain tidemill ").append(asked).append('\n').append(explained(asked)).append('\n');
        }
        Shown.equalsFile("explain-together.txt", all.toString());
        Shown.equalsFile("explain-together.json", explained("barrel-long riser --platform anvil --format json"));
        Shown.equalsFile("explain-together-possible.json", explained("barrel-short riser glass-old --platform anvil --format json"));
    }

    @Test
    void one_part_or_slot_is_explained_on_a_platform() {
        String eight = explained("barrel-eight --platform anvil");
        assertTrue(eight.contains("     on  anvil \"Anvil\": barrel-eight can be used in no valid build\n"), eight);
        assertTrue(explained("riser/plate --platform anvil").contains("     on  anvil \"Anvil\": riser/plate can be used, as in this valid build\n"), eight);
        assertTrue(explained("anvil --platform anvil").contains("     on  anvil \"Anvil\": there are valid builds, such as this\n"), eight);
    }

    private static String explained(String asked) {
        return Ran.fettle(("explain " + TIDEMILL + " " + asked).split(" ")).out();
    }

    @Test
    void hostile_text_does_nothing_on_a_terminal() {
        String text = Ran.fettle("lint", HOSTILE).out() + Ran.fettle("explain", HOSTILE, "knob").out() + Ran.fettle("explain", HOSTILE, "bench").out()
                + Ran.fettle("validate", HOSTILE, Shown.FOLDER.resolve("plain/builds").toString()).out();
        Shown.equalsFile("hostile.txt", text);
        assertTrue(text.codePoints().allMatch(c -> c == '\n' || c >= ' ' && c < 0x7F), text);
        assertFalse(text.lines().anyMatch(line -> line.startsWith("fake")), text);
    }

    @Test
    void hostile_text_acts_on_no_terminal_as_json_either() {
        String json = Ran.fettle("lint", HOSTILE, "--format", "json").out();
        assertTrue(json.codePoints().allMatch(c -> c == '\n' || c >= ' ' && c < 0x7F), json);
        assertTrue(json.contains("\"patch\" : \"1\\u001B[2J\""), json);
    }

    @Test
    void hostile_arguments_do_nothing_on_a_terminal() {
        for (String[] arguments : new String[][] {{"\u001B[2J"}, {"lint", "\u001B[2J"}, {"explain", TIDEMILL, "\u001B[2J"}, {"rules", "\u009B"}, {"lint", TIDEMILL, "--\u001B"}}) {
            String err = Ran.fettle(arguments).err();
            assertTrue(err.codePoints().allMatch(c -> c == '\n' || c >= ' ' && c < 0x7F), err);
        }
    }

    @Test
    void colour_is_shown_when_asked_for_or_on_a_terminal() {
        String plain = Ran.fettle("lint", HOSTILE).out();
        String always = Ran.fettle("lint", HOSTILE, "--color", "always").out();
        assertTrue(always.contains("\u001B[1;31merror\u001B[0m"), always);
        assertEquals(plain, always.replaceAll("\u001B\\[[0-9;]*m", ""));
        assertEquals(always, Ran.with(InputStream.nullInputStream(), true, "lint", HOSTILE).out());
        assertEquals(plain, Ran.with(InputStream.nullInputStream(), true, "lint", HOSTILE, "--color", "never").out());
        assertFalse(plain.contains("\u001B"), plain);
    }

    @Test
    void quiet_tells_only_what_fails() {
        assertEquals("", Ran.fettle("validate", TIDEMILL, TIDEMILL + "/builds/sound.yaml", "--quiet").out());
        assertEquals("", Ran.fettle("lint", HOSTILE, "--quiet", "--fail-on", "never").out());
        assertEquals("", Ran.fettle("validate", TIDEMILL, TIDEMILL + "/builds", "--quiet", "--fail-on", "never").out());
        String quiet = Ran.fettle("lint", HOSTILE, "-q").out();
        assertTrue(quiet.contains("(duplicate-id)"), quiet);
        assertFalse(quiet.contains("Looked at"), quiet);
    }

    @Test
    void output_goes_to_the_file_that_is_named_and_without_colour() throws IOException {
        Path file = folder.resolve("out.txt");
        Ran ran = Ran.with(InputStream.nullInputStream(), true, "lint", HOSTILE, "-o", file.toString());
        assertEquals(new Ran(1, "", ""), ran);
        assertEquals(Ran.fettle("lint", HOSTILE).out(), Files.readString(file, StandardCharsets.UTF_8));
        Path json = folder.resolve("out.json");
        Ran.fettle("validate", TIDEMILL, TIDEMILL + "/builds", "--format", "json", "--output", json.toString());
        assertEquals(Ran.fettle("validate", TIDEMILL, TIDEMILL + "/builds", "--format", "json").out(), Files.readString(json, StandardCharsets.UTF_8));
    }

    @Test
    void a_build_is_read_from_standard_input() {
        Ran ran = Ran.reading("build: { id: piped, platform: anvil, parts: { barrel: barrel-short } }", "validate", TIDEMILL, "-");
        assertEquals(0, ran.exit(), ran.err());
        assertTrue(ran.out().startsWith("  build  piped: valid\n     at  standard input:1:8\n"), ran.out());
    }

    @Test
    void builds_are_bought_under_the_access_profile_that_is_named() {
        String build = "build: { id: piped, platform: anvil, parts: { barrel: barrel-long } }";
        String all = Ran.reading(build, "validate", TIDEMILL, "-").out();
        assertTrue(all.contains("   cost  1,200 shell\n"), all);
        String closed = Ran.reading(build, "validate", TIDEMILL, "-", "--access", "new").out();
        assertTrue(closed.contains("loaded, bought as new\n") && closed.contains("   cost  1,450 shell\n"), closed);
    }

    @Test
    void a_reader_that_goes_away_is_no_error() {
        OutputStream closed = new OutputStream() {
            private int left = 40;

            @Override
            public void write(int b) throws IOException {
                if (left-- <= 0) {
                    throw new IOException("Broken pipe");
                }
            }
        };
        java.io.ByteArrayOutputStream err = new java.io.ByteArrayOutputStream();
        for (String format : new String[] {"text", "json"}) {
            int exit = Main.run(new String[] {"lint", HOSTILE, "--format", format}, InputStream.nullInputStream(),
                    new PrintStream(closed, false, StandardCharsets.UTF_8), new PrintStream(err, false, StandardCharsets.UTF_8));
            assertEquals(1, exit);
            assertEquals("", err.toString(StandardCharsets.UTF_8));
        }
    }

    @Test
    void a_rule_is_told_by_its_page_and_all_by_topic() {
        Shown.equalsFile("rule-does-not-fit.txt", Ran.fettle("rules", "does-not-fit").out());
        String all = Ran.fettle("rules").out();
        assertTrue(all.startsWith("build\n"), all);
        assertTrue(all.contains("  error  does-not-fit"), all);
        assertTrue(all.lines().allMatch(line -> line.length() <= 100), all);
    }
}

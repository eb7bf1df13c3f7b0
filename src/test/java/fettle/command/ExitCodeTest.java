package fettle.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fettle.view.Shown;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Each way in which a run can end, by its exit code and what it says where. */
class ExitCodeTest {

    private static final String PLAIN = Shown.FOLDER.resolve("plain").toString();
    private static final String TIDEMILL = Shown.FOLDER.resolve("tidemill").toString();
    private static final String HOSTILE = Shown.FOLDER.resolve("hostile").toString();

    @TempDir
    private Path folder;

    /** Nothing could be checked: nothing on standard output, and one sentence that says why. */
    private static void notChecked(String why, Ran ran) {
        assertEquals(ExitCode.NOT_CHECKED, ran.exit(), ran.err());
        assertEquals("", ran.out());
        assertTrue(ran.err().contains(why), ran.err());
        assertFalse(ran.err().contains("Exception") || ran.err().contains("\tat "), ran.err());
    }

    @Test
    void a_catalog_without_findings_ends_with_0() {
        Ran ran = Ran.fettle("lint", PLAIN);
        assertEquals(new Ran(0, "plain, patch 1.0: no findings. Looked at 1 platform, 1 part and 1 offer in 1 document.\n", ""), ran);
    }

    @Test
    void a_catalog_with_an_error_ends_with_1() {
        Ran ran = Ran.fettle("lint", HOSTILE);
        assertEquals(1, ran.exit());
        assertEquals("", ran.err());
    }

    @Test
    void the_fail_level_decides_what_ends_with_1() {
        assertEquals(0, Ran.fettle("lint", HOSTILE, "--fail-on", "never").exit());
        assertEquals(1, Ran.fettle("lint", HOSTILE, "--fail-on", "error").exit());
        assertEquals(0, Ran.fettle("validate", TIDEMILL, TIDEMILL + "/builds", "--fail-on=never").exit());
    }

    @Test
    void a_sound_build_ends_with_0_and_a_broken_one_with_1() {
        assertEquals(0, Ran.fettle("validate", TIDEMILL, TIDEMILL + "/builds/sound.yaml").exit());
        assertEquals(1, Ran.fettle("validate", TIDEMILL, TIDEMILL + "/builds/wrong.yaml").exit());
        assertEquals(1, Ran.fettle("validate", TIDEMILL, TIDEMILL + "/builds/sound.yaml", TIDEMILL + "/builds/wrong.yaml").exit());
    }

    @Test
    void bad_usage_ends_with_2_and_points_to_the_help() {
        notChecked("there is no command lnt; did you mean lint?", Ran.fettle("lnt", "x"));
        notChecked("See fettle --help", Ran.fettle("lnt"));
        notChecked("lint is one argument too many", Ran.fettle("lint", PLAIN, "lint"));
        notChecked("b is one argument too many", Ran.fettle("lint", PLAIN, "b"));
        notChecked("See fettle --help", Ran.fettle("--nope"));
        notChecked("See fettle lint --help", Ran.fettle("lint"));
        notChecked("See fettle lint --help", Ran.fettle("lint", PLAIN, "another"));
        notChecked("did you mean --format", Ran.fettle("lint", PLAIN, "--formt", "json"));
        notChecked("did you mean --format?", Ran.fettle("lint", PLAIN, "--fromat", "json"));
        notChecked("did you mean --format?", Ran.fettle("lint", PLAIN, "--fromat=json"));
        notChecked("did you mean lint?", Ran.fettle("lnit", PLAIN));
        assertFalse(Ran.fettle("bogus").err().contains("did you mean"));
        assertFalse(Ran.fettle("lint", PLAIN, "lint").err().contains("did you mean"));
        notChecked("text, json", Ran.fettle("lint", PLAIN, "--format", "xml"));
        notChecked("error, warning, note, never", Ran.fettle("lint", PLAIN, "--fail-on", "fatal"));
        notChecked("auto, always, never", Ran.fettle("lint", PLAIN, "--color", "pink"));
        notChecked("See fettle validate --help", Ran.fettle("validate", PLAIN));
        notChecked("usage: fettle", Ran.fettle());
    }

    @Test
    void output_is_not_written_over_a_document_that_has_another_name_too() throws IOException {
        Path catalog = Files.createDirectories(folder.resolve("catalog"));
        String text = Files.readString(Path.of(PLAIN, "catalog.yaml"));
        Files.writeString(catalog.resolve("catalog.yaml"), text);
        Files.createLink(folder.resolve("out.txt"), catalog.resolve("catalog.yaml"));
        notChecked("would be written over", Ran.fettle("lint", catalog.toString(), "-o", folder.resolve("out.txt").toString()));
        assertEquals(text, Files.readString(catalog.resolve("catalog.yaml")));
        Files.createLink(folder.resolve("one.txt"), Files.writeString(folder.resolve("two.txt"), "old"));
        assertEquals(0, Ran.fettle("lint", catalog.toString(), "-o", folder.resolve("one.txt").toString()).exit());
        assertTrue(Files.readString(folder.resolve("two.txt")).contains("no findings"));
    }

    @Test
    void a_dash_is_no_file_for_output() {
        notChecked("-o takes a file, and - is none; write ./- for a file of that name", Ran.fettle("lint", PLAIN, "-o", "-"));
        assertFalse(Files.exists(Path.of("-")));
    }

    @Test
    void why_nothing_could_be_written_is_more_than_the_name_of_the_file() {
        assertEquals("the system refuses it, and gives no reason", Delivery.reason(new NoSuchFileException("/proc/x")));
        assertEquals("writing there is not permitted", Delivery.reason(new AccessDeniedException("/proc/x")));
        assertEquals("No space left on device", Delivery.reason(new FileSystemException("/x", null, "No space left on device")));
        assertEquals("Stream closed", Delivery.reason(new IOException("Stream closed")));
    }

    @Test
    void an_empty_path_is_not_taken_for_the_current_directory() {
        notChecked("the path for CATALOG is empty; name one, or write . for the current directory", Ran.fettle("lint", ""));
        notChecked("the path for CATALOG is empty", Ran.fettle("validate", "", TIDEMILL + "/builds"));
        notChecked("the path for BUILD is empty", Ran.fettle("validate", TIDEMILL, TIDEMILL + "/builds", ""));
        notChecked("the path for OLD is empty", Ran.fettle("compare", "", TIDEMILL));
        notChecked("the path for NEW is empty", Ran.fettle("compare", TIDEMILL, ""));
        notChecked("the path for --builds is empty", Ran.fettle("compare", TIDEMILL, TIDEMILL, "--builds", ""));
        notChecked("the path for --rules is empty", Ran.fettle("lint", TIDEMILL, "--rules", ""));
        notChecked("the path for DIR is empty", Ran.fettle("start", ""));
        notChecked("-o names no file to write to", Ran.fettle("lint", TIDEMILL, "-o", ""));
    }

    @Test
    void a_catalog_that_is_not_there_ends_with_2() {
        notChecked("there is no catalog at " + folder.resolve("none"), Ran.fettle("lint", folder.resolve("none").toString()));
        notChecked("there is no catalog at " + folder.resolve("none"), Ran.fettle("validate", folder.resolve("none").toString(), PLAIN + "/builds"));
        notChecked("there is no catalog at " + folder.resolve("none"), Ran.fettle("explain", folder.resolve("none").toString(), "knob"));
    }

    @Test
    void a_folder_without_documents_ends_with_2() {
        notChecked("no document is in this folder", Ran.fettle("lint", folder.toString()));
    }

    @Test
    void a_file_in_place_of_a_catalog_ends_with_2() {
        notChecked("a catalog is a folder, but this is a file", Ran.fettle("lint", PLAIN + "/catalog.yaml"));
    }

    @Test
    void documents_of_which_nothing_can_be_read_end_with_2_and_are_told() throws IOException {
        Files.writeString(folder.resolve("a.json"), "{ \"parts\": [");
        Ran ran = Ran.fettle("lint", folder.toString());
        assertEquals(2, ran.exit());
        assertTrue(ran.out().contains("a.json:1:13") && ran.out().contains("(unreadable-document)"), ran.out());
        assertEquals("fettle lint: no part and no platform could be read from the catalog, so there is nothing to check\n", ran.err());
    }

    @Test
    void one_unreadable_document_hides_nothing_in_the_others() throws IOException {
        Files.copy(Path.of(HOSTILE, "catalog.json"), folder.resolve("catalog.json"));
        Files.writeString(folder.resolve("broken.yaml"), "parts: [ {");
        Ran ran = Ran.fettle("lint", folder.toString());
        assertEquals(1, ran.exit());
        assertTrue(ran.out().contains("(unreadable-document)"), ran.out());
        assertTrue(ran.out().contains("(duplicate-id)"), ran.out());
    }

    @Test
    void builds_that_are_not_there_end_with_2() throws IOException {
        notChecked("there is no build at " + folder.resolve("none.yaml"), Ran.fettle("validate", PLAIN, folder.resolve("none.yaml").toString()));
        Ran empty = Ran.fettle("validate", PLAIN, folder.toString());
        assertEquals(2, empty.exit());
        assertEquals("fettle validate: no build could be read, so there is nothing to check\n", empty.err());
        Files.writeString(folder.resolve("empty.yaml"), "builds: []\n");
        assertEquals(2, Ran.fettle("validate", PLAIN, folder.resolve("empty.yaml").toString()).exit());
    }

    @Test
    void an_unknown_id_or_rule_ends_with_2_and_names_the_nearest() {
        notChecked("did you mean knob?", Ran.fettle("explain", PLAIN, "knbo"));
        notChecked("the catalog has nothing of the name zzzzzzzz\n", Ran.fettle("explain", PLAIN, "zzzzzzzz"));
        notChecked("only parts can be asked about together", Ran.fettle("explain", TIDEMILL, "leaf", "anvil"));
        notChecked("did you mean riser?", Ran.fettle("explain", TIDEMILL, "leaf", "rizer"));
        notChecked("did you mean anvil?", Ran.fettle("explain", TIDEMILL, "leaf", "riser", "--platform", "anvli"));
        notChecked("leave --platform out", Ran.fettle("explain", TIDEMILL, "mass", "--platform", "anvil"));
        notChecked("leave --access out", Ran.fettle("explain", TIDEMILL, "leaf", "riser", "--access", "new"));
        notChecked("did you mean new?", Ran.fettle("validate", TIDEMILL, TIDEMILL + "/builds", "--access", "nwe"));
        notChecked("did you mean new?", Ran.fettle("explain", TIDEMILL, "leaf", "--access", "nwe"));
        notChecked("did you mean does-not-fit?", Ran.fettle("rules", "does-not-fitt"));
    }

    @Test
    void rule_files_with_faults_end_with_2_and_their_place() throws IOException {
        Files.writeString(folder.resolve("mine.drl"), "package fettle.rules.judgement;\nrule \"mine\"\nwhen\n");
        notChecked("mine.drl", Ran.fettle("lint", PLAIN, "--rules", folder.toString()));
        notChecked("not a directory of rules", Ran.fettle("lint", PLAIN, "--rules", folder.resolve("none").toString()));
    }

    @Test
    void an_output_file_that_cannot_be_written_ends_with_2() {
        notChecked("there is no such folder", Ran.fettle("lint", PLAIN, "-o", folder.resolve("none/out.txt").toString()));
        notChecked("names no file", Ran.fettle("lint", PLAIN, "-o", ""));
        notChecked("it is a folder", Ran.fettle("lint", PLAIN, "-o", folder.toString()));
        notChecked("it is a folder", Ran.fettle("lint", PLAIN, "--format", "json", "-o", folder.toString()));
    }

    @Test
    void an_output_file_that_is_read_is_not_written_over() throws IOException {
        Path catalog = Files.createDirectories(folder.resolve("mine"));
        Path document = catalog.resolve("catalog.yaml");
        String text = "catalog: { id: mine, patch: '1', released: 2031-03-01, currency: crown }\ncurrencies: [{ id: crown, rate: 1 }]\nplatforms: [{ id: carbine }]\n";
        Files.writeString(document, text);
        notChecked("name another file for the output", Ran.fettle("lint", catalog.toString(), "-o", document.toString()));
        assertEquals(text, Files.readString(document));
        Path page = catalog.resolve("findings.txt");
        Files.writeString(page, "old");
        assertEquals(0, Ran.fettle("lint", catalog.toString(), "-o", page.toString(), "--fail-on", "never").exit());
        assertTrue(Files.readString(page).contains("mine, patch 1"), Files.readString(page));
    }

    @Test
    void an_output_file_is_not_put_where_it_would_be_read_the_next_time() throws IOException {
        Path catalog = Files.createDirectories(folder.resolve("mine"));
        Files.writeString(catalog.resolve("catalog.yaml"), "catalog: { id: mine, patch: '1', released: 2031-03-01, currency: crown }\ncurrencies: [{ id: crown, rate: 1 }]\nplatforms: [{ id: carbine }]\n");
        Path inside = catalog.resolve("findings.json");
        notChecked("would be read with", Ran.fettle("lint", catalog.toString(), "--format", "json", "-o", inside.toString()));
        assertFalse(Files.exists(inside));
        Path beside = folder.resolve("findings.json");
        assertEquals(0, Ran.fettle("lint", catalog.toString(), "--format", "json", "-o", beside.toString(), "--fail-on", "never").exit());
        assertTrue(Files.exists(beside));
    }

    @Test
    void a_fault_of_the_program_ends_with_70_and_one_plain_sentence() {
        InputStream broken = new InputStream() {
            @Override
            public int read() {
                throw new IllegalStateException("the tide\u001B is out");
            }
        };
        Ran ran = Ran.with(broken, false, "validate", PLAIN, "-");
        assertEquals(70, ran.exit());
        assertEquals("", ran.out());
        assertTrue(ran.err().startsWith("fettle validate: Something went wrong that should not: IllegalStateException, the tide\\u001B is out, in "), ran.err());
        assertTrue(ran.err().endsWith("Please report this with the command and the files that show it: it is a fault in Fettle, not in your catalog.\n"), ran.err());
        assertEquals(1, ran.err().lines().count(), ran.err());
    }

    @Test
    void help_and_version_end_with_0() {
        for (String command : List.of("lint", "validate", "explain", "rules")) {
            Ran help = Ran.fettle(command, "--help");
            assertEquals(0, help.exit());
            assertEquals("", help.err());
            assertTrue(help.out().startsWith("usage: fettle " + command), help.out());
            assertTrue(help.out().contains("for example:\n  fettle " + command), help.out());
        }
        Ran version = Ran.fettle("--version");
        assertEquals(0, version.exit());
        assertTrue(version.out().matches("fettle \\d+\\.\\d+\\.\\d+\\S*\n"), version.out());
        Ran help = Ran.fettle("--help");
        assertEquals(0, help.exit());
        assertTrue(help.out().contains("real equipment"), help.out());
    }
}

package fettle.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Base64;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** A report's file: its data cannot act as markup, and its policy lets only its own style and script act. */
class ReportPageTest {

    private static final String CATALOG = "catalog/marrowdyke";

    @TempDir
    private static Path folder;

    private static String first;

    @BeforeAll
    static void write_a_report() throws IOException {
        first = page("a.html");
    }

    private static String page(String name) throws IOException {
        Path page = folder.resolve(name);
        Ran ran = Ran.fettle("report", CATALOG, "--builds", CATALOG + "/builds", "-o", page.toString());
        assertEquals(new Ran(0, "", ""), ran);
        return Files.readString(page);
    }

    private static String inside(String page, String open, String close) {
        Matcher found = Pattern.compile(Pattern.quote(open) + "(.*?)" + Pattern.quote(close), Pattern.DOTALL).matcher(page);
        assertTrue(found.find(), "no " + open);
        return found.group(1);
    }

    private static String hash(String text) throws NoSuchAlgorithmException {
        return "sha256-" + Base64.getEncoder().encodeToString(MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8)));
    }

    @Test
    void the_policy_names_the_style_and_the_script_that_stand_in_the_page() throws Exception {
        String page = first;
        assertEquals(
                "default-src 'none'; script-src '" + hash(inside(page, "<script>", "</script>")) + "'; style-src '" + hash(inside(page, "<style>", "</style>"))
                        + "'; base-uri 'none'; form-action 'none'",
                inside(page, "Content-Security-Policy\" content=\"", "\""));
        assertFalse(Pattern.compile("innerHTML|outerHTML|insertAdjacentHTML|document\\.write|eval\\(|https?://(?!www\\.w3\\.org/2000/svg)").matcher(page).find());
        String frame = page.replace(inside(page, "<script>", "</script>"), "").replace(inside(page, "id=\"data\">", "</script>"), "")
                .replace(inside(page, "id=\"ladders\">", "</script>"), "");
        assertFalse(Pattern.compile("<[^>]* (style|on\\w+)=").matcher(frame).find());
    }

    @Test
    void the_data_hold_no_angle_bracket_and_every_finding_part_and_build() throws IOException {
        String data = inside(first, "id=\"data\">", "</script>");
        assertFalse(data.contains("<") || data.contains(">") || data.contains("&"));
        JsonNode read = new JsonMapper().readTree(data);
        JsonNode lint = new JsonMapper().readTree(Ran.fettle("lint", CATALOG, "--format", "json").out());
        JsonNode validate = new JsonMapper().readTree(Ran.fettle("validate", CATALOG, CATALOG + "/builds", "--format", "json").out());
        assertEquals(lint.get("findings").size() + validate.get("findings").size(), read.get("findings").size());
        assertEquals(validate.get("builds").size(), read.get("builds").size());
        assertTrue(read.get("parts").size() >= 150, read.get("parts").size() + " parts");
        String ladders = inside(first, "id=\"ladders\">", "</script>");
        assertFalse(ladders.contains("<") || ladders.contains(">") || ladders.contains("&"));
        assertEquals(read.get("platforms").size(), new JsonMapper().readTree(ladders).get("ladders").size());
        assertTrue(read.get("fits").size() < read.get("parts").size(), "slots that fit the same parts share no list");
    }

    @Test
    void the_same_catalog_gives_the_same_bytes() throws IOException {
        assertEquals(first, page("b.html"));
    }

    @Test
    void a_report_asks_where_to_go() {
        assertEquals(new Ran(2, "", "fettle report: a report goes into a file; name it with -o FILE\n"), Ran.fettle("report", CATALOG));
    }
}

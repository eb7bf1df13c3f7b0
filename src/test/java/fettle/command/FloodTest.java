package fettle.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** One slip that many findings come from: what to begin with is read first, and the rest is counted rather than told again and again. */
class FloodTest {

    private static final String HEAD = """
            catalog: { id: quay, patch: "1.0", released: 2031-03-01, currency: crown }
            currencies: [{ id: crown, rate: 1 }]
            kinds: [{ id: grip }]
            mounts: [{ id: stub }]
            """;
    private static final String ATTRIBUTES = "attributes: [{ id: mass, better: lower, combine: sum, decimals: 2 }]\n";

    @TempDir
    Path catalog;

    @BeforeEach
    void a_host() throws IOException {
        write("head.yaml", HEAD);
        write("attributes.yaml", ATTRIBUTES);
        write("hosts.yaml", "platforms: [{ id: carbine, slots: [{ id: below, mounts: [stub], required: true }], factory: { below: grip-1 } }]\n");
        parts(20, "0.25");
    }

    private void parts(int count, String mass) throws IOException {
        write("parts.yaml", IntStream.rangeClosed(1, count)
                .mapToObj(i -> "  - { id: grip-%d, kind: grip, mounts: [stub], stats: { mass: %s } }\n".formatted(i, mass)).collect(Collectors.joining("", "parts:\n", "")));
    }

    private void write(String file, String text) throws IOException {
        Files.writeString(catalog.resolve(file), text);
    }

    private String lint(String... more) {
        String[] words = new String[more.length + 2];
        words[0] = "lint";
        words[1] = catalog.toString();
        System.arraycopy(more, 0, words, 2, more.length);
        Ran ran = Ran.fettle(words);
        assertEquals(1, ran.exit(), ran.err());
        return ran.out();
    }

    private static int count(String text, String piece) {
        return text.split(java.util.regex.Pattern.quote(piece), -1).length - 1;
    }

    @Test
    void a_name_that_nothing_has_is_told_once_and_counted_in_full() throws IOException {
        write("attributes.yaml", ATTRIBUTES.replace("mass", "weight"));
        String text = lint();
        assertEquals(1, count(text, "(unknown-reference)"));
        assertTrue(text.contains("   also  19 more mentions of the attribute mass:\n"), text);
        assertTrue(text.contains("           parts.yaml:13:57, part:grip-12\n           and 8 more; --format json tells of each\n"), text);
        assertTrue(text.contains("quay, patch 1.0: 20 errors"), text);
        assertEquals(20, count(lint("--format", "json"), "\"rule\" : \"unknown-reference\""));
        assertEquals(20, count(lint("--format", "sarif"), "\"ruleId\" : \"unknown-reference\""));
    }

    @Test
    void a_name_that_few_mention_is_told_each_time() throws IOException {
        write("attributes.yaml", ATTRIBUTES.replace("mass", "weight"));
        parts(3, "0.25");
        String text = lint();
        assertEquals(3, count(text, "(unknown-reference)"));
        assertFalse(text.contains("also"), text);
    }

    @Test
    void figures_that_are_all_too_exact_and_offers_without_a_tier_are_told_once() throws IOException {
        write("attributes.yaml", ATTRIBUTES.replace("decimals: 2", "decimals: 1"));
        write("offers.yaml", IntStream.rangeClosed(1, 20).mapToObj(i -> "  - { part: grip-%d, vendor: stall, price: %d, seen: 2031-03-02 }\n".formatted(i, i))
                .collect(Collectors.joining("", "vendors: [{ id: stall, tiers: 3 }]\noffers:\n", "")));
        String text = lint();
        assertEquals(1, count(text, "(needless-precision)"));
        assertTrue(text.contains("   also  19 more figures of mass with more places than 0.1 has:\n"), text);
        assertEquals(1, count(text, "(missing-tier)"));
        assertTrue(text.contains("   also  19 more offers of stall that name no tier:\n"), text);
    }

    @Test
    void what_could_not_be_read_comes_before_what_may_come_from_it() throws IOException {
        write("parts.yaml", "parts:\n\t- { id: grip-1 }\n");
        write("offers.yaml", IntStream.rangeClosed(1, 20).mapToObj(i -> "  - { part: grip-%d, vendor: stall, price: 1 }\n".formatted(i))
                .collect(Collectors.joining("", "vendors: [{ id: stall, tiers: 0 }]\noffers:\n", "")));
        String text = lint();
        assertTrue(text.startsWith("Begin with " + catalog + "/parts.yaml, of which"), text);
        assertTrue(text.indexOf("(unreadable-document)") < text.indexOf("(unknown-reference)"), text);
        assertTrue(text.indexOf("(unreadable-document)") < text.indexOf("hosts.yaml"), text);
        assertEquals(3, count(text, "(unknown-reference)"));
        assertTrue(text.contains("  error  18 more of unknown-reference that may come from what could not be read\n"), text);
        assertTrue(text.indexOf("18 more of unknown-reference") < text.indexOf("warning  "), text);
        assertTrue(text.replaceAll("\\s+", " ").endsWith(" findings may come from that. "), text);
        String quiet = lint("-q");
        assertTrue(quiet.startsWith("Begin with " + catalog + "/parts.yaml, of which"), quiet);
        assertEquals(1, count(quiet, "Begin with"));
        assertEquals(21, count(lint("--format", "json"), "\"rule\" : \"unknown-reference\""));
    }

    @Test
    void a_misspelt_name_comes_before_the_factory_that_breaks_by_it() throws IOException {
        String parts = Files.readString(catalog.resolve("parts.yaml"));
        write("parts.yaml", parts.replace("grip-1, kind: grip, mounts", "grip-1, kind: grip, muonts"));
        String text = lint();
        assertTrue(text.indexOf("(factory-invalid)") > text.indexOf("(schema-mismatch)"), text);
        assertTrue(text.contains("(schema-mismatch)"), text);
        write("parts.yaml", parts.replace("mounts", "muonts"));
        String many = lint();
        assertEquals(1, count(many, "(schema-mismatch)"));
        assertTrue(many.replaceAll("\\s+", " ").contains("also 19 more places with \"muonts\" where there should be a property of a part:"), many);
    }

    /** So many grips, each heavier than the last, for a platform whose only slot is to hold the lightest. */
    private void outdone(int count) throws IOException {
        write("parts.yaml", IntStream.rangeClosed(1, count)
                .mapToObj(i -> "  - { id: grip-%d, kind: grip, mounts: [stub], stats: { mass: 0.%02d } }\n".formatted(i, i)).collect(Collectors.joining("", "parts:\n", "")));
        write("offers.yaml", IntStream.rangeClosed(1, count).mapToObj(i -> "  - { part: grip-%d, vendor: stall, price: 5 }\n".formatted(i))
                .collect(Collectors.joining("", "vendors: [{ id: stall, tiers: 0 }]\noffers:\n", "")));
    }

    @Test
    void of_many_warnings_of_a_rule_a_dozen_are_told_in_full_and_each_other_in_a_line() throws IOException {
        outdone(20);
        String text = lint();
        assertEquals(12, count(text, "(never-worth-using)"));
        assertTrue(text.contains("\n7 more of never-worth-using, each in a line; --format json tells why, and what to do.\nwarning  grip-14 is never worth using"), text);
        assertTrue(text.replaceAll("\\s+", " ").contains("parts.yaml:21:5 quay, patch 1.0: 19 warnings"), text);
        assertEquals(19, count(text, " is never worth using"));
        assertEquals(19, count(lint("--format", "json"), "\"rule\" : \"never-worth-using\""));
    }

    @Test
    void a_dozen_warnings_of_a_rule_are_all_told_in_full() throws IOException {
        outdone(13);
        String text = lint();
        assertEquals(12, count(text, "(never-worth-using)"));
        assertFalse(text.contains("each in a line"), text);
    }

    @Test
    void each_of_many_that_are_alike_is_paired_with_the_first_alone() throws IOException {
        parts(41, "0.25");
        assertEquals(40, count(lint("--fail-on", "note", "--format", "json"), "\"rule\" : \"twin-parts\""));
        assertEquals(40, count(lint("--fail-on", "note", "--format", "json"), "\"part\" : \"grip-1\""));
    }

    @Test
    void each_of_some_that_are_alike_is_paired_with_each() throws IOException {
        parts(40, "0.25");
        assertEquals(40 * 39 / 2, count(lint("--fail-on", "note", "--format", "json"), "\"rule\" : \"twin-parts\""));
    }
}

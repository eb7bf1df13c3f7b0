package fettle.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.function.IntFunction;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** One slip in the new catalog, or one stroke of a patch, that many findings come from: comparing tells it once, as lint does. */
class PatchFloodTest {

    private static final String HEAD = """
            catalog: { id: quay, patch: "%s", released: 2031-03-01, currency: crown }
            currencies: [{ id: crown, rate: 1 }]
            kinds: [{ id: grip }]
            mounts: [{ id: stub }, { id: peg }]
            attributes: [{ id: mass, better: lower, combine: sum, decimals: 2 }]
            platforms: [{ id: carbine, slots: [{ id: below, mounts: [stub] }, { id: front, mounts: [stub] }] }]
            vendors: [{ id: stall, tiers: 0 }]
            access: [{ id: guest, vendors: { stall: 0 } }]
            """;

    @TempDir
    Path folder;

    @BeforeEach
    void two_alike() throws IOException {
        for (String side : List.of("old", "new")) {
            write(side + "/head.yaml", HEAD.formatted(side));
            write(side + "/parts.yaml", parts(i -> "stub"));
            write(side + "/offers.yaml", list("offers", i -> "{ part: grip-%d, vendor: stall, price: 5 }".formatted(i)));
        }
        write("builds.yaml", list("builds", i -> "{ id: b-%02d, platform: carbine, parts: { %s: grip-%d } }".formatted(i, i < 20 ? "below" : "front", i)));
    }

    private static String list(String section, IntFunction<String> item) {
        return IntStream.rangeClosed(1, 20).mapToObj(i -> "  - " + item.apply(i) + "\n").collect(Collectors.joining("", section + ":\n", ""));
    }

    private static String parts(IntFunction<String> mount) {
        return list("parts", i -> "{ id: grip-%d, kind: grip, mounts: [%s], stats: { mass: 0.25 } }".formatted(i, mount.apply(i)));
    }

    private void write(String file, String text) throws IOException {
        Files.createDirectories(folder.resolve(file).getParent());
        Files.writeString(folder.resolve(file), text);
    }

    private void replace(String file, String old, String now) throws IOException {
        write(file, Files.readString(folder.resolve(file)).replace(old, now));
    }

    private String compared(String... more) {
        List<String> words = new ArrayList<>(List.of("compare", folder + "/old", folder + "/new", "--builds", folder + "/builds.yaml"));
        words.addAll(List.of(more));
        return Ran.fettle(words.toArray(String[]::new)).out();
    }

    private static int count(String text, String piece) {
        return text.split(java.util.regex.Pattern.quote(piece), -1).length - 1;
    }

    @Test
    void a_name_that_nothing_has_any_more_is_told_once() throws IOException {
        replace("new/head.yaml", "{ id: mass, ", "{ id: weight, ");
        String text = compared();
        assertEquals(1, count(text, "(unknown-reference)"), text);
        assertTrue(text.contains("   also  19 more mentions of the attribute mass:\n"), text);
        assertEquals(20, count(compared("--format", "json"), "\"rule\" : \"unknown-reference\""));
        assertEquals(20, count(compared("--format", "sarif"), "\"ruleId\" : \"unknown-reference\""));
    }

    @Test
    void what_many_builds_name_and_no_catalog_has_is_told_once() throws IOException {
        write("old/lenses.yaml", "lenses: [{ id: light, weights: { mass: 1 } }]\n");
        replace("builds.yaml", "platform: carbine, ", "platform: carbine, lens: light, ");
        String text = compared();
        assertEquals(1, count(text, "(unknown-name)"), text);
        assertTrue(text.contains("   also  19 more mentions of the lens light:\n"), text);
    }

    @Test
    void what_could_not_be_read_comes_before_the_builds_that_cannot_be_judged_for_it() throws IOException {
        write("new/parts.yaml", "parts:\n<<<<<<< HEAD\n  - { id: grip-0, kind: grip }\n");
        String text = compared();
        assertTrue(text.startsWith("Begin with " + folder + "/new/parts.yaml, of which"), text);
        assertTrue(text.indexOf("(unreadable-document)") < text.indexOf("(build-unjudged)"), text);
        assertEquals(1, count(text, "(build-unjudged)"), text);
        assertTrue(text.contains("   also  19 more builds that can't be judged:\n"), text);
        assertEquals(0, count(text, "(build-broken)"), text);
        assertTrue(text.contains("20 builds: 20 that can't be judged; "), text);
        assertTrue(text.replaceAll("\\s+", " ").endsWith(" findings may come from that. "), text);
        String quiet = compared("-q");
        assertTrue(quiet.startsWith("Begin with " + folder + "/new/parts.yaml, of which"), quiet);
        assertEquals(1, count(quiet, "Begin with"), quiet);
        assertEquals(20, count(compared("--format", "json"), "\"rule\" : \"build-unjudged\""));
    }

    @Test
    void builds_that_one_difference_broke_are_listed_with_what_to_change_in_each_that_is_mended_otherwise() throws IOException {
        replace("builds.yaml", "below: grip-", "below: grip-1 } } # ");
        replace("builds.yaml", "front: grip-20", "front: grip-1");
        write("new/parts.yaml", parts(i -> i == 1 ? "peg" : "stub"));
        String text = compared();
        assertEquals(1, count(text, "(build-broken)"), text);
        assertTrue(text.contains("   also  19 more builds broken through grip-1.mounts:\n"), text);
        assertEquals(1, count(text, "The nearest repair: change below from grip-1 to nothing."), text);
        assertEquals(20, count(compared("--format", "json"), "\"rule\" : \"build-broken\""));
        write("builds.yaml", "builds:\n" + Files.readAllLines(folder.resolve("builds.yaml")).stream().skip(16).collect(Collectors.joining("\n")));
        String few = compared();
        assertTrue(few.contains("   also  4 more builds broken through grip-1.mounts:\n"), few);
        assertTrue(few.contains(", build:b-20\n             The nearest repair: change front from grip-1 to nothing.\n"), few);
    }

    @Test
    void parts_of_a_vendor_that_closed_are_told_once_and_so_are_those_that_some_can_no_longer_buy() throws IOException {
        write("new/offers.yaml", "offers: []\n");
        String text = compared();
        assertEquals(1, count(text, "(source-lost)"), text);
        assertTrue(text.contains("   also  19 more parts of stall that can no longer be bought by anybody:\n"), text);
        write("new/offers.yaml", Files.readString(folder.resolve("old/offers.yaml")));
        replace("new/head.yaml", "{ stall: 0 }", "{}");
        String some = compared();
        assertEquals(1, count(some, "(source-lost)"), some);
        assertTrue(some.contains("   also  19 more parts of stall that can no longer be bought by guest:\n"), some);
        assertEquals(20, count(compared("--format", "json"), "\"rule\" : \"source-lost\""));
    }

    @Test
    void of_many_notes_of_one_rule_a_few_are_told() throws IOException {
        replace("new/parts.yaml", "mass: 0.25", "mass: 0.3");
        String text = compared("-q", "--fail-on", "note");
        assertEquals(3, count(text, "(build-shifted)"), text);
        assertTrue(text.contains("   note  17 more of build-shifted\n"), text);
        assertTrue(text.contains("    try  --format json tells of each.\n"), text);
        assertEquals(20, count(compared(), "shifted  build "));
        assertEquals(20, count(compared("--format", "json"), "\"rule\" : \"build-shifted\""));
    }

    @Test
    void a_limit_that_many_builds_no_longer_keep_is_told_once() throws IOException {
        String limit = "limits: [{ id: airy, attribute: mass, atMost: %s, severity: error }]\n";
        write("old/limits.yaml", limit.formatted("0.3"));
        write("new/limits.yaml", limit.formatted("0.2"));
        String text = compared();
        assertEquals(1, count(text, "(limit-crossed)"), text);
        assertTrue(text.contains("   also  19 more builds that no longer keep airy through airy.atMost:\n           builds.yaml:3:5, build:b-02: 0.25\n"), text);
        assertEquals(0, count(text, "shifted  "), text);
        assertEquals(20, count(compared("--format", "json"), "\"rule\" : \"limit-crossed\""));
        Files.delete(folder.resolve("old/limits.yaml"));
        assertTrue(compared().contains("   also  19 more builds that do not keep the new limit airy through airy:\n"));
    }

    @Test
    void a_build_of_which_more_than_a_limit_moved_is_told_as_shifted() throws IOException {
        String limit = "limits: [{ id: airy, attribute: mass, atMost: 0.3, severity: error }]\n";
        write("old/limits.yaml", limit);
        write("new/limits.yaml", limit);
        replace("new/parts.yaml", "0.25", "0.35");
        assertEquals(20, count(compared(), "shifted  build b-"));
    }

    @Test
    void what_is_wrong_with_the_catalog_comes_before_what_breaks_through_it() throws IOException {
        replace("new/head.yaml", "mounts: [stub] }, { id: front", "mounts: [stump] }, { id: front");
        String text = compared();
        assertTrue(text.contains("(unknown-reference)") && text.contains("(build-broken)"), text);
        assertTrue(text.indexOf("(unknown-reference)") < text.indexOf("(build-broken)"), text);
    }
}

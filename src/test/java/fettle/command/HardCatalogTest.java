package fettle.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Catalogs that are deeper or more tangled than any game's are answered, or it is said what was left open and why. */
class HardCatalogTest {

    /** Far more than the stack of an ordinary thread takes. */
    private static final int DEEP = 2_000;

    /** All parts can hold all others, so that what stands above matters in more ways than can be kept apart. */
    private static final int TANGLED = 30;

    @TempDir
    private static Path folder;

    private static String deep;
    private static String build;
    private static String tangled;

    @BeforeAll
    static void write_the_catalogs() throws IOException {
        deep = written("deep/catalog.json", catalog("{'id':'s','accepts':['p0']}", IntStream.range(0, DEEP)
                .mapToObj(i -> part(i, "", i == DEEP - 1 ? "" : "{'id':'s','accepts':['p" + (i + 1) + "']}")).collect(Collectors.joining(",\n"))));
        tangled = written("tangled/catalog.json", catalog("{'id':'s','mounts':['m']}", IntStream.range(0, TANGLED)
                .mapToObj(i -> part(i, "'mounts':['m'],", "{'id':'s','mounts':['m']}")).collect(Collectors.joining(",\n"))));
        String entries = IntStream.range(0, DEEP).mapToObj(i -> "'" + "s/".repeat(i) + "s':'p" + i + "'").collect(Collectors.joining(",\n"));
        build = written("builds/deep.json", "{'builds':[{'id':'deep','platform':'frame','patch':'1','parts':{" + entries + "}}]}");
    }

    private static String written(String file, String json) throws IOException {
        Path document = folder.resolve(file);
        Files.createDirectories(document.getParent());
        return Files.writeString(document, json.replace('\'', '"')).getParent().toString();
    }

    private static String catalog(String slot, String parts) {
        return """
                {'catalog':{'id':'hard','patch':'1','released':'2031-01-01','currency':'scrip'},'currencies':[{'id':'scrip','rate':1}],
                'attributes':[{'id':'mass','unit':'g','better':'lower','combine':'sum','decimals':0,'shown':0,'material':1}],
                'kinds':[{'id':'link','role':true}],'mounts':[{'id':'m'}],'vendors':[{'id':'stalls','tiers':0}],
                'platforms':[{'id':'frame','stats':{'mass':100},'slots':[%s]}],'parts':[%s]}
                """.formatted(slot, parts);
    }

    private static String part(int number, String more, String slot) {
        return String.format(Locale.ROOT, "{'id':'p%d','kind':'link',%s'stats':{'mass':1},'slots':[%s]}", number, more, slot);
    }

    private static String fine(String... arguments) {
        Ran ran = Ran.fettle(arguments);
        assertEquals("", ran.err());
        assertEquals(ExitCode.FINE, ran.exit(), ran.out());
        return ran.out();
    }

    @Test
    void a_build_thousands_of_parts_deep_is_validated() {
        String out = fine("validate", deep, build);
        assertTrue(out.contains("mass  " + (100 + DEEP) + " g"), out);
        assertTrue(out.contains("1 build, valid"), out);
    }

    @Test
    void a_catalog_thousands_of_parts_deep_is_surveyed() {
        String out = fine("survey", deep, "--format", "json");
        assertTrue(out.contains("\"count\" : \"" + (DEEP + 1) + "\""), out.substring(0, 500));
    }

    @Test
    void a_catalog_thousands_of_parts_deep_is_linted() {
        Ran ran = Ran.fettle("lint", deep, "--fail-on", "never");
        assertEquals("", ran.err());
        assertEquals(ExitCode.FINE, ran.exit());
        assertTrue(ran.out().contains(DEEP + " parts"), "all were looked at");
    }

    @Test
    void a_report_on_a_deep_build_is_written() throws IOException {
        Path page = folder.resolve("page.html");
        Ran ran = Ran.fettle("report", deep, "--builds", build, "-o", page.toString());
        assertEquals("", ran.err());
        assertTrue(Files.readString(page).contains("p" + (DEEP - 1)), "the last part is on the page");
    }

    @Test
    void lint_says_what_a_tangle_leaves_undecided() {
        Ran ran = Ran.fettle("lint", tangled, "--fail-on", "never");
        assertEquals("", ran.err());
        assertTrue(ran.out().contains("it was not decided whether something outdoes what can be on frame (undecided)"), ran.out());
    }

    @Test
    void survey_says_that_a_tangle_is_undecided() {
        String out = fine("survey", tangled);
        assertTrue(out.contains("on frame: not decided"), out);
        assertTrue(out.contains(TANGLED + " can be reached"), out);
    }

    @Test
    void explain_says_that_standings_in_a_tangle_are_undecided() {
        Ran ran = Ran.fettle("explain", tangled, "p1");
        assertEquals("", ran.err());
        assertTrue(ran.out().contains("not decided: It takes more than"), ran.out());
    }

    @Test
    void a_figure_too_long_to_reckon_with_is_named() throws IOException {
        String whole = Files.readString(Path.of("src/test/resources/fettle/ladder/extended/catalog.yaml"));
        Path dear = Files.createDirectories(folder.resolve("dear"));
        Files.writeString(dear.resolve("catalog.yaml"), whole.replace("tier: 2, price: 31", "tier: 2, price: 1e20"));
        String text = Ran.fettle("lint", dear.toString()).out();
        assertTrue(text.contains("    try  Simplify part:horn: It costs 100000000000000000000, which is too long a figure.\n"), text);
        Files.writeString(dear.resolve("catalog.yaml"), whole.replace("hold: 5,", "hold: 5.12345678901234,"));
        String exact = Ran.fettle("lint", dear.toString()).out();
        assertTrue(exact.contains("    try  Simplify part:rope: By lens:steady it brings 4.12345678901234, which is too long a figure.\n"), exact);
    }
}

package fettle.view;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fettle.catalog.Catalog;
import fettle.command.Ran;
import fettle.engine.RuleBase;
import fettle.judgement.CatalogReading;
import fettle.judgement.CatalogSurvey;
import fettle.judgement.PlatformSurvey;
import fettle.space.Prices;
import fettle.space.Survey;
import fettle.space.Undecided;
import fettle.space.worth.Gains;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.math.BigInteger;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SurveyViewTest {

    private static final Path BOATHOUSE = Shown.FOLDER.resolve("boathouse");

    /** One of its platforms states no base. */
    private static final String CAUTION = "fettle: the catalog has 1 error by which this may be wrong; see fettle lint " + BOATHOUSE + System.lineSeparator();

    @Test
    void a_survey_tells_each_platform_on_one_screen() {
        Ran said = Ran.fettle("survey", BOATHOUSE.toString());
        assertEquals(CAUTION, said.err());
        assertEquals(0, said.exit());
        Shown.equalsFile("survey-boathouse.txt", said.out());
    }

    @Test
    void a_survey_of_one_platform_is_that_platform_of_the_whole() {
        Ran said = Ran.fettle("survey", BOATHOUSE.toString(), "--platform", "punt", "--format", "json");
        assertEquals(CAUTION, said.err());
        assertEquals(0, said.exit());
        Shown.equalsFile("survey-punt.json", said.out());
    }

    @Test
    void a_platform_that_is_not_there_is_answered_with_the_nearest_name() {
        assertEquals(
                new Ran(2, "", "fettle survey: the catalog has no platform pnut; did you mean punt?\n"), Ran.fettle("survey", BOATHOUSE.toString(), "--platform", "pnut"));
        assertEquals(new Ran(2, "", "fettle survey: the catalog has no access profile anyone\n"), Ran.fettle("survey", BOATHOUSE.toString(), "--access", "anyone"));
    }

    @Test
    void what_is_not_decided_is_said_and_not_guessed() {
        RuleBase rules = RuleBase.builtIn();
        CatalogReading reading = CatalogReading.of(rules, BOATHOUSE);
        Catalog catalog = reading.catalog();
        Survey open = new Survey.Open("raft", new TreeSet<>(List.of("bead-bone")), new Undecided("It takes more than 5 steps.", "raft/string"));
        List<PlatformSurvey> platforms = List.of(new PlatformSurvey(catalog.platforms().get("raft"), open, List.of()));
        Wording wording = new Wording(rules.index(), catalog);
        Report report = new Report("survey", catalog.head(), List.of());
        Gains gains = new Gains(catalog, new Prices(catalog, Optional.empty()));
        Shown.equalsFile("survey-undecided.txt", new TextView(wording, TextStyle.FULL).survey(report, reading, platforms, gains));
        ByteArrayOutputStream json = new ByteArrayOutputStream();
        new JsonView(wording, "0").survey(report, platforms, gains, json);
        Shown.equalsFile("survey-undecided.json", json.toString(StandardCharsets.UTF_8));
    }

    @Test
    void the_whole_survey_holds_what_the_survey_of_its_platforms_do() {
        RuleBase rules = RuleBase.builtIn();
        CatalogReading reading = CatalogReading.of(rules, BOATHOUSE);
        CatalogSurvey survey = new CatalogSurvey(rules);
        List<PlatformSurvey> whole = survey.survey(reading, reading.catalog().platforms().values(), Optional.empty()).platforms();
        assertEquals(3, whole.size());
        whole.forEach(each -> assertEquals(List.of(each), survey.survey(reading, List.of(each.platform()), Optional.empty()).platforms()));
    }

    @Test
    void the_ends_of_a_range_are_told_apart(@TempDir Path folder) throws IOException {
        Files.writeString(folder.resolve("catalog.yaml"), """
                catalog: { id: quay, patch: "1", released: 2031-03-01, currency: crown }
                currencies: [{ id: crown, rate: 1 }]
                attributes:
                  - { id: glow, unit: lumps, better: higher, combine: sum, decimals: 3, shown: 1 }
                  - { id: mass, unit: kg, better: lower, combine: sum, decimals: 3, shown: 1 }
                kinds: [{ id: charm }]
                platforms: [{ id: lamp, stats: { mass: 2.46 }, slots: [{ id: top, accepts: ["kind:charm"], required: true }] }]
                parts: [{ id: bead, kind: charm, stats: { glow: 2.45 } }, { id: bell, kind: charm, stats: { glow: 2.496 } }]
                """);
        String said = Ran.fettle("survey", folder.toString()).out();
        assertTrue(said.contains("2.45 to 2.50 lumps") && said.contains("always  2.5 kg"), said);
    }

    @Test
    void counts_show_their_size_where_they_have_many_digits() {
        assertEquals("", BigCount.of(new BigInteger("9999999")).about());
        assertEquals("≈ 1.0 × 10^7", BigCount.of(new BigInteger("10000000")).about());
        assertEquals("≈ 1.0 × 10^8", BigCount.of(new BigInteger("99960000")).about());
        assertEquals("≈ 3.2 × 10^14", BigCount.of(new BigInteger("315000000000000")).about());
        assertEquals(List.of("10", "000", "000"), BigCount.of(new BigInteger("10000000")).groups());
    }

    @Test
    void counts_of_hundreds_of_digits_are_told_in_full() {
        Sheet sheet = new Sheet(false);
        BigInteger count = new BigInteger("12".repeat(100));
        BigCount.of(count).write(sheet, "has", "valid build", "valid builds");
        List<String> lines = sheet.toString().lines().toList();
        assertEquals("    has  ≈ 1.2 × 10^199 valid builds, exactly", lines.get(0));
        assertEquals(count.toString(), String.join("", lines.subList(1, lines.size())).replaceAll("[ ,]", ""));
        assertTrue(lines.stream().allMatch(line -> line.length() <= Sheet.WIDTH));
    }
}

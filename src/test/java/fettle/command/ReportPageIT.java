package fettle.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** A report as a reader meets it in a browser: it draws itself, filters, follows fragments, asks for nothing, and lets no text of a catalog act. */
class ReportPageIT {

    /** Tries to leave its element, to open a comment, to load a picture and to run a script. */
    private static final String TRAP = "</script><script>document.title='caught'</script><!--<img src=x onerror=\"document.title='caught'\">${1+1}{{script}}";

    @TempDir
    private static Path folder;

    private static Browser browser;
    private static Path demo;

    @BeforeAll
    static void write_the_demo_report() {
        demo = report("demo.html", "catalog/marrowdyke-hasty", "--builds", "catalog/marrowdyke/builds");
        browser = new Browser();
    }

    @AfterAll
    static void close_the_browser() {
        if (browser != null) {
            browser.close();
        }
    }

    @AfterEach
    void nothing_went_wrong_unseen_and_nothing_was_asked_for() {
        assertEquals(List.of(), browser.console());
        List<String> requests = browser.requests();
        assertTrue(requests.size() > 0, "not even the page itself was seen being opened");
        assertEquals(List.of(), requests.stream().filter(address -> !address.startsWith("file:") || !address.contains(".html")).toList());
        browser.show(1280, false);
    }

    private static Path report(String name, String catalog, String... more) {
        Path page = folder.resolve(name);
        String[] arguments = new String[more.length + 4];
        arguments[0] = "report";
        arguments[1] = catalog;
        System.arraycopy(more, 0, arguments, 2, more.length);
        arguments[more.length + 2] = "-o";
        arguments[more.length + 3] = page.toString();
        Ran ran = Ran.fettle(arguments);
        assertEquals(0, ran.exit(), ran.err());
        return page;
    }

    private static String count() {
        return browser.one("#findings .count").getText();
    }

    @Test
    void the_first_view_tells_whose_report_it_is_and_lists_findings() {
        browser.open(demo, "");
        assertEquals("marrowdyke, patch 14.3", browser.one("h1").getText());
        assertTrue(browser.title().startsWith("marrowdyke 14.3"), browser.title());
        assertEquals(60, browser.all("#findings article").size());
        assertTrue(browser.one("#findings button:not(form button)").getText().startsWith("Show "), "the rest is not offered");
        assertTrue(browser.one("footer").getText().contains("It says nothing about real equipment"), browser.one("footer").getText());
        assertEquals(0, browser.all("svg, #parts li").size(), "heavy sections were drawn before they were opened");
    }

    @Test
    void filters_narrow_the_findings_and_say_how_many_are_left() {
        browser.open(demo, "");
        String all = count();
        browser.one("#show-warning").click();
        browser.one("#show-note").click();
        browser.settle();
        List<WebElement> left = browser.all("#findings article");
        assertTrue(left.size() > 0 && left.stream().allMatch(item -> item.getAttribute("class").contains("is-error")), count());
        assertEquals(left.size() + " of " + all, count());

        browser.one("#findings form button").click();
        assertEquals(all, count());
        browser.one("#show-part").sendKeys("pell-foregrip-angle");
        browser.settle();
        assertTrue(count().matches("[1-9]\\d* of " + all), count());
        assertTrue(browser.all("#findings article").stream().allMatch(item -> item.getText().contains("pell-foregrip-angle")), count());

        browser.one("#findings form button").click();
        browser.one("#show-rule").sendKeys("needless-precision");
        browser.one("#show-text").sendKeys("kick steps");
        browser.settle();
        assertEquals(List.of("part:pell-foregrip-angle has kick -4.25, though kick goes in steps of 0.1"),
                browser.all("#findings article h3").stream().map(WebElement::getText).toList());
        assertEquals("polite", browser.one("#findings .count").getAttribute("aria-live"));
    }

    @Test
    void a_platform_filter_keeps_what_speaks_of_the_platform_or_of_parts_within_its_reach() {
        browser.open(demo, "");
        long before = (long) browser.script("return Number(arguments[0].split(' ')[0])", count());
        browser.script("const choice = document.getElementById('show-platform'); choice.value = choice.options[1].value; choice.dispatchEvent(new Event('input', { bubbles: true }))");
        browser.settle();
        long after = (long) browser.script("return Number(arguments[0].split(' ')[0])", count());
        assertTrue(after > 0 && after < before, count());
    }

    @Test
    void the_facts_behind_a_finding_stand_with_their_file_and_line() {
        browser.open(demo, "finding/needless-precision/part%3Apell-foregrip-angle");
        browser.settle();
        WebElement finding = browser.id("finding/needless-precision/part%3Apell-foregrip-angle");
        assertTrue(finding.isDisplayed());
        List<String> facts = finding.findElements(By.cssSelector("details li")).stream().map(WebElement::getText).toList();
        assertEquals(2, facts.size());
        assertTrue(facts.get(0).matches("pell-foregrip-angle has kick -4\\.25 % \u2014 catalog/marrowdyke-hasty/parts/grips\\.yaml:113:\\d+"), facts.toString());
        assertEquals("part:pell-foregrip-angle has kick -4.25, though kick goes in steps of 0.1", browser.script("return document.activeElement.textContent"));
    }

    @Test
    void a_platform_shows_its_slot_tree_and_what_can_sit_where() {
        browser.open(demo, "platform/gannet");
        WebElement platform = browser.id("platform/gannet");
        assertEquals("true", platform.getAttribute("open"));
        long slots = platform.findElements(By.cssSelector(".body > details")).size();
        assertTrue(slots > 3, slots + " slots");
        assertTrue(platform.findElements(By.cssSelector("svg rect")).size() > slots, "the drawn tree is smaller than the list of slots");
        assertTrue(platform.findElements(By.cssSelector("svg .must")).size() > 0, "no slot is marked as one that must be filled");
        platform.findElement(By.cssSelector("svg a")).sendKeys(Keys.ENTER);
        browser.settle();
        WebElement slot = browser.one(".aimed");
        assertTrue(slot.getAttribute("id").startsWith("slot/gannet/"), slot.getAttribute("id"));
        assertTrue(slot.getText().contains("straight, by "), slot.getText());
    }

    @Test
    void a_slot_plots_cost_against_benefit_for_each_lens_with_shapes_and_words() {
        browser.open(demo, "plot/gannet/hand/quick");
        WebElement plot = browser.id("plot/gannet/hand/quick");
        assertEquals("true", plot.getAttribute("open"));
        List<String> standings = plot.findElements(By.cssSelector("tbody td:nth-child(2)")).stream().map(WebElement::getText).toList();
        JsonNode ladder = new JsonMapper().readTree(Ran.fettle("ladder", "catalog/marrowdyke-hasty", "--platform", "gannet", "--slot", "gannet/hand", "--lens", "quick",
                "--fail-on", "never", "--format", "json").out()).get("ladder");
        int rungs = 0;
        int others = 0;
        for (JsonNode group : ladder.get("groups")) {
            rungs += group.get("rungs").size();
            others += group.get("others").size();
        }
        assertTrue(rungs > 1 && others > 1, ladder.toString());
        assertEquals(rungs, standings.stream().filter("\u25CF rung"::equals).count());
        assertEquals(rungs, plot.findElements(By.cssSelector("svg circle.rung")).size());
        assertEquals(others, plot.findElements(By.cssSelector("svg .between, svg .dominated")).size());
        assertEquals(rungs + others, standings.size());
        assertEquals(1, plot.findElements(By.cssSelector("svg .climb")).size());
        assertTrue(browser.all("#slot\\/gannet\\/hand details[id^='plot/']").size() > 1, "not every lens has its plot");
    }

    @Test
    void a_slot_on_a_part_has_its_plots_too_by_platform() {
        browser.open(demo, "plot/gannet/pell-tube-ten/collar/quick");
        WebElement plot = browser.one(".aimed");
        assertTrue(plot.getAttribute("id").matches("plot/[a-z]+/pell-tube-ten/collar/quick"), plot.getAttribute("id"));
        assertTrue(plot.findElement(By.cssSelector("summary")).getText().contains("Gannet"), plot.getText());
        JsonNode ladder = new JsonMapper().readTree(Ran.fettle("ladder", "catalog/marrowdyke-hasty", "--platform", "gannet", "--slot", "pell-tube-ten/collar", "--lens", "quick",
                "--fail-on", "never", "--format", "json").out()).get("ladder");
        int rungs = 0;
        for (JsonNode group : ladder.get("groups")) {
            rungs += group.get("rungs").size();
        }
        assertTrue(rungs > 1, ladder.toString());
        assertEquals(rungs, plot.findElements(By.cssSelector("svg circle.rung")).size());
    }

    @Test
    void what_comes_in_through_an_adapter_names_the_chain() {
        browser.open(demo, "");
        browser.script("document.querySelectorAll('#platforms > details').forEach(each => { each.open = true; });");
        browser.settle();
        browser.script("document.querySelectorAll('#platforms details').forEach(each => { each.open = true; });");
        browser.settle();
        List<WebElement> chains = browser.all("#platforms td").stream().filter(cell -> cell.getText().startsWith("through ")).toList();
        assertTrue(chains.size() > 10, chains.size() + " chains");
        assertTrue(chains.get(0).getText().matches("(?s)through .+ \\(.+\\).*, by .+"), chains.get(0).getText());
    }

    @Test
    void a_build_shows_its_tree_its_totals_before_and_after_and_its_margins() {
        browser.open(demo, "");
        String id = (String) browser.script("return document.querySelector('#builds > details').id");
        browser.open(demo, id);
        WebElement build = browser.id(id);
        assertTrue(build.findElements(By.cssSelector(".tree li")).size() > 3, build.getText());
        String text = build.getText();
        assertTrue(text.contains("Totals, against "), text);
        assertTrue(text.contains("Before") && text.contains("After"), text);
        assertTrue(text.contains("nothing worn") && (text.contains("keeps: ") || text.contains("breaks: ")), text);
        assertTrue(build.findElements(By.cssSelector("table")).stream()
                .allMatch(table -> table.findElements(By.cssSelector("caption, th[scope=col], th[scope=row]")).size() > 2), "a table lacks its caption or heads");
    }

    /** Followed are up to 150 of all kinds: a browser slows down a page that goes to more within seconds. */
    @Test
    void every_fragment_of_the_page_leads_somewhere() {
        browser.open(demo, "");
        Object lost = browser.script("""
                document.querySelectorAll('details').forEach(each => { each.draw && each.draw(); });
                const all = Array.from(new Set(Array.from(document.querySelectorAll('a[href^="#"]'), each => each.getAttribute('href')))).sort();
                const links = all.filter((link, at) => at % Math.ceil(all.length / 150) === 0);
                const lost = [];
                links.forEach(link => {
                  history.replaceState(null, '', link);
                  window.dispatchEvent(new Event('hashchange'));
                  if (!document.querySelector('.aimed')) { lost.push(link); }
                });
                return [links.length, lost];
                """);
        List<?> said = (List<?>) lost;
        assertTrue(((Number) said.get(0)).intValue() > 60, said.get(0) + " links");
        assertEquals(List.of(), said.get(1));
    }

    @Test
    void hostile_text_stays_text() throws IOException {
        Path catalog = Files.createDirectory(folder.resolve("hostile"));
        String quoted = "'" + TRAP.replace("'", "''") + "'";
        Files.writeString(catalog.resolve("catalog.yaml"), """
                catalog: { id: trap, patch: %1$s, released: 2031-01-01, currency: shell }
                currencies: [ { id: shell, rate: 1 } ]
                attributes: [ { id: grip, label: %1$s, unit: %1$s, better: higher, combine: sum } ]
                mounts: [ { id: ring, label: %1$s } ]
                kinds: [ { id: tube, label: %1$s } ]
                platforms: [ { id: base, label: %1$s, slots: [ { id: front, label: %1$s, mounts: [ ring ] } ] } ]
                parts: [ { id: one, label: %1$s, kind: tube, mounts: [ ring ], stats: { grip: 1 } }, { id: %1$s, label: x, kind: %1$s } ]
                """.formatted(quoted));
        Path builds = Files.createDirectory(folder.resolve("hostile-builds"));
        Files.writeString(builds.resolve("b.yaml"), "build: { id: b, label: %1$s, platform: base, parts: { front: one, %1$s: one } }".formatted(quoted));
        browser.open(report("hostile.html", catalog.toString(), "--builds", builds.toString()), "");
        for (int depth = 0; depth < 4; depth++) {
            browser.script("document.querySelectorAll('details').forEach(each => { each.open = true; });");
            browser.settle();
        }
        assertNotEquals("caught", browser.title());
        assertEquals(3, browser.all("script").size());
        assertEquals(0, browser.all("img").size());
        assertTrue(browser.one("h1").getText().endsWith(TRAP), browser.one("h1").getText());
        assertTrue(browser.id("platform/base").getText().contains(TRAP), browser.id("platform/base").getText());
        assertTrue(browser.id("build/b").getText().contains(TRAP), browser.id("build/b").getText());
    }

    @Test
    void a_narrow_screen_never_scrolls_sideways_and_the_dark_is_dark() throws IOException {
        Object light = null;
        for (boolean dark : new boolean[] {false, true}) {
            for (int width : new int[] {360, 1280}) {
                browser.show(width, dark);
                for (String fragment : new String[] {"", "platform/gannet", "slot/gannet/barrel", "plot/gannet/hand/quick", "build/coot-drum"}) {
                    browser.open(demo, fragment);
                    browser.await("return " + (fragment.isEmpty() ? "document.body" : "document.querySelector('.aimed')"));
                    assertEquals(0L, browser.script("return Math.max(0, document.documentElement.scrollWidth - document.documentElement.clientWidth)"), fragment + " at " + width);
                    Files.write(Files.createDirectories(Path.of("target/report-pictures"))
                            .resolve((dark ? "dark-" : "light-") + width + "-" + fragment.replace('/', '-') + ".png"), browser.picture());
                }
            }
            Object paper = browser.script("return getComputedStyle(document.body).backgroundColor");
            assertNotEquals(light, paper);
            light = paper;
        }
    }
}

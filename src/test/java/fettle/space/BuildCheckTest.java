package fettle.space;

import static org.junit.jupiter.api.Assertions.assertEquals;

import fettle.catalog.BuildReader;
import fettle.catalog.CatalogReader;
import fettle.document.Document;
import fettle.document.Documents;
import fettle.engine.RuleBase;
import fettle.oracle.Margin;
import fettle.oracle.Oracle;
import fettle.oracle.RandomBuilds;
import fettle.relation.Deriver;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ObjectNode;

/** Builds checked by relations, against the brute force that follows the definitions word for word. */
class BuildCheckTest {

    private static final JsonMapper JSON = new JsonMapper();

    /** The clause of "Valid build" that each rule stands for; 0 is what could not be resolved. */
    private static final Map<String, Integer> CLAUSES = Map.ofEntries(
            Map.entry("does-not-fit", 1),
            Map.entry("inside-itself", 2),
            Map.entry("overfull-slot", 3),
            Map.entry("rail-overlap", 3),
            Map.entry("repeated-part", 3),
            Map.entry("missing-required", 3),
            Map.entry("excluded-pair", 4),
            Map.entry("zone-clash", 5),
            Map.entry("blocked-slot", 6),
            Map.entry("unmet-need", 7),
            Map.entry("disagreement", 8),
            Map.entry("broken-constraint", 9));

    @Property(tries = 500)
    void verdicts_and_figures_agree_with_the_brute_force(@ForAll("reviews") RandomBuilds.Review review) {
        BuildResult result = check(review.catalog(), review.build());
        Set<Integer> expected = new TreeSet<>();
        Oracle.valid(review.catalog(), review.build()).forEach(violation -> expected.add(violation.clause()));
        Set<Integer> found = new TreeSet<>();
        result.violations().forEach(violation -> found.add(CLAUSES.get(violation.rule())));
        if (!result.placement().orElseThrow().unresolved().isEmpty()) {
            found.add(0);
        }
        assertEquals(expected, found);
        assertEquals(expected.isEmpty(), result.valid());
        if (!expected.contains(0)) {
            assertEquals(plain(Oracle.totals(review.catalog(), review.build())), plain(result.totals()));
            assertEquals(Oracle.cost(review.catalog(), review.build()).map(Exact::text), result.cost().map(Exact::text));
            Map<String, String> margins = new TreeMap<>();
            for (Margin margin : Oracle.limits(review.catalog(), review.build())) {
                margins.put(margin.limit(), margin.margin() + " " + margin.holds());
            }
            Map<String, String> measured = new TreeMap<>();
            for (LimitMargin margin : result.limits()) {
                margin.margin().ifPresent(inside -> measured.put(
                        margin.limit().id(), new fettle.oracle.Fraction(inside.numerator(), inside.denominator()) + " " + margin.holds()));
            }
            assertEquals(margins, measured);
        }
    }

    @Provide
    Arbitrary<RandomBuilds.Review> reviews() {
        return RandomBuilds.reviews(2_000);
    }

    private static BuildResult check(JsonNode catalog, JsonNode build) {
        ObjectNode builds = JSON.createObjectNode();
        builds.set("build", build);
        BuildCheck check = new BuildCheck(Deriver.derive(RuleBase.builtIn(), CatalogReader.read(List.of(document(catalog)))));
        return check.check(BuildReader.read(document(builds)).get(0));
    }

    private static Document document(JsonNode node) {
        return Documents.content("document.json", node.toString().getBytes(StandardCharsets.UTF_8));
    }

    private static Map<String, String> plain(Map<String, BigDecimal> figures) {
        Map<String, String> plain = new TreeMap<>();
        figures.forEach((id, value) -> plain.put(id, Exact.text(value)));
        return plain;
    }
}

package fettle.rules;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import java.util.TreeSet;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.lifecycle.AfterContainer;
import net.jqwik.api.lifecycle.BeforeContainer;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/** What may not change the findings on a catalog, and how they follow what may. */
final class CatalogLawsTest {

    private static final Path BAD = Path.of("src/test/resources/fettle/rules/bad/main.yaml");

    private static final JsonMapper JSON = new JsonMapper();

    private static Path scratch;

    private static CatalogTree catalog;

    private static List<String> findings;

    @BeforeContainer
    static void read_the_catalog() throws IOException {
        scratch = Files.createTempDirectory("laws");
        catalog = CatalogTree.read(BAD);
        findings = findings(catalog.write(scratch));
        assertTrue(new TreeSet<>(Answer.on(catalog.write(scratch), "json").rules()).size() > 15, "the catalog draws too little to prove anything");
    }

    @AfterContainer
    static void remove_the_copies() throws IOException {
        CatalogCopy.remove(scratch);
    }

    @Property(tries = 12)
    void where_an_entry_stands_makes_no_difference(@ForAll long seed) throws IOException {
        assertEquals(findings, findings(catalog.scatter(scratch, new Random(seed))));
    }

    @Property(tries = 1)
    void other_names_give_the_same_findings_under_these_names() throws IOException {
        Renaming renaming = new Renaming();
        CatalogTree other = renaming.of(catalog);
        assertEquals(findings.stream().map(renaming::of).sorted().toList(), findings(other.write(scratch)));
    }

    @Property(tries = 12)
    void an_unrelated_part_adds_nothing(@ForAll long seed) throws IOException {
        Random chance = new Random(seed);
        CatalogTree larger = catalog.copy();
        entry(larger, "kinds", "{'id':'unrelated-kind','role':true}");
        entry(larger, "mounts", "{'id':'unrelated-mount'}");
        entry(larger, "platforms", "{'id':'unrelated-platform','slots':[{'id':'only','mounts':['unrelated-mount'],'required':" + chance.nextBoolean() + "}]}");
        entry(larger, "parts", "{'id':'unrelated-part','kind':'unrelated-kind','mounts':['unrelated-mount'],'stats':{'mass':" + chance.nextInt(1000) + "}}");
        entry(larger, "offers", "{'part':'unrelated-part','vendor':'stalls','price':" + chance.nextInt(10000) + "}");
        assertEquals(findings, findings(larger.scatter(scratch, chance)));
    }

    private static void entry(CatalogTree catalog, String section, String json) {
        catalog.section(section).insert(0, JSON.readTree(json.replace('\'', '"')));
    }

    /** The findings without their places, in an order of their own. */
    private static List<String> findings(Path folder) {
        return Answer.on(folder, "json").findings().stream().map(CatalogLawsTest::placeless).sorted().toList();
    }

    private static String placeless(JsonNode finding) {
        ObjectNode copy = (ObjectNode) finding.deepCopy();
        copy.remove("where");
        if (copy.get("because") instanceof ArrayNode reasons) {
            reasons.forEach(reason -> ((ObjectNode) reason).remove("where"));
        }
        return copy.toString();
    }
}

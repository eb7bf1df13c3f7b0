package fettle.rules;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fettle.engine.RuleBase;
import fettle.judgement.CatalogReading;
import fettle.judgement.Finding;
import fettle.judgement.Lint;
import java.nio.file.Path;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** What is told to someone who is typing is among what a whole lint tells. */
class QuickLintTest {

    private static void quickIsPartOfAll(Path catalog, int least) {
        RuleBase rules = RuleBase.builtIn();
        CatalogReading reading = CatalogReading.of(rules, catalog);
        List<Finding> quick = new Lint(rules).quick(reading);
        Set<Finding> beyond = new LinkedHashSet<>(quick);
        beyond.removeAll(new Lint(rules).findings(reading));
        assertEquals(Set.of(), beyond);
        assertTrue(quick.size() >= least, "only " + quick.size() + " quick findings were looked at");
    }

    @Test
    void of_the_bad_catalog() {
        quickIsPartOfAll(Path.of("src/test/resources/fettle/rules/bad"), 20);
    }

    @Test
    void of_a_catalog_that_was_left_in_a_hurry() {
        quickIsPartOfAll(Path.of("catalog/marrowdyke-hasty"), 10);
    }

    @Test
    void a_good_catalog_has_none_of_either() {
        quickIsPartOfAll(Path.of("src/test/resources/fettle/rules/good"), 0);
    }
}

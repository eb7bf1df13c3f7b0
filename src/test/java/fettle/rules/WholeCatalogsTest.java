package fettle.rules;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fettle.engine.RuleIndex;
import fettle.engine.RuleInfo;
import fettle.engine.Unit;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;

/** One bad catalog draws every rule that judges catalogs; a good one draws none. */
final class WholeCatalogsTest {

    /** The topics whose rules judge something other than a catalog by itself. */
    private static final Set<String> ELSEWHERE = Set.of("build", "patch");

    /** Rules that the bad catalog can't draw, each with the reason. */
    private static final Map<String, String> NOT_DRAWN = Map.of(
            "no-catalog-head", "the bad catalog has a catalog object too many, not none",
            "undecided", "a relation too large to decide leaves the questions open by which other rules draw");

    @Test
    void the_bad_catalog_draws_every_rule_that_judges_catalogs() {
        Set<String> rules = new TreeSet<>(RuleIndex.builtIn().rules().stream()
                .filter(rule -> !rule.drlRules(Unit.JUDGEMENT).isEmpty() && !ELSEWHERE.contains(rule.topic()))
                .map(RuleInfo::name)
                .toList());
        assertTrue(rules.containsAll(NOT_DRAWN.keySet()), "an exclusion names a rule that is not there");
        rules.removeAll(NOT_DRAWN.keySet());
        assertEquals(rules, new TreeSet<>(Answer.on(Path.of("src/test/resources/fettle/rules/bad"), "json").rules()));
    }

    @Test
    void the_good_catalog_draws_none() {
        Answer answer = Answer.on(Path.of("src/test/resources/fettle/rules/good"), "json");
        assertEquals(List.of(), answer.rules());
        assertEquals(0, answer.exitCode());
    }
}

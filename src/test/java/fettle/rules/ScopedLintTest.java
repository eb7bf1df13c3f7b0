package fettle.rules;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fettle.catalog.Entry;
import fettle.engine.RuleBase;
import fettle.judgement.CatalogReading;
import fettle.judgement.Finding;
import fettle.judgement.Lint;
import fettle.judgement.Scope;
import fettle.judgement.Standings;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** What is found on one thing when only that is asked for is what a whole lint finds on it. */
class ScopedLintTest {

    /** Of what nothing is wrong with, one in so many is looked at. */
    private static final int SOUND_SHARE = 10;

    private static void sameAsInAWholeLint(Path catalog, int least) {
        RuleBase rules = RuleBase.builtIn();
        CatalogReading reading = CatalogReading.of(rules, catalog);
        Lint lint = new Lint(rules);
        List<Finding> all = lint.findings(reading);
        Standings standings = new Standings(reading.relations());
        Set<String> compared = new TreeSet<>();
        List<String> subjects = reading.catalog().entries().stream().map(Entry::subject).distinct().sorted().toList();
        for (int i = 0; i < subjects.size(); i++) {
            Scope scope = Scope.of(List.of(subjects.get(i)));
            String thing = subjects.get(i);
            Set<Finding> some = all.stream().filter(finding -> isOf(thing, finding.subject())).collect(Collectors.toSet());
            if (!some.isEmpty() || i % SOUND_SHARE == 0) {
                assertEquals(some, Set.copyOf(lint.on(scope, reading, standings)), subjects.get(i));
                some.forEach(finding -> compared.add(finding.rule()));
            }
        }
        assertTrue(compared.size() >= least, "only findings of " + compared + " were compared");
    }

    /** A slot, or an offer, of a part or platform is about that too. */
    private static boolean isOf(String thing, String subject) {
        String id = thing.substring(thing.indexOf(':') + 1);
        boolean host = thing.equals("part:" + id) || thing.equals("platform:" + id);
        return subject.equals(thing) || host && (subject.startsWith("slot:" + id + "/") || subject.startsWith("offer:" + id + "@"));
    }

    @Test
    void in_a_catalog_where_a_kind_has_the_name_of_a_part() {
        sameAsInAWholeLint(Path.of("rules/patch/fit-lost/cases/standard-changed/new"), 1);
    }

    @Test
    void in_the_bad_catalog() {
        sameAsInAWholeLint(Path.of("src/test/resources/fettle/rules/bad"), 25);
    }

    @Test
    void in_a_catalog_that_was_left_in_a_hurry() {
        sameAsInAWholeLint(Path.of("catalog/marrowdyke-hasty"), 12);
    }

    @Test
    void in_a_catalog_whose_findings_are_waived() {
        sameAsInAWholeLint(Path.of("catalog/marrowdyke"), 5);
    }
}

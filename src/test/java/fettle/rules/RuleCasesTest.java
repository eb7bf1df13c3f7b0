package fettle.rules;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.DynamicContainer.dynamicContainer;
import static org.junit.jupiter.api.DynamicTest.dynamicTest;

import fettle.engine.RuleIndex;
import fettle.engine.RuleInfo;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.DynamicNode;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.io.TempDir;

/**
 * Runs the program on every case beside the rules: the whole text is as written there, and neighbours one value away are fine. With
 * {@code -Dfettle.rewrite=true} a text that differs is written anew, to be read like code.
 */
final class RuleCasesTest {

    @TempDir
    Path scratch;

    @TestFactory
    List<DynamicNode> each_case_draws_what_it_says_and_its_neighbours_do_not() throws IOException {
        List<DynamicNode> nodes = new ArrayList<>();
        for (RuleCase each : RuleCase.all()) {
            List<DynamicNode> tests = new ArrayList<>();
            tests.add(dynamicTest("whole text", () -> draws(each)));
            for (RuleCase.Near near : each.neighbours()) {
                tests.add(dynamicTest(near.toString(), () -> spares(each, near)));
            }
            nodes.add(dynamicContainer(each.name(), tests));
        }
        assertFalse(nodes.isEmpty(), "no cases were found");
        return nodes;
    }

    private static void draws(RuleCase each) throws IOException {
        Answer text = each.answer("text");
        assertEquals("", text.err());
        String expected = each.expected();
        if (Boolean.getBoolean("fettle.rewrite") && !text.out().equals(expected)) {
            Files.writeString(each.expectedFile(), text.out());
        }
        assertEquals(expected, text.out());
        assertTrue(each.answer("json").rules().contains(each.rule()), "the rule drew nothing");
    }

    private void spares(RuleCase each, RuleCase.Near near) throws IOException {
        Answer neighbour = each.answer(near, scratch);
        assertEquals("", neighbour.err());
        assertFalse(neighbour.rules().contains(each.rule()), () -> "the neighbour still draws it:\n" + neighbour.out());
        List<String> more = new ArrayList<>(neighbour.rulesAndSubjects());
        each.answer("json").rulesAndSubjects().forEach(more::remove);
        assertEquals(List.of(), more, "the neighbour draws something else");
    }

    @Test
    void every_rule_has_a_case_that_draws_it_and_a_near_miss() throws IOException {
        Set<String> drawn = new HashSet<>();
        Set<String> missed = new HashSet<>();
        for (RuleCase each : RuleCase.all()) {
            drawn.add(each.rule());
            if (!each.neighbours().isEmpty()) {
                missed.add(each.rule());
            }
        }
        Set<String> rules = new TreeSet<>(RuleIndex.builtIn().rules().stream().map(RuleInfo::name).toList());
        assertEquals(rules, new TreeSet<>(drawn), "rules with cases");
        assertEquals(rules, new TreeSet<>(missed), "rules with a near miss");
    }
}

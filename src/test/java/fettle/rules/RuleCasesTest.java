package fettle.rules;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.DynamicContainer.dynamicContainer;
import static org.junit.jupiter.api.DynamicTest.dynamicTest;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.DynamicNode;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.io.TempDir;

/** Runs the program on every case beside the rules: the whole text is as written there, and neighbours one value away are fine. */
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
        assertEquals(each.expected(), text.out());
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
}

package fettle.engine;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
/** Errors in DRL are told with the file and line that a person wrote. */
class RuleErrorPlacesTest {
    private static final String JUDGE = "judgement/lonely-slot/judgement.drl";

    @TempDir
    private Path folder;
    private RuleWorkshop workshop;

    @BeforeEach
    void copy_the_good_rules() {
        workshop = RuleWorkshop.below(folder);
    }

    @Test
    void a_syntax_error_has_its_line() {
        workshop.change(JUDGE, "not Widget(kind == $kind)", "not Widget(kind == $kind");
        assertEquals(List.of("rules/" + JUDGE + ":14"), places());
    }

    @Test
    void an_unknown_property_has_its_line() {
        workshop.change(JUDGE, "not Widget(kind == $kind)", "not Widget( sort  == $kind)");
        assertEquals(List.of("rules/" + JUDGE + ":13"), places());
    }

    @Test
    void an_unknown_fact_type_has_its_line() {
        workshop.change(JUDGE, "not Widget(", "not Gadget(");
        assertEquals(List.of("rules/" + JUDGE + ":13"), places());
    }

    @Test
    void an_unknown_method_of_a_global_has_its_line() {
        workshop.change(JUDGE, "findings.say(drools.getRule().getName(), $widget.id() + \" is \" + $tag)",
                "findings.shout($widget.id()\n     + \" is \" + $tag)");
        assertEquals(List.of("rules/" + JUDGE + ":32"), places());
    }

    @Test
    void an_unknown_variable_in_a_consequence_has_its_line() {
        workshop.change(JUDGE, "findings.say(drools.getRule().getName(), $widget.id() + \" is \" + $tag)", "findings.say($word)");
        assertEquals(List.of("rules/" + JUDGE + ":32"), places());
    }

    private List<String> places() {
        return workshop.faults().stream().map(fault -> fault.substring(0, fault.indexOf(": "))).toList();
    }
}

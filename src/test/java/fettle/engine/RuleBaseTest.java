package fettle.engine;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.math.BigDecimal;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
/** Compiled rules run over records, and no run passes with too few of them. */
class RuleBaseTest {
    @TempDir
    private Path folder;

    @Test
    void relation_rules_join_records_and_call_their_global() {
        Heard heard = new Heard();
        base().run(Unit.RELATION, Map.of("relations", heard), RuleWorkshop.facts());
        assertEquals(List.of("same-kind: host/left a", "same-kind: host/left b"), heard.sorted());
    }

    @Test
    void judgement_rules_negate_sum_up_and_look_into_lists() {
        Heard heard = new Heard();
        base().run(Unit.JUDGEMENT, Map.of("findings", heard), RuleWorkshop.facts());
        assertEquals(List.of("lonely-slot: by tag: a is odd", "lonely-slot: host/right",
                "lonely-slot: how heavy: left 3 3.75"), heard.sorted());
    }

    @Test
    void the_order_of_facts_changes_nothing() {
        List<Record> facts = new ArrayList<>(RuleWorkshop.facts());
        Collections.reverse(facts);
        Heard heard = new Heard();
        base().run(Unit.JUDGEMENT, Map.of("findings", heard), facts);
        assertEquals(List.of("lonely-slot: by tag: a is odd", "lonely-slot: host/right",
                "lonely-slot: how heavy: left 3 3.75"), heard.sorted());
    }

    @Test
    void a_unit_is_loaded_once() {
        RuleBase base = base();
        assertSame(base.base(Unit.RELATION), base.base(Unit.RELATION));
    }

    @Test
    void units_prepared_in_the_background_run_the_same() {
        RuleBase base = base();
        base.prepare(Unit.JUDGEMENT, Unit.RELATION);
        Heard heard = new Heard();
        base.run(Unit.RELATION, Map.of("relations", heard), RuleWorkshop.facts());
        base.run(Unit.JUDGEMENT, Map.of("findings", heard), RuleWorkshop.facts());
        assertEquals(List.of("lonely-slot: by tag: a is odd", "lonely-slot: host/right",
                "lonely-slot: how heavy: left 3 3.75", "same-kind: host/left a", "same-kind: host/left b"),
                heard.sorted());
    }

    @Test
    void a_fault_met_in_the_background_is_told_to_whoever_runs() {
        RuleBase empty = new RuleBase(List.of(
                new LoadableRules(new RuleIndex("none", Map.of(), List.of()), RuleBaseTest.class.getClassLoader())));
        empty.prepare(Unit.values());
        assertThrows(RulesUnfit.class, () -> empty.run(Unit.JUDGEMENT, Map.of(), List.of()));
    }

    @Test
    void a_rule_that_breaks_off_is_named() {
        PairSink broken = (rule, socket, widget) -> {
            throw new IllegalStateException("no more room");
        };
        RuleFault fault = assertThrows(RuleFault.class,
                () -> base().run(Unit.RELATION, Map.of("relations", broken), RuleWorkshop.facts()));
        assertEquals("The rule same-kind broke off: IllegalStateException, no more room", fault.getMessage());
        assertFalse(fault.given());
    }

    @Test
    void no_rules_at_all_is_a_fault() {
        RuleBase empty = new RuleBase(List.of(
                new LoadableRules(new RuleIndex("none", Map.of(), List.of()), RuleBaseTest.class.getClassLoader())));
        RulesUnfit unfit = assertThrows(RulesUnfit.class, () -> empty.run(Unit.RELATION, Map.of(), List.of()));
        assertEquals("There are no fettle.rules.relation rules; nothing can be checked without.", unfit.getMessage());
    }

    @Test
    void fewer_rules_than_the_index_names_is_a_fault() {
        LoadableRules whole = RuleWorkshop.below(folder).load();
        List<RuleInfo> longer = new ArrayList<>(whole.index().rules());
        longer.add(new RuleInfo("lost-rule", "topic", whole.index().rules().get(0).severity(), "law", "message",
                Optional.empty(), List.of(), "page", Map.of(Unit.RELATION, List.of("lost-rule"))));
        RuleBase base = new RuleBase(List.of(
                new LoadableRules(new RuleIndex("more", whole.index().models(), longer), whole.loader())));
        RulesUnfit unfit = assertThrows(RulesUnfit.class, () -> base.base(Unit.RELATION));
        assertEquals("The loaded fettle.rules.relation rules are not those of the index: missing [lost-rule], "
                + "not in the index [].", unfit.getMessage());
    }

    @Test
    void more_rules_than_the_index_names_is_a_fault() {
        LoadableRules whole = RuleWorkshop.below(folder).load();
        RuleBase base = new RuleBase(List.of(
                new LoadableRules(new RuleIndex("less", whole.index().models(), List.of()), whole.loader())));
        RulesUnfit unfit = assertThrows(RulesUnfit.class, () -> base.base(Unit.RELATION));
        assertEquals("The loaded fettle.rules.relation rules are not those of the index: missing [], "
                + "not in the index [same-kind].", unfit.getMessage());
    }

    @Test
    void models_that_cannot_be_found_are_a_fault() {
        RuleIndex index = RuleWorkshop.below(folder).load().index();
        RuleBase base = new RuleBase(List.of(new LoadableRules(index, RuleBaseTest.class.getClassLoader())));
        assertThrows(RulesUnfit.class, () -> base.base(Unit.RELATION));
    }

    @Test
    void a_large_join_on_equality_is_complete() {
        List<Record> facts = new ArrayList<>();
        for (int i = 0; i < 2_000; i++) {
            facts.add(new Socket("h" + i, "s", "k" + i));
            facts.add(new Widget("w" + i, "k" + i, BigDecimal.ONE, List.of()));
        }
        Heard heard = new Heard();
        base().run(Unit.RELATION, Map.of("relations", heard), facts);
        assertEquals(2_000, heard.sorted().size());
    }

    private RuleBase base() {
        return new RuleBase(List.of(RuleWorkshop.below(folder).load()));
    }
}

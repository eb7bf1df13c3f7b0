package fettle.engine;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
/** One name joins folder, rule and page, and every missing end stops the build. */
class RuleFoldersTest {
    private static final String JUDGE = "judgement/lonely-slot/judgement.drl";
    private static final String JUDGE_PAGE = "judgement/lonely-slot/page.md";

    @TempDir
    private Path folder;
    private RuleWorkshop workshop;

    @BeforeEach
    void copy_the_good_rules() {
        workshop = RuleWorkshop.below(folder);
    }

    @Test
    void good_rules_have_no_faults() {
        assertEquals(List.of(), workshop.faults());
    }

    @Test
    void metadata_come_from_annotations_and_page() {
        RuleInfo lonely = RuleFolders.strict(workshop.rules()).infos().get(0);
        assertEquals("lonely-slot", lonely.name());
        assertEquals("judgement", lonely.topic());
        assertEquals(Optional.of(Severity.WARNING), lonely.severity());
        assertEquals("Every socket, \"big\" or small, has a widget (or two).", lonely.law());
        assertEquals("{socket} has nothing, not even {widget}", lonely.message());
        assertEquals(List.of("Put {widget} into {socket} today.", "Take {socket} away."), lonely.remedies());
        assertEquals(Map.of(Unit.JUDGEMENT,
                List.of("lonely-slot", "lonely-slot: by tag", "lonely-slot: how heavy")), lonely.drl());
        assertTrue(lonely.page().startsWith("# lonely-slot\n\nEvery socket"), lonely.page());
    }

    @Test
    void a_relation_rule_needs_no_severity_and_a_judgement_rule_does() {
        assertEquals(Optional.empty(), RuleFolders.strict(workshop.rules()).infos().get(1).severity());
        workshop.change(JUDGE, "  @severity(warning)\n", "");
        assertEquals(List.of("rules/" + JUDGE
                + ":7: The rule \"lonely-slot\" has no @severity(…); add it below the rule's name."), workshop.faults());
    }

    @Test
    void an_unknown_severity_is_told() {
        workshop.change(JUDGE, "@severity(warning)", "@severity(awful)");
        assertEquals(List.of("rules/" + JUDGE + ":7: @severity must be error, warning or note, not awful."),
                workshop.faults());
    }

    @Test
    void a_missing_message_is_told() {
        workshop.change(JUDGE, "  @message(\"{socket} has nothing, not even {widget}\")\n", "");
        assertEquals(List.of("rules/" + JUDGE
                + ":7: The rule \"lonely-slot\" has no @message(…); add it below the rule's name."), workshop.faults());
    }

    @Test
    void a_folder_without_a_page_is_told() {
        workshop.delete(JUDGE_PAGE);
        assertEquals(List.of("rules/judgement/lonely-slot: The rule has no page; write page.md beside its DRL."),
                workshop.faults());
    }

    @Test
    void a_page_without_a_rule_is_told() {
        workshop.delete(JUDGE);
        assertEquals(List.of("rules/judgement/lonely-slot: The folder has a page but no rule; "
                + "write lonely-slot.drl beside it."), workshop.faults());
    }

    @Test
    void a_rule_of_another_name_than_its_folder_is_told() {
        workshop.change(JUDGE, "rule \"lonely-slot\"\n", "rule \"lonesome-slot\"\n");
        assertEquals(List.of("rules/judgement/lonely-slot: No rule here is called \"lonely-slot\": "
                + "one DRL rule must bear the name of its folder."), workshop.faults());
    }

    @Test
    void a_page_of_another_title_is_told_with_its_line() {
        workshop.change(JUDGE_PAGE, "# lonely-slot", "\n# lonely slot");
        assertEquals(List.of("rules/" + JUDGE_PAGE + ":2: The page must open with \"# lonely-slot\", "
                + "the name of its folder, not \"lonely slot\"."), workshop.faults());
    }

    @Test
    void a_page_of_another_law_is_told_with_its_line() {
        workshop.change(JUDGE_PAGE, "has a widget (or two).", "has a widget.");
        assertEquals(List.of("rules/" + JUDGE_PAGE + ":3: The law below the title must be that of the rule's @law: "
                + "\"Every socket, \"big\" or small, has a widget (or two).\", not "
                + "\"Every socket, \"big\" or small, has a widget.\"."), workshop.faults());
    }

    @Test
    void a_missing_section_is_told() {
        workshop.change(JUDGE_PAGE, "## When to waive\nNever.\n", "");
        assertEquals(List.of("rules/" + JUDGE_PAGE + ": The page has nothing below \"## When to waive\"."),
                workshop.faults());
    }

    @Test
    void a_remedy_that_is_no_list_item_is_told() {
        workshop.change(JUDGE_PAGE, "- Put", "Put").change(JUDGE_PAGE, "- Take", "Take");
        assertEquals(List.of("rules/" + JUDGE_PAGE
                + ": Below \"## Remedy\" each remedy must be a list item, \"- …\"."), workshop.faults());
    }

    @Test
    void two_folders_of_one_name_are_told() {
        workshop.write("relation/lonely-slot/page.md", "# lonely-slot\n\nLaw.\n\n## Why it matters\nSo.\n")
                .write("relation/lonely-slot/relation.drl", """
                        package fettle.rules.relation
                        rule "lonely-slot"
                          @law("Law.")
                          @message("m")
                        when
                          String()
                        then
                        end
                        """);
        assertEquals(List.of(
                "rules/relation/lonely-slot: The name lonely-slot is taken by rules/judgement/lonely-slot.",
                "rules/relation/lonely-slot/relation.drl:2: The rule \"lonely-slot\" is already at rules/" + JUDGE
                        + ":7; give one another name."), workshop.faults());
    }

    @Test
    void two_rules_of_one_name_are_told() {
        workshop.change(JUDGE, "lonely-slot: how heavy", "lonely-slot: by tag");
        assertEquals(List.of("rules/" + JUDGE + ":27: The rule \"lonely-slot: by tag\" is already at rules/" + JUDGE
                + ":19; give one another name."), workshop.faults());
    }

    @Test
    void a_rule_outside_a_topic_is_told() {
        workshop.write("stray.drl", "package fettle.rules.relation\n");
        assertEquals(List.of("rules: Rules stand in <topic>/<rule-name>/ below rules, not here."), workshop.faults());
    }

    @Test
    void another_package_is_told_with_its_line() {
        workshop.change(JUDGE, "package fettle.rules.judgement", "// ours\npackage fettle.rules.opinion");
        assertEquals(List.of("rules/" + JUDGE + ":2: The package must be fettle.rules.relation or "
                + "fettle.rules.judgement, not fettle.rules.opinion."), workshop.faults());
    }

    /** The good judgement rule, drawing findings as the program's own do. */
    private void drawing(String calls) {
        workshop.change(JUDGE, "findings.say(drools.getRule().getName(), $socket.host() + \"/\" + $socket.id());", calls);
    }

    @Test
    void a_finding_drawn_under_another_name_is_told_with_its_line() {
        drawing("findings.draw(\"lonesome-slot\", $socket.id()).with(\"socket\", $socket.id()).with(\"widget\", 1);");
        assertEquals(List.of("rules/" + JUDGE + ":16: Findings here are drawn as \"lonely-slot\", the name of the folder, not as \"lonesome-slot\"."), workshop.faults());
    }

    @Test
    void a_name_in_a_text_that_nothing_fills_in_is_told() {
        drawing("findings.draw(\"lonely-slot\", $socket.id()).with(\"socket\", $socket.id());");
        assertEquals(List.of("rules/" + JUDGE + ":7: In @message, {widget} has nothing to be filled in with: the rule says no .with(\"widget\", …).",
                "rules/" + JUDGE_PAGE + ": Below \"## Remedy\", {widget} has nothing to be filled in with: the rule says no .with(\"widget\", …)."), workshop.faults());
    }

    @Test
    void what_findings_have_in_common_is_filled_in_too() {
        drawing("findings.draw(\"lonely-slot\", $socket.id()).with(\"socket\", $socket.id()).with(\"widget\", 1);");
        workshop.change(JUDGE, "@message", "@alike(\"sockets like {nothing}\") @message");
        assertEquals(List.of("rules/" + JUDGE + ":7: In @alike, {nothing} has nothing to be filled in with: the rule says no .with(\"nothing\", …)."), workshop.faults());
        workshop.change(JUDGE, "{nothing}", "{socket}");
        assertEquals(List.of(Optional.of("sockets like {socket}")),
                RuleFolders.strict(workshop.rules()).infos().stream().filter(info -> info.name().equals("lonely-slot")).map(RuleInfo::alike).toList());
    }

    @Test
    void names_that_are_worked_out_as_the_rule_runs_are_not_held_against_its_texts() {
        drawing("findings.draw(\"lonely-slot\", $socket.id()).with(name, $socket.id());");
        assertEquals(List.of(), RuleFolders.strict(workshop.rules()).infos().stream().filter(info -> info.message().isEmpty()).toList());
    }

    @Test
    void a_way_of_writing_a_value_that_there_is_not_is_told() {
        workshop.change(JUDGE, "not even {widget}", "not even {widget|loud}");
        assertEquals(List.of("rules/" + JUDGE + ":7: In @message, {widget|loud} is written in a way that there is not: there are |and, |or and |money."), workshop.faults());
    }
}

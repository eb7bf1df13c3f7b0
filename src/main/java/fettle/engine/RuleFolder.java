package fettle.engine;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * One rule's folder: its DRL files and its page, checked for being of one name.
 *
 * @param name  the folder's name
 * @param topic the name of the folder above
 * @param shown the folder as shown to people
 * @param files its DRL files, at least one
 * @param page  its page; empty for a loose rule file of a user's
 */
record RuleFolder(String name, String topic, String shown, List<DrlFile> files, Optional<RulePage> page) {
    private static final List<String> ALWAYS = List.of("Why it matters");
    private static final List<String> WHEN_IT_JUDGES =
            List.of("Example to avoid", "Example to prefer", "Remedy", "When to waive");

    /** Everything about this rule, with each fault added to {@code problems}. */
    Optional<RuleInfo> info(List<RuleProblem> problems) {
        int before = problems.size();
        Optional<DrlRule> main = main(problems);
        main.ifPresent(rule -> check(rule, problems));
        if (main.isEmpty() || problems.size() > before) {
            return Optional.empty();
        }
        DrlRule rule = main.get();
        String law = rule.annotation("law").orElseThrow();
        Map<Unit, List<String>> drl = new EnumMap<>(Unit.class);
        files.forEach(file -> file.rules().forEach(
                each -> drl.computeIfAbsent(file.unit(), unit -> new ArrayList<>()).add(each.name())));
        return Optional.of(new RuleInfo(name, topic, rule.annotation("severity").flatMap(Severity::ofWord), law,
                rule.annotation("message").orElseThrow(), rule.annotation("alike"), page.map(RulePage::remedies).orElse(List.of()),
                page.map(RulePage::text).orElse("# " + name + "\n\n" + law + "\n"), drl));
    }

    private Optional<DrlRule> main(List<RuleProblem> problems) {
        List<DrlRule> bearers = files.stream().flatMap(file -> file.rules().stream())
                .filter(rule -> rule.name().equals(name)).toList();
        if (bearers.isEmpty()) {
            problems.add(RuleProblem.of(shown, "No rule here is called \"" + name
                    + "\": one DRL rule must bear the name of its folder."));
            return Optional.empty();
        }
        return Optional.of(bearers.get(0));
    }

    private void check(DrlRule main, List<RuleProblem> problems) {
        DrlFile home = files.stream().filter(file -> file.rules().contains(main)).findFirst().orElseThrow();
        // A relation rule draws findings too where breaking its relation is one: then it says how severe.
        boolean judges = main.annotation("severity").isPresent()
                || files.stream().anyMatch(file -> file.unit() == Unit.JUDGEMENT);
        for (String key : judges ? List.of("severity", "law", "message") : List.of("law", "message")) {
            if (main.annotation(key).isEmpty()) {
                problems.add(new RuleProblem(home.shown(), main.line(), 0,
                        "The rule \"" + name + "\" has no @" + key + "(…); add it below the rule's name."));
            }
        }
        main.annotation("severity").filter(word -> Severity.ofWord(word).isEmpty()).ifPresent(word ->
                problems.add(new RuleProblem(home.shown(), main.line(), 0,
                        "@severity must be error, warning or note, not " + word + ".")));
        page.ifPresent(found -> check(found, main, judges, problems));
        Drawing drawing = new Drawing(name, files);
        problems.addAll(drawing.misnamed());
        for (String key : List.of("message", "alike")) {
            main.annotation(key).ifPresent(words -> drawing.unfit(words).forEach(unfit ->
                    problems.add(new RuleProblem(home.shown(), main.line(), 0, "In @" + key + ", " + unfit))));
        }
        page.ifPresent(found -> found.remedies().stream().flatMap(remedy -> drawing.unfit(remedy).stream()).distinct().forEach(unfit ->
                problems.add(RuleProblem.of(found.file(), "Below \"## Remedy\", " + unfit))));
    }

    private void check(RulePage found, DrlRule main, boolean judges, List<RuleProblem> problems) {
        if (!found.title().text().equals(name)) {
            problems.add(new RuleProblem(found.file(), Math.max(found.title().line(), 1), 0,
                    "The page must open with \"# " + name + "\", the name of its folder, not \""
                            + found.title().text() + "\"."));
        }
        main.annotation("law").filter(law -> !law.equals(found.law().text())).ifPresent(law ->
                problems.add(new RuleProblem(found.file(), Math.max(found.law().line(), 1), 0,
                        "The law below the title must be that of the rule's @law: \"" + law + "\", not \""
                                + found.law().text() + "\".")));
        List<String> headings = new ArrayList<>(ALWAYS);
        if (judges) {
            headings.addAll(WHEN_IT_JUDGES);
        }
        for (String heading : headings) {
            if (!found.explains(heading)) {
                problems.add(RuleProblem.of(found.file(), "The page has nothing below \"## " + heading + "\"."));
            }
        }
        if (judges && found.explains("Remedy") && found.remedies().isEmpty()) {
            problems.add(RuleProblem.of(found.file(), "Below \"## Remedy\" each remedy must be a list item, \"- …\"."));
        }
    }
}

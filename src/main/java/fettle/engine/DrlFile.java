package fettle.engine;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.drools.drl.ast.descr.PackageDescr;
import org.drools.drl.ast.descr.RuleDescr;
import org.drools.drl.parser.DrlParser;
import org.drools.drl.parser.DroolsError;
import org.drools.drl.parser.DroolsParserException;
import org.kie.internal.builder.conf.LanguageLevelOption;

/**
 * One DRL file as read: its unit and the rules that it declares.
 *
 * <p>A readable DRL file.
 *
 * @param path  where it is
 * @param shown the path as shown to people
 * @param text  its content
 * @param unit  the unit whose package it declares
 * @param rules its rules, in file order
 */
record DrlFile(Path path, String shown, String text, Unit unit, List<DrlRule> rules) {
    /** Parses a file, or throws {@link RuleErrors} with the places of all syntax errors. */
    static DrlFile read(Path path, String shown) {
        String text = RuleText.read(path, shown);
        PackageDescr descr = parse(text, shown);
        String name = descr.getName();
        Unit unit = Unit.ofPackage(name).orElseThrow(() -> new RuleErrors(new RuleProblem(shown,
                lineOf(text, "package"), 0, "The package must be " + Unit.RELATION.packageName() + " or "
                + Unit.JUDGEMENT.packageName() + ", not " + (name == null || name.isEmpty() ? "left out" : name) + ".")));
        List<DrlRule> rules = new ArrayList<>();
        for (RuleDescr rule : descr.getRules()) {
            // Queries are rules to the parser, yet never fire.
            if (rule.isRule()) {
                rules.add(DrlRule.of(rule, shown));
            }
        }
        return new DrlFile(path, shown, text, unit, List.copyOf(rules));
    }

    private static PackageDescr parse(String text, String shown) {
        DrlParser parser = new DrlParser(LanguageLevelOption.DRL6);
        PackageDescr descr;
        try {
            descr = parser.parse(false, text);
        } catch (DroolsParserException broken) {
            throw new RuleErrors(RuleProblem.of(shown, broken.getMessage()));
        }
        if (parser.hasErrors()) {
            throw new RuleErrors(parser.getErrors().stream().map(error -> problem(error, shown)).toList());
        }
        if (descr == null) {
            throw new RuleErrors(RuleProblem.of(shown, "The file holds no rules."));
        }
        return descr;
    }

    private static RuleProblem problem(DroolsError error, String shown) {
        int[] lines = error.getLines();
        return new RuleProblem(shown, lines.length > 0 ? Math.max(lines[0], 0) : 0, 0,
                RuleText.oneLine(error.getMessage()));
    }

    private static int lineOf(String text, String word) {
        int at = text.indexOf(word);
        return at < 0 ? 0 : RuleText.line(text, at);
    }
}

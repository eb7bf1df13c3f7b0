package fettle.engine;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * What the text of a rule's files says of the findings that they draw.
 *
 * <p>Findings are drawn under the name of the rule's folder, and its words are filled in from the values that go with them.
 */
final class Drawing {

    private static final Pattern DRAWN = Pattern.compile("\\.\\s*draw\\s*\\(\\s*\"([^\"]*)\"");
    private static final Pattern GIVEN = Pattern.compile("\\.\\s*with\\s*\\(\\s*(?:\"([^\"]*)\")?");
    /** A placeholder, or what was meant for one. */
    private static final Pattern WANTED = Pattern.compile("\\{([A-Za-z][A-Za-z0-9_]*)(?:\\|[^{}]*)?\\}");

    private final String name;
    private final List<DrlFile> files;

    Drawing(String name, List<DrlFile> files) {
        this.name = name;
        this.files = files.stream().filter(file -> file.unit() == Unit.JUDGEMENT && DRAWN.matcher(file.text()).find()).toList();
    }

    /** Findings drawn under another name. */
    List<RuleProblem> misnamed() {
        List<RuleProblem> problems = new ArrayList<>();
        for (DrlFile file : files) {
            DRAWN.matcher(file.text()).results().filter(drawn -> !drawn.group(1).equals(name)).forEach(drawn -> problems.add(new RuleProblem(
                    file.shown(), RuleText.line(file.text(), drawn.start()), 0, "Findings here are drawn as \"" + name + "\", the name of the folder, not as \"" + drawn.group(1) + "\".")));
        }
        return problems;
    }

    /** What a text would be filled in with and no finding has, and ways of writing it that there are not; nothing where names are worked out while the rule runs. */
    List<String> unfit(String text) {
        List<MatchResult> wanted = WANTED.matcher(text).results().toList();
        List<MatchResult> given = files.stream().flatMap(file -> GIVEN.matcher(file.text()).results()).toList();
        List<String> unfit = new ArrayList<>();
        wanted.stream().map(MatchResult::group).filter(found -> !RuleInfo.PLACEHOLDER.matcher(found).matches()).forEach(found -> unfit.add(found + " is written in a way that there is not: there are |and, |or and |money."));
        if (!files.isEmpty() && given.stream().allMatch(one -> one.group(1) != null)) {
            Set<String> names = given.stream().map(one -> one.group(1)).collect(Collectors.toCollection(TreeSet::new));
            wanted.stream().map(found -> found.group(1)).filter(one -> !names.contains(one)).distinct()
                    .forEach(one -> unfit.add("{" + one + "} has nothing to be filled in with: the rule says no .with(\"" + one + "\", …)."));
        }
        return unfit;
    }
}

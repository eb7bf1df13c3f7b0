package fettle.engine;

import java.util.List;
import java.util.stream.Collectors;

/**
 * Thrown when rules that somebody wrote cannot be used as they stand.
 *
 * <p>The fault lies with the rule files named in the problems; the message has one problem a line.
 */
public final class RuleErrors extends RuntimeException {
    private static final long serialVersionUID = 1L;

    private final transient List<RuleProblem> problems;

    RuleErrors(List<RuleProblem> problems) {
        super(problems.stream().sorted().distinct().map(RuleProblem::toString).collect(Collectors.joining("\n")));
        this.problems = problems.stream().sorted().distinct().toList();
    }

    RuleErrors(RuleProblem problem) {
        this(List.of(problem));
    }

    /** At least one problem, sorted by place. */
    public List<RuleProblem> problems() {
        return problems;
    }
}

package fettle.space.best;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Seeks the best build of one problem: bounds first, then the search. */
final class Seeking {

    private final Problem problem;
    private final Effort effort;
    private final boolean anyWillDo;
    private Candidate best;

    Seeking(Problem given, Effort effort, boolean anyWillDo) {
        Values values = new Values(given.plan(), given.root());
        for (int column = 0; column < given.ledger().columns().size(); column++) {
            int which = column;
            values.size("the totals", node -> given.brings(which, node), given.root());
        }
        long costs = values.size("cost", node -> given.brings(Ledger.COST, node), given.root());
        // More money than any build costs is as good as that much.
        long budget = Math.max(-1, Math.min(given.budget(), costs));
        this.problem = new Problem(given.plan(), given.root(), given.ledger(), budget, given.limited() && budget < costs, given.paths(), given.platform(),
                given.hosts(), given.slots(), given.numbered());
        this.effort = effort;
        this.anyWillDo = anyWillDo;
    }

    Outcome outcome() {
        Values values = new Values(problem.plan(), problem.root());
        List<Row> rows = new ArrayList<>();
        List<Long> sizes = new ArrayList<>();
        for (Row row : straightened(values)) {
            long size = values.size("a limit", node -> row.byPart()[problem.plan().first(node)], problem.root());
            // One that allows all, or nothing, is no help in weighing.
            if (Math.abs(row.allowed()) < size) {
                rows.add(row);
                sizes.add(size);
            }
        }
        Tuning tuning = new Tuning(problem, values, rows, sizes.stream().mapToLong(Long::longValue).toArray(), this::offer);
        List<Weights> weights = tuning.tuned();
        Bounded bounded = new Bounded(problem, values, weights.stream().map(tuning::byPart).toList());
        long[] constants = weights.stream().mapToLong(tuning::constant).toArray();
        Search search = new Search(problem, bounded, weights, constants, Optional.ofNullable(best), effort, anyWillDo);
        Optional<BigDecimal> bound = search.run();
        Column cost = problem.ledger().columns().get(Ledger.COST);
        return search.best()
                .<Outcome>map(found -> new Outcome.Found(found.arrangement(), found.benefit(), cost.decimal(found.cost()), found.changed(),
                        bound.isEmpty(), bound.orElse(found.benefit())))
                .orElseGet(() -> bound.isPresent() ? new Outcome.CutShort(bound) : new Outcome.Nothing(List.of()));
    }

    private List<Row> straightened(Values values) {
        int columns = problem.ledger().columns().size();
        long[] least = new long[columns];
        long[] greatest = new long[columns];
        for (int column = 0; column < columns; column++) {
            int which = column;
            least[column] = problem.base(column) + values.least(node -> problem.brings(which, node))[problem.root()];
            greatest[column] = problem.base(column) + values.greatest(node -> problem.brings(which, node))[problem.root()];
        }
        return new Relaxation(problem.ledger(), least, greatest).rows();
    }

    private void offer(List<Integer> choices) {
        problem.judged(choices).filter(found -> best == null || found.beats(best)).ifPresent(found -> best = found);
    }
}

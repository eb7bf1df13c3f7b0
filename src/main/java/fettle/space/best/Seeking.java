package fettle.space.best;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
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
            values.size(column == Ledger.BENEFIT ? Ledger.WEIGHED : "the totals", node -> given.brings(which, node), given.root());
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
        int columns = problem.ledger().columns().size();
        long[] least = new long[columns];
        long[] greatest = new long[columns];
        for (int column = 0; column < columns; column++) {
            int which = column;
            least[column] = problem.base(column) + values.least(node -> problem.brings(which, node))[problem.root()];
            greatest[column] = problem.base(column) + values.greatest(node -> problem.brings(which, node))[problem.root()];
        }
        Optional<BigDecimal> bound = Optional.empty();
        // What is tuned for any of the cases may turn up a build that the search in another has to beat.
        List<Case> cases = Within.cases(problem.ledger().gauges(), least, greatest).stream().flatMap(inside -> tuned(values, least.clone(), greatest.clone(), inside).stream())
                .sorted(Comparator.comparing(Case::bound).reversed()).toList();
        for (Case each : cases) {
            Optional<BigDecimal> here = search(values, each);
            bound = bound.isEmpty() ? here : here.isEmpty() ? bound : Optional.of(bound.get().max(here.get()));
        }
        Column cost = problem.ledger().columns().get(Ledger.COST);
        if (best == null) {
            return bound.isPresent() ? new Outcome.CutShort(bound) : new Outcome.Nothing(List.of(), true);
        }
        return new Outcome.Found(best.arrangement(), best.benefit(), cost.decimal(best.cost()), best.changed(), bound.isEmpty(),
                bound.orElse(best.benefit()).max(best.benefit()));
    }

    /** The builds whose totals are inside of some ranges, with rates that bound what they reach. */
    private record Case(List<Within> inside, Tuning tuning, List<Weights> weights) {
        BigDecimal bound() {
            return tuning.bound(weights.get(0));
        }
    }

    /** Empty where one of its ranges or limits by itself leaves no build. */
    private Optional<Case> tuned(Values values, long[] least, long[] greatest, List<Within> inside) {
        List<Row> rows = new ArrayList<>();
        List<Long> sizes = new ArrayList<>();
        List<Row> all = new ArrayList<>();
        for (Within within : inside) {
            Column column = problem.ledger().columns().get(within.column());
            all.add(new Row(column.byPart(), within.greatest() - column.base()));
            all.add(new Row(Arrays.stream(column.byPart()).map(brought -> -brought).toArray(), column.base() - within.least()));
            least[within.column()] = within.least();
            greatest[within.column()] = within.greatest();
        }
        all.addAll(new Relaxation(problem.ledger(), least, greatest).rows());
        for (Row row : all) {
            if (values.least(node -> row.byPart()[problem.plan().first(node)])[problem.root()] > row.allowed()) {
                return Optional.empty();
            }
            long size = values.size("a limit", node -> row.byPart()[problem.plan().first(node)], problem.root());
            // One that allows all, or nothing, is no help in weighing.
            if (Math.abs(row.allowed()) < size) {
                rows.add(row);
                sizes.add(size);
            }
        }
        Tuning tuning = new Tuning(problem, values, rows, sizes.stream().mapToLong(Long::longValue).toArray(), this::offer, effort);
        return Optional.of(new Case(inside, tuning, tuning.tuned()));
    }

    /** Searches one case, for the best or one that beats the best so far; says what bounds the benefit there if there was too little time. */
    private Optional<BigDecimal> search(Values values, Case each) {
        Bounded bounded = new Bounded(problem, values, each.weights.stream().map(each.tuning::byPart).toList());
        long[] constants = each.weights.stream().mapToLong(each.tuning::constant).toArray();
        Search search = new Search(problem, bounded, each.weights, constants, each.inside, Optional.ofNullable(best), effort, anyWillDo);
        Optional<BigDecimal> bound = search.run();
        best = search.best().orElse(null);
        return bound;
    }

    private void offer(List<Integer> choices) {
        problem.judged(choices).filter(found -> best == null || found.beats(best)).ifPresent(found -> best = found);
    }
}

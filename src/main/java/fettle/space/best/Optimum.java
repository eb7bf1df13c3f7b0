package fettle.space.best;

import fettle.catalog.Lens;
import fettle.relation.Relations;
import fettle.space.Exact;
import fettle.space.Folded;
import fettle.space.Undecided;
import java.math.BigDecimal;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import java.util.TreeSet;

/** Seeks the best build of a platform. */
public final class Optimum {

    /** From this ratio on it is weights that are at fault where sums are too fine. */
    private static final BigDecimal FAR_APART = BigDecimal.valueOf(1_000_000);

    private final Relations relations;
    private final Folded folded;

    /** Seeks among these builds. */
    public Optimum(Relations relations, Folded folded) {
        this.relations = relations;
        this.folded = folded;
    }

    /**
     * The best build: the valid build of highest benefit among those that satisfy the demands; among equals the one of lower cost, then with fewer changed
     * paths, then with the smaller sorted list of path=part.
     *
     * @throws NothingKept where a path to keep holds nothing
     */
    public Outcome seek(Demands demands, Effort effort) {
        if (folded.undecided().isPresent()) {
            return new Outcome.Open(folded.undecided().get());
        }
        if (folded.isVoid()) {
            return new Outcome.Nothing(List.of(), true);
        }
        try {
            Outcome outcome = sought(demands, demands.prices().isPresent(), effort, false);
            return outcome instanceof Outcome.Nothing ? conflict(demands, effort) : outcome;
        } catch (TooMany tooMany) {
            return new Outcome.Open(demands.lens().filter(lens -> tooMany.at().equals(Ledger.WEIGHED)).map(lens -> tooFine(lens, tooMany.at()))
                    .orElseGet(() -> new Undecided("There is more to compare than " + tooMany.bound() + " at once.", tooMany.at())));
        }
    }

    /** What a lens weighs takes more digits than can be counted with, as it may where its weights are far apart. */
    private static Undecided tooFine(Lens lens, String at) {
        List<Map.Entry<String, BigDecimal>> weights = lens.weights().entrySet().stream().sorted(Map.Entry.comparingByValue()).toList();
        Map.Entry<String, BigDecimal> least = weights.get(0);
        Map.Entry<String, BigDecimal> greatest = weights.get(weights.size() - 1);
        return new Undecided(least.getValue().multiply(FAR_APART).compareTo(greatest.getValue()) > 0
                ? "What the lens weighs takes more digits than are summed exactly; round its weights, or the figures of what it weighs."
                : "The lens's weights are too far apart to be summed exactly, from " + Exact.text(least.getValue()) + " for " + least.getKey() + " to " + Exact.text(greatest.getValue())
                + " for " + greatest.getKey() + "; bring them nearer to each other, or leave out what hardly counts.", at);
    }

    /** The demands that can't be met together, each left out in turn to see whether it is needed for that. */
    private Outcome.Nothing conflict(Demands demands, Effort effort) {
        Set<Demand> needed = new LinkedHashSet<>();
        demands.keep().stream().sorted().map(Demand.Leaving::new).forEach(needed::add);
        demands.limits().stream().map(Demand.Keeping::new).forEach(needed::add);
        demands.budget().ifPresent(unused -> needed.add(new Demand.WithinBudget()));
        demands.prices().ifPresent(unused -> needed.add(new Demand.Obtainable()));
        boolean smallest = true;
        int left = needed.size();
        for (Demand demand : List.copyOf(needed)) {
            needed.remove(demand);
            boolean obtainable = needed.contains(new Demand.Obtainable());
            // One that takes long must leave time for the others.
            Outcome without = sought(only(demands, needed), obtainable, effort.share(left--), true);
            if (!(without instanceof Outcome.Nothing)) {
                needed.add(demand);
                smallest &= without instanceof Outcome.Found;
            }
        }
        return new Outcome.Nothing(needed.stream().sorted().toList(), smallest);
    }

    private static Demands only(Demands demands, Set<Demand> these) {
        Demands left = demands.withLens(Optional.empty())
                .withKeep(new TreeSet<>(demands.keep().stream().filter(path -> these.contains(new Demand.Leaving(path))).toList()))
                .withLimits(demands.limits().stream().filter(limit -> these.contains(new Demand.Keeping(limit))).toList());
        if (!these.contains(new Demand.WithinBudget())) {
            left = left.withBudget(Optional.empty());
        }
        return left;
    }

    /** What comes of these demands; where parts need not be obtainable, those that no offer sells cost nothing. */
    private Outcome sought(Demands demands, boolean obtainable, Effort effort, boolean anyWillDo) {
        BigDecimal[] costs = new BigDecimal[folded.hosts().size()];
        boolean[] available = new boolean[costs.length];
        for (int part = 0; part < costs.length; part++) {
            String id = folded.hosts().get(part);
            Optional<BigDecimal> cost = demands.owned().contains(id)
                    ? Optional.of(BigDecimal.ZERO)
                    : demands.prices().flatMap(prices -> prices.cheapest(id)).map(priced -> priced.cost());
            costs[part] = cost.orElse(BigDecimal.ZERO);
            available[part] = cost.isPresent() || !obtainable;
        }
        PlanMaker maker = new PlanMaker(folded, relations, part -> available[part]);
        Optional<Mark> before = demands.before().map(placement -> Mark.of(relations, placement));
        Optional<Kept> kept = demands.before().map(placement -> Kept.of(placement, demands.keep()));
        int root = maker.root(before, kept);
        if (root == Plan.NONE) {
            return new Outcome.Nothing(List.of(), true);
        }
        Ledger ledger = new Ledger(relations.catalog(), folded.hosts(), folded.platform(), demands, costs);
        return new Seeking(problem(maker, root, ledger, demands), effort, anyWillDo).outcome();
    }

    private Problem problem(PlanMaker maker, int root, Ledger ledger, Demands demands) {
        Column cost = ledger.columns().get(Ledger.COST);
        OptionalLong budget = demands.budget().map(amount -> OptionalLong.of(cost.floor(amount))).orElse(OptionalLong.empty());
        boolean[] numbered = new boolean[folded.slots().size()];
        for (int slot = 0; slot < numbered.length; slot++) {
            numbered[slot] = maker.numbered(slot);
        }
        int paths = demands.before().map(placement -> placement.parts().size()).orElse(0);
        return new Problem(maker.plan(), root, ledger, budget.orElse(Column.MOST), budget.isPresent(), paths, folded.platform(), folded.hosts(),
                folded.slots(), numbered);
    }
}

package fettle.space.best;

import fettle.catalog.SlotId;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * A plan with the ledger by which its builds are judged.
 *
 * @param root the node of all builds of the plan
 * @param budget in units of the cost column; more than any build costs, where there is none
 * @param limited whether there is a budget
 * @param paths how many paths the build before has
 * @param numbered by slot number, whether its parts are told apart by position
 */
record Problem(
        Plan plan, int root, Ledger ledger, long budget, boolean limited, int paths, String platform, List<String> hosts, List<SlotId> slots,
        boolean[] numbered) {

    /** What one placed part brings to a column. */
    long brings(int column, int node) {
        return column == Ledger.CHANGED ? plan.changes(node) : ledger.columns().get(column).byPart()[plan.first(node)];
    }

    /** What a column starts with. */
    long base(int column) {
        return column == Ledger.CHANGED ? paths : ledger.columns().get(column).base();
    }

    /** Chooses among alternatives. */
    interface Chooser {
        int of(int either);
    }

    /** The nodes of the parts of one build, each alternative chosen when its turn comes: what is first of both, and all in it, comes first. */
    List<Integer> parts(Chooser chooser) {
        List<Integer> parts = new ArrayList<>();
        new Walk(chooser, parts).slots(root, new TreeMap<>(), new TreeSet<>());
        return parts;
    }

    /** The build with these choices. */
    Arrangement arrangement(Chooser chooser) {
        SortedMap<String, List<Arrangement>> held = new TreeMap<>();
        Set<String> counted = new TreeSet<>();
        new Walk(chooser, new ArrayList<>()).slots(root, held, counted);
        return new Arrangement(platform, held, counted);
    }

    private final class Walk {

        private final Chooser chooser;
        private final List<Integer> parts;

        Walk(Chooser chooser, List<Integer> parts) {
            this.chooser = chooser;
            this.parts = parts;
        }

        void slots(int node, SortedMap<String, List<Arrangement>> held, Set<String> counted) {
            switch (plan.kind(node)) {
                case ONE -> { }
                case SLOT -> {
                    SlotId slot = slots.get(plan.first(node));
                    List<Arrangement> in = new ArrayList<>();
                    content(plan.second(node), in);
                    held.put(slot.slot(), List.copyOf(in));
                    if (numbered[plan.first(node)]) {
                        counted.add(slot.slot());
                    }
                }
                case BOTH -> {
                    slots(plan.first(node), held, counted);
                    slots(plan.second(node), held, counted);
                }
                case EITHER -> slots(chooser.of(node), held, counted);
                case PART -> throw new IllegalStateException("parts sit in slots");
            }
        }

        private void content(int node, List<Arrangement> in) {
            switch (plan.kind(node)) {
                case ONE -> { }
                case PART -> {
                    parts.add(node);
                    SortedMap<String, List<Arrangement>> held = new TreeMap<>();
                    Set<String> counted = new TreeSet<>();
                    slots(plan.second(node), held, counted);
                    in.add(new Arrangement(hosts.get(plan.first(node)), held, counted));
                }
                case BOTH -> {
                    content(plan.first(node), in);
                    content(plan.second(node), in);
                }
                case EITHER -> content(chooser.of(node), in);
                case SLOT -> throw new IllegalStateException("slots are on parts");
            }
        }
    }

    /** The build with these choices as a candidate; empty where it breaks a limit or the budget. */
    Optional<Candidate> judged(List<Integer> choices) {
        List<Integer> parts = parts(new Replay(choices)::next);
        long[] sums = new long[ledger.columns().size()];
        for (int column = 0; column < sums.length; column++) {
            sums[column] = base(column);
            for (int node : parts) {
                sums[column] += brings(column, node);
            }
        }
        Map<Integer, Spread> curves = new HashMap<>();
        for (int c = 0; c < ledger.curves().size(); c++) {
            Curve curve = ledger.curves().get(c);
            Spread all = curve.one();
            for (int node : parts) {
                all = curve.both(all, curve.byPart()[plan.first(node)]);
            }
            curves.put(c, curve.total(all));
        }
        if (sums[Ledger.COST] > budget || !ledger.gauges().stream().allMatch(gauge -> keeps(gauge, sums, curves))) {
            return Optional.empty();
        }
        BigDecimal benefit = ledger.columns().get(Ledger.BENEFIT).decimal(sums[Ledger.BENEFIT]);
        for (Ledger.Weighed weighed : ledger.weighed()) {
            benefit = benefit.add(curves.get(weighed.curve()).least().map(weighed.weight()::multiply).orElse(BigDecimal.ZERO));
        }
        Arrangement arrangement = arrangement(new Replay(choices)::next);
        return Optional.of(new Candidate(benefit, sums[Ledger.COST], sums[Ledger.CHANGED], arrangement, arrangement.list()));
    }

    private boolean keeps(Gauge gauge, long[] sums, Map<Integer, Spread> curves) {
        return gauge.possible(spread(gauge.value(), sums, curves), gauge.by().map(by -> spread(by, sums, curves)));
    }

    private Spread spread(Quantity quantity, long[] sums, Map<Integer, Spread> curves) {
        return quantity instanceof Quantity.Added added
                ? Spread.at(ledger.columns().get(added.column()).decimal(sums[added.column()]))
                : curves.get(((Quantity.Bent) quantity).curve());
    }

    private static final class Replay {

        private final List<Integer> choices;
        private int at;

        Replay(List<Integer> choices) {
            this.choices = choices;
        }

        int next(int either) {
            return choices.get(at++);
        }
    }
}

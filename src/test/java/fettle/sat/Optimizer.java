package fettle.sat;

import fettle.catalog.Catalog;
import fettle.catalog.Lens;
import fettle.catalog.Limit;
import fettle.catalog.Outfit;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.chocosolver.solver.Model;
import org.chocosolver.solver.Solver;
import org.chocosolver.solver.constraints.Constraint;
import org.chocosolver.solver.search.limits.TimeCounter;
import org.chocosolver.solver.variables.BoolVar;
import org.chocosolver.solver.variables.IntVar;

/**
 * The best build of a platform as a library for constraint programming finds it: the clauses of its valid builds over truth values, and on top of them totals, limits
 * and costs in whole numbers. What is in a slot has a number of its own for each total, between what it can come to at least and at most, so that the library can
 * tell early what is out of reach.
 */
public final class Optimizer {

    /**
     * What is asked of the build.
     *
     * @param open the highest open tier by vendor; empty where all are open
     * @param owned parts that cost nothing
     * @param keep what must stand where, by the slots that lead there
     */
    public record Demand(
            Lens lens, boolean loaded, Optional<Outfit> outfit, Optional<Map<String, Integer>> open, Optional<BigDecimal> budget, Set<String> owned,
            Map<String, String> keep) {}

    /** The best that was found. */
    public record Best(BigDecimal benefit, BigDecimal cost) {}

    /**
     * What came of it.
     *
     * @param complete whether there was time to see that there is none better, nor an equally good one that is cheaper
     * @param best empty where there is no such build, or none was found in time
     */
    public record Answer(boolean complete, Optional<Best> best) {}

    /** A sum of the model: so many units above the base. */
    private record Total(Sum sum, BigDecimal unit, IntVar units) {
        BigDecimal value(int count) {
            return sum.base().add(unit.multiply(BigDecimal.valueOf(count)));
        }
    }

    /** A build's numbers in their units. */
    private record Found(int benefit, int cost) {}

    private final Encoding encoding;
    private final Catalog catalog;
    private final Figures figures;
    private final Model model = new Model();
    private final BoolVar[] variables;
    private final Map<String, Total> totals = new HashMap<>();
    private final Total benefit;
    private final Total cost;

    /**
     * Models a demand.
     *
     * @throws UnsupportedOperationException where some total is no sum, or has too many digits for the library
     */
    public Optimizer(Catalog catalog, Encoding encoding, Demand demand) {
        this.encoding = encoding;
        this.catalog = catalog;
        this.figures = new Figures(catalog, encoding.platform(), demand.outfit());
        this.variables = new BoolVar[encoding.variables() + 1];
        for (int i = 1; i < variables.length; i++) {
            variables[i] = model.boolVar("v" + i);
        }
        encoding.clauses().forEach(this::add);
        this.cost = total(costs(demand));
        demand.budget().ifPresent(budget -> atMost(cost, budget));
        catalog.limits().values().forEach(this::keep);
        demand.keep().forEach((path, part) -> clause(standing(path, part)));
        this.benefit = total(figures.benefit(demand.lens(), demand.loaded()));
    }

    private void add(int[] literals) {
        BoolVar[] holding = Arrays.stream(literals).filter(literal -> literal > 0).mapToObj(literal -> variables[literal]).toArray(BoolVar[]::new);
        BoolVar[] failing = Arrays.stream(literals).filter(literal -> literal < 0).mapToObj(literal -> variables[-literal]).toArray(BoolVar[]::new);
        model.addClauses(holding, failing);
    }

    private void clause(List<Integer> literals) {
        add(literals.stream().mapToInt(Integer::intValue).toArray());
    }

    private List<Integer> standing(String path, String part) {
        return encoding.spots().stream().filter(spot -> spot.path().equals(path)).flatMap(spot -> spot.held().stream())
                .filter(standing -> standing.part().equals(part)).map(Encoding.Standing::variable).toList();
    }

    private Sum costs(Demand demand) {
        Map<String, BigDecimal> costs = new HashMap<>();
        encoding.placed().forEach((part, occurrences) -> {
            Optional<BigDecimal> cost = demand.owned().contains(part) ? Optional.of(BigDecimal.ZERO) : figures.cost(part, demand.open());
            cost.ifPresent(amount -> costs.put(part, amount));
            if (cost.isEmpty()) {
                occurrences.forEach(occurrence -> add(new int[] {-occurrence}));
            }
        });
        return new Sum(BigDecimal.ZERO, costs);
    }

    /** A total's number, made of one for each slot, those of slots further out first. */
    private Total total(Sum sum) {
        BigDecimal unit = sum.unit();
        Map<Integer, List<IntVar>> onHost = new HashMap<>();
        List<Encoding.Spot> spots = encoding.spots();
        for (int i = spots.size() - 1; i >= 0; i--) {
            Encoding.Spot spot = spots.get(i);
            inSlot(spot, sum, unit, onHost).ifPresent(number -> onHost.computeIfAbsent(spot.host(), unused -> new ArrayList<>()).add(number));
        }
        IntVar[] parts = onHost.getOrDefault(Clauses.ALWAYS, List.of()).toArray(IntVar[]::new);
        IntVar all = model.intVar("total", Arrays.stream(parts).mapToInt(IntVar::getLB).sum(), Arrays.stream(parts).mapToInt(IntVar::getUB).sum(), true);
        model.sum(parts, "=", all).post();
        return new Total(sum, unit, all);
    }

    private Optional<IntVar> inSlot(Encoding.Spot spot, Sum sum, BigDecimal unit, Map<Integer, List<IntVar>> onHost) {
        List<IntVar> numbers = new ArrayList<>();
        List<Integer> factors = new ArrayList<>();
        List<Integer> least = new ArrayList<>();
        List<Integer> most = new ArrayList<>();
        for (Encoding.Standing standing : spot.held()) {
            int own = sum.of(standing.part()).divide(unit, 0, RoundingMode.UNNECESSARY).intValueExact();
            List<IntVar> on = onHost.getOrDefault(standing.variable(), List.of());
            if (own != 0) {
                numbers.add(variables[standing.variable()]);
                factors.add(own);
            }
            numbers.addAll(on);
            on.forEach(unused -> factors.add(1));
            least.add(own + on.stream().mapToInt(IntVar::getLB).sum());
            most.add(own + on.stream().mapToInt(IntVar::getUB).sum());
        }
        if (numbers.isEmpty()) {
            return Optional.empty();
        }
        int from = least.stream().sorted().limit(spot.most()).mapToInt(value -> Math.min(0, value)).reduce(0, Math::addExact);
        int to = most.stream().map(value -> -value).sorted().limit(spot.most()).mapToInt(value -> -Math.min(0, value)).reduce(0, Math::addExact);
        IntVar number = model.intVar("slot", from, to, true);
        numbers.add(number);
        factors.add(-1);
        model.scalar(numbers.toArray(IntVar[]::new), factors.stream().mapToInt(Integer::intValue).toArray(), "=", 0).post();
        return Optional.of(number);
    }

    private Total total(String attribute, boolean loaded) {
        return totals.computeIfAbsent(attribute + loaded, unused -> total(figures.total(attribute, loaded)));
    }

    private void keep(Limit limit) {
        boolean atMost = limit.side() == Limit.Side.AT_MOST;
        Total value = total(limit.attribute(), limit.loaded());
        if (limit.bound() instanceof Limit.Fixed fixed) {
            if (atMost) {
                atMost(value, fixed.value());
            } else {
                atLeast(value, fixed.value()).post();
            }
            return;
        }
        Limit.Table table = (Limit.Table) limit.bound();
        Total by = total(table.by(), limit.loaded());
        List<Limit.Point> points = table.points();
        Limit.Point first = points.get(0);
        Limit.Point last = points.get(points.size() - 1);
        List<BoolVar> pieces = new ArrayList<>();
        pieces.add(piece(below(by, first.x()), below(value, by, first, BigDecimal.ONE, BigDecimal.ZERO, atMost)));
        for (int i = 1; i < points.size(); i++) {
            Limit.Point left = points.get(i - 1);
            Limit.Point right = points.get(i);
            pieces.add(piece(atLeast(by, left.x()), below(by, right.x()), below(value, by, left, right.x().subtract(left.x()), right.y().subtract(left.y()), atMost)));
        }
        pieces.add(piece(atLeast(by, last.x()), below(value, by, last, BigDecimal.ONE, BigDecimal.ZERO, atMost)));
        model.addClauses(pieces.toArray(BoolVar[]::new), new BoolVar[0]);
    }

    /** What, where it holds, makes all of these hold. */
    private BoolVar piece(Constraint... all) {
        BoolVar piece = model.boolVar("piece");
        for (Constraint constraint : all) {
            model.addClauses(new BoolVar[] {constraint.reify()}, new BoolVar[] {piece});
        }
        return piece;
    }

    private void atMost(Total total, BigDecimal bound) {
        below(total, bound).post();
    }

    private Constraint below(Total total, BigDecimal bound) {
        return model.arithm(total.units, "<=", units(total, bound, RoundingMode.FLOOR));
    }

    private Constraint atLeast(Total total, BigDecimal bound) {
        return model.arithm(total.units, ">=", units(total, bound, RoundingMode.CEILING));
    }

    private static int units(Total total, BigDecimal bound, RoundingMode rounding) {
        BigDecimal units = bound.subtract(total.sum.base()).divide(total.unit, 0, rounding);
        return units.max(BigDecimal.valueOf(total.units.getLB() - 1L)).min(BigDecimal.valueOf(total.units.getUB() + 1L)).intValueExact();
    }

    /** The value lies below, or above, a line through a point with a rise over a run: run × (value − y) ≤ rise × (by − x). */
    private Constraint below(Total value, Total by, Limit.Point through, BigDecimal run, BigDecimal rise, boolean atMost) {
        BigDecimal ofValue = run.multiply(value.unit);
        BigDecimal ofBy = rise.multiply(by.unit).negate();
        BigDecimal bound = run.multiply(through.y().subtract(value.sum.base())).subtract(rise.multiply(through.x().subtract(by.sum.base())));
        BigDecimal unit = Sum.unit(List.of(ofValue, ofBy));
        int[] factors = {ofValue.divide(unit, 0, RoundingMode.UNNECESSARY).intValueExact(), ofBy.divide(unit, 0, RoundingMode.UNNECESSARY).intValueExact()};
        IntVar[] numbers = {value.units, by.units};
        for (int i = 0; i < 2; i++) {
            long size = Math.abs((long) factors[i]) * Math.max(Math.abs((long) numbers[i].getLB()), Math.abs((long) numbers[i].getUB()));
            if (size > Integer.MAX_VALUE / 4) {
                throw new UnsupportedOperationException("a line with " + size + " units");
            }
        }
        return model.scalar(numbers, factors, atMost ? "<=" : ">=", bound.divide(unit, 0, atMost ? RoundingMode.FLOOR : RoundingMode.CEILING).intValueExact());
    }

    /** Seeks the build of highest benefit, and of those the cheapest. */
    public Answer best(Duration limit) {
        long until = System.nanoTime() + limit.toNanos();
        Solver solver = model.getSolver();
        Optional<Found> best = extreme(solver, benefit.units, Model.MAXIMIZE, until);
        boolean complete = !solver.isStopCriterionMet();
        if (complete && best.isPresent()) {
            Optional<Found> dearer = best;
            solver.reset();
            model.arithm(benefit.units, "=", best.get().benefit).post();
            best = extreme(solver, cost.units, Model.MINIMIZE, until).or(() -> dearer);
            complete = !solver.isStopCriterionMet();
        }
        return new Answer(complete, best.map(found -> new Best(benefit.value(found.benefit), cost.value(found.cost))));
    }

    private Optional<Found> extreme(Solver solver, IntVar objective, boolean direction, long until) {
        model.setObjective(direction, objective);
        solver.addStopCriterion(new TimeCounter(solver, Math.max(1, until - System.nanoTime())));
        Optional<Found> found = Optional.empty();
        while (solver.solve()) {
            found = Optional.of(new Found(benefit.units.getValue(), cost.units.getValue()));
        }
        return found;
    }
}

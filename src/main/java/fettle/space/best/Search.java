package fettle.space.best;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * Goes through the builds of a plan depth first, most promising first, and passes over those of which it is certain that none is within the demands, or
 * that none is to be preferred to the best found so far.
 */
final class Search {

    private static final int NOTHING = -1;

    /** How an alternative looks. */
    private enum Look { HOPEFUL, HOPELESS, HOPELESS_AND_ALL_AFTER }

    private final Problem problem;
    private final Ledger ledger;
    private final Bounded bounded;
    private final List<Weights> weights;
    private final long[] constants;
    private final List<Within> inside;
    private final Effort effort;
    private final boolean anyWillDo;
    private final int columns;
    private final int width;

    private Candidate best;
    /** What the best has, where nothing but what adds up is weighed. */
    private ToBeat toBeat;

    /** What is still to be decided besides the present node, as a list that grows in front; what it can reach in all is kept with it. */
    private int[] rest = new int[64];
    private int[] restNext = new int[64];
    private long[][] restReach = new long[64][];
    private Spread[][] restSpreads = new Spread[64][];
    private int rests;

    private final List<Frame> frames = new ArrayList<>();
    private int depth;

    /**
     * Between what whole units a benefit lies that is to be beaten. Beyond what sums of units can reach, more makes no difference.
     *
     * @param floor the greatest number of units that is no more
     * @param ceiling the least that is no less
     */
    private record ToBeat(long floor, long ceiling) {
        static ToBeat of(Column column, BigDecimal benefit) {
            return new ToBeat(column.floor(benefit), column.ceiling(benefit));
        }
    }

    /** A choice that is being made. */
    private static final class Frame {
        private int[] alternatives;
        private int at;
        private int next;
        private int rests;
        /** What the placed parts bring. */
        private long[] placed;
        private Spread[] placedSpreads;
        /** The same with what the rest can reach. */
        private long[] reach;
        private Spread[] reachSpreads;
    }

    /**
     * A search.
     *
     * @param constants by set of rates, what is to be added to what the parts reach, the budget aside
     * @param inside ranges in which the totals must be
     * @param first a build to start from
     * @param anyWillDo whether to stop at the first build found
     */
    Search(
            Problem problem, Bounded bounded, List<Weights> weights, long[] constants, List<Within> inside, Optional<Candidate> first, Effort effort,
            boolean anyWillDo) {
        this.problem = problem;
        this.ledger = problem.ledger();
        this.bounded = bounded;
        this.weights = List.copyOf(weights);
        this.constants = constants.clone();
        this.inside = List.copyOf(inside);
        this.effort = effort;
        this.anyWillDo = anyWillDo;
        this.columns = bounded.columns();
        this.width = bounded.width();
        first.ifPresent(this::take);
    }

    Optional<Candidate> best() {
        return Optional.ofNullable(best);
    }

    private void take(Candidate candidate) {
        best = candidate;
        toBeat = ToBeat.of(ledger.columns().get(Ledger.BENEFIT), candidate.benefit());
    }

    /** Searches to the end, or until there is no time left; says then what no build's benefit exceeds, and else nothing. */
    Optional<BigDecimal> run() {
        if (anyWillDo && best != null) {
            return Optional.empty();
        }
        long[] start = new long[width];
        for (int column = 0; column < columns; column++) {
            start[column] = problem.base(column);
            start[columns + column] = problem.base(column);
        }
        start[bounded.unchanged()] = problem.base(Ledger.CHANGED);
        Spread[] spreads = ledger.curves().stream().map(Curve::one).toArray(Spread[]::new);
        descend(problem.root(), NOTHING, start, spreads);
        effort.lookNext();
        while (depth > 0) {
            Frame frame = frames.get(depth - 1);
            if (frame.at == frame.alternatives.length) {
                depth--;
                continue;
            }
            if (effort.spent()) {
                return Optional.of(stillPossible());
            }
            rests = frame.rests;
            int alternative = frame.alternatives[frame.at++];
            switch (look(frame, alternative)) {
                case HOPELESS -> { }
                case HOPELESS_AND_ALL_AFTER -> frame.at = frame.alternatives.length;
                case HOPEFUL -> {
                    descend(alternative, frame.next, frame.placed.clone(), frame.placedSpreads.clone());
                    if (anyWillDo && best != null) {
                        return Optional.empty();
                    }
                }
            }
        }
        return Optional.empty();
    }

    /** Places parts until there is something to choose, or nothing left. */
    private void descend(int from, int next, long[] placed, Spread[] spreads) {
        Plan plan = problem.plan();
        int node = from;
        int after = next;
        while (true) {
            switch (plan.kind(node)) {
                case ONE -> {
                    if (after == NOTHING) {
                        arrive(placed);
                        return;
                    }
                    node = rest[after];
                    after = restNext[after];
                }
                case PART -> {
                    bounded.addPart(node, placed);
                    for (int c = 0; c < spreads.length; c++) {
                        Curve curve = ledger.curves().get(c);
                        spreads[c] = curve.both(spreads[c], curve.byPart()[plan.first(node)]);
                    }
                    node = plan.second(node);
                }
                case SLOT -> node = plan.second(node);
                case BOTH -> {
                    after = push(plan.second(node), after);
                    node = plan.first(node);
                }
                case EITHER -> {
                    choose(node, after, placed, spreads);
                    return;
                }
            }
        }
    }

    private int push(int node, int next) {
        if (rests == rest.length) {
            rest = Arrays.copyOf(rest, 2 * rests);
            restNext = Arrays.copyOf(restNext, 2 * rests);
            restReach = Arrays.copyOf(restReach, 2 * rests);
            restSpreads = Arrays.copyOf(restSpreads, 2 * rests);
        }
        rest[rests] = node;
        restNext[rests] = next;
        long[] reach = next == NOTHING ? new long[width] : restReach[next].clone();
        bounded.add(node, reach);
        restReach[rests] = reach;
        Spread[] spreads = new Spread[ledger.curves().size()];
        for (int c = 0; c < spreads.length; c++) {
            Spread own = bounded.spread(c, node);
            spreads[c] = next == NOTHING ? own : ledger.curves().get(c).both(own, restSpreads[next][c]);
        }
        restSpreads[rests] = spreads;
        return rests++;
    }

    private void choose(int node, int next, long[] placed, Spread[] spreads) {
        if (depth == frames.size()) {
            frames.add(new Frame());
        }
        Frame frame = frames.get(depth++);
        frame.alternatives = bounded.sorted(node);
        frame.at = 0;
        frame.next = next;
        frame.rests = rests;
        frame.placed = placed;
        frame.placedSpreads = spreads;
        frame.reach = placed.clone();
        frame.reachSpreads = spreads.clone();
        if (next != NOTHING) {
            for (int i = 0; i < width; i++) {
                frame.reach[i] += restReach[next][i];
            }
            for (int c = 0; c < spreads.length; c++) {
                frame.reachSpreads[c] = ledger.curves().get(c).both(spreads[c], restSpreads[next][c]);
            }
        }
    }

    private void arrive(long[] placed) {
        // Everything is decided, so that what was reached is what there is.
        if (best != null && ledger.weighed().isEmpty()) {
            long benefit = placed[Ledger.BENEFIT];
            if (benefit < toBeat.ceiling || benefit == toBeat.floor && placed[Ledger.COST] > best.cost()) {
                return;
            }
        }
        List<Integer> choices = new ArrayList<>();
        for (int i = 0; i < depth; i++) {
            choices.add(frames.get(i).alternatives[frames.get(i).at - 1]);
        }
        problem.judged(choices).filter(found -> best == null || found.beats(best)).ifPresent(this::take);
    }

    private Look look(Frame frame, int node) {
        if (frame.reach[Ledger.COST] + bounded.at(node, Ledger.COST) > problem.budget()) {
            return Look.HOPELESS;
        }
        for (Within within : inside) {
            int column = within.column();
            if (!within.possible(frame.reach[column] + bounded.at(node, column), frame.reach[columns + column] + bounded.at(node, columns + column))) {
                return Look.HOPELESS;
            }
        }
        for (Gauge gauge : ledger.gauges()) {
            if (!possible(gauge, frame, node)) {
                return Look.HOPELESS;
            }
        }
        return best == null ? Look.HOPEFUL : promise(frame, node);
    }

    private boolean possible(Gauge gauge, Frame frame, int node) {
        if (!gauge.added()) {
            return gauge.possible(spread(gauge.value(), frame, node), gauge.by().map(by -> spread(by, frame, node)));
        }
        int value = ((Quantity.Added) gauge.value()).column();
        long least = frame.reach[value] + bounded.at(node, value);
        long greatest = frame.reach[columns + value] + bounded.at(node, columns + value);
        if (gauge.by().isEmpty()) {
            return gauge.possible(least, greatest, 0, 0);
        }
        int by = ((Quantity.Added) gauge.by().get()).column();
        return gauge.possible(
                least, greatest, frame.reach[by] + bounded.at(node, by), frame.reach[columns + by] + bounded.at(node, columns + by));
    }

    private Spread spread(Quantity quantity, Frame frame, int node) {
        if (quantity instanceof Quantity.Added added) {
            Column column = ledger.columns().get(added.column());
            return Spread.between(
                    column.decimal(frame.reach[added.column()] + bounded.at(node, added.column())),
                    column.decimal(frame.reach[columns + added.column()] + bounded.at(node, columns + added.column())));
        }
        return total(((Quantity.Bent) quantity).curve(), frame, node);
    }

    private Spread total(int c, Frame frame, int node) {
        Curve curve = ledger.curves().get(c);
        return curve.total(curve.both(frame.reachSpreads[c], bounded.spread(c, node)));
    }

    /** The most that weighed totals which don't add up can come to. */
    private BigDecimal bent(Frame frame, int node) {
        BigDecimal most = BigDecimal.ZERO;
        for (Ledger.Weighed weighed : ledger.weighed()) {
            Spread total = total(weighed.curve(), frame, node);
            Optional<BigDecimal> end = weighed.weight().signum() > 0 ? total.greatest() : total.least();
            BigDecimal value = end.map(weighed.weight()::multiply).orElse(BigDecimal.ZERO);
            most = most.add(total.valueless() ? value.max(BigDecimal.ZERO) : value);
        }
        return most;
    }

    /** What the weighed totals that add up must come to, so that the best is beaten with all that the others can come to. */
    private ToBeat toBeat(Frame frame, int node) {
        return ledger.weighed().isEmpty() ? toBeat : ToBeat.of(ledger.columns().get(Ledger.BENEFIT), best.benefit().subtract(bent(frame, node)));
    }

    /** Whether something may be preferred to the best so far: by a higher benefit, or by what decides among equals. */
    private Look promise(Frame frame, int node) {
        ToBeat beaten = toBeat(frame, node);
        long most = frame.reach[columns + Ledger.BENEFIT] + bounded.at(node, columns + Ledger.BENEFIT);
        boolean better = most > beaten.floor;
        boolean equal = most >= beaten.ceiling && frame.reach[Ledger.COST] + bounded.at(node, Ledger.COST) <= best.cost();
        if (equal && ledger.weighed().isEmpty() && most == beaten.floor) {
            long cost = frame.reach[bounded.cheapest()] + bounded.at(node, bounded.cheapest());
            long changed = frame.reach[bounded.unchanged()] + bounded.at(node, bounded.unchanged());
            equal = cost < best.cost() || cost == best.cost() && changed <= best.changed();
        }
        for (int set = 0; set < weights.size() && (better || equal); set++) {
            boolean mayBeBetter = rated(frame, node, set, problem.budget()) > beaten.floor;
            boolean mayBeEqual = rated(frame, node, set, Math.min(best.cost(), problem.budget())) >= beaten.ceiling;
            // Only the first rates sort the alternatives. What this one costs or changes says nothing of those after it.
            if (set == 0 && !mayBeBetter && !mayBeEqual && ledger.weighed().isEmpty()) {
                return Look.HOPELESS_AND_ALL_AFTER;
            }
            better &= mayBeBetter;
            equal &= mayBeEqual;
        }
        return better || equal ? Look.HOPEFUL : Look.HOPELESS;
    }

    /** What, by a set of rates, no benefit exceeds that is had for so much, in whole units. */
    private long rated(Frame frame, int node, int set, long cost) {
        long reached = frame.reach[bounded.rated(set)] + bounded.at(node, bounded.rated(set)) + constants[set] + weights.get(set).cost() * cost;
        return Math.floorDiv(reached, weights.get(set).factor());
    }

    private BigDecimal stillPossible() {
        Optional<BigDecimal> most = best().map(Candidate::benefit);
        for (int i = 0; i < depth; i++) {
            Frame frame = frames.get(i);
            // The alternative being looked into is accounted for by the choices below it.
            for (int at = frame.at; at < frame.alternatives.length; at++) {
                BigDecimal here = reachable(frame, frame.alternatives[at]);
                most = Optional.of(most.map(here::max).orElse(here));
            }
        }
        return most.orElseThrow();
    }

    /** What no benefit exceeds with an alternative. */
    private BigDecimal reachable(Frame frame, int node) {
        long most = frame.reach[columns + Ledger.BENEFIT] + bounded.at(node, columns + Ledger.BENEFIT);
        for (int set = 0; set < weights.size(); set++) {
            most = Math.min(most, rated(frame, node, set, problem.budget()));
        }
        return ledger.columns().get(Ledger.BENEFIT).decimal(most).add(bent(frame, node));
    }
}

package fettle.space.worth;

import fettle.space.Bare;
import fettle.space.Circuit;
import fettle.space.Evaluation;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * Pareto fronts: of the choices out of a node of the circuit, those than which no other is as good in every column, one for each that are even. Whatever is
 * put together from others is no worse when put together from members of their fronts. Fronts are worked out when asked for; one that would be large is not.
 */
final class Fronts {

    /**
     * How large fronts may be.
     *
     * @param points the most points of one
     * @param pairs the most pairs of points that are put together for one
     * @param comparisons the most comparisons of points for one
     * @param kept how many points all fronts together have when those that are known are let go of; twice as many are too much
     * @param ranked from how many points on they are looked up by their ranks
     */
    record Bounds(int points, long pairs, long comparisons, long kept, int ranked) {

        /** With so many points of a front, looking through them takes longer than ranking what is compared with them. */
        private static final int MANY = 64;

        /** Fronts that are quickly gone through again and again. */
        static final Bounds NARROW = new Bounds(64, 1_024, Long.MAX_VALUE, Long.MAX_VALUE / 2, Integer.MAX_VALUE);

        /** Fronts that are worth their while only where a verdict hangs on them. */
        static final Bounds BROAD = new Bounds(20_000, 400_000, 40_000_000, 600_000, MANY);
    }

    /** Comparisons of points are quickly done, compared to other steps. */
    static final int COMPARISONS_A_STEP = 32;

    private final Bare bare;
    private final Circuit circuit;
    private final Measure measure;
    private final Bounds bounds;
    private final Meter meter;
    private final ByNode<Optional<List<Point>>> known = new ByNode<>();
    private int largest;
    private long all;

    /**
     * Fronts of what a circuit without slots holds.
     *
     * @param meter counts the comparisons, so many to a step
     */
    Fronts(Bare bare, Measure measure, Bounds bounds, Meter meter) {
        this.bare = bare;
        this.circuit = bare.circuit();
        this.measure = measure;
        this.bounds = bounds;
        this.meter = meter;
    }

    /** The front of a node of the circuit with slots, as points of the one without; empty where it would be large. */
    Optional<List<Point>> of(int node) {
        int root = bare.of(node);
        Optional<List<Point>> front = known.get(root);
        if (front == null) {
            if (all > bounds.kept) {
                known.clear();
                all = 0;
            }
            BitSet below = Evaluation.below(circuit, root);
            for (int next = below.nextSetBit(0); next >= 0; next = below.nextSetBit(next + 1)) {
                if (known.get(next) == null) {
                    known.put(next, work(next));
                }
            }
            front = known.get(root);
        }
        return front;
    }

    /** How many points the largest front has. */
    int largest() {
        return largest;
    }

    int count() {
        return known.size();
    }

    private Optional<List<Point>> work(int node) {
        int first = circuit.first(node);
        int second = circuit.second(node);
        Optional<List<Point>> front = switch (circuit.kind(node)) {
            case ONE -> Optional.of(List.of(new Point(measure.ofNothing(), 0, new Point.Made.Nothing())));
            case PART -> measure.ofPart(first) == null ? Optional.of(List.of()) : known.get(second).flatMap(on -> headed(first, on));
            case SLOT -> throw new IllegalStateException("there are no slots");
            case BOTH -> both(known.get(first), known.get(second));
            case SEVERAL -> several(known.get(first), second);
            case EITHER -> either(node);
        };
        front = front.filter(points -> points.size() <= bounds.points && all + points.size() <= 2 * bounds.kept);
        largest = Math.max(largest, front.map(List::size).orElse(0));
        all += front.map(List::size).orElse(0);
        return front;
    }

    /** A greatest or least value that the part brings can make choices alike that were not. */
    private Optional<List<Point>> headed(int part, List<Point> on) {
        meter.spend(1 + on.size());
        List<Point> points = on.stream().map(point -> new Point(measure.both(measure.ofPart(part), point.yield()), point.parts() + 1, new Point.Made.On(point))).toList();
        return measure.addsOnly(part) ? Optional.of(points) : front(points);
    }

    private Optional<List<Point>> both(Optional<List<Point>> one, Optional<List<Point>> other) {
        if (one.isEmpty() || other.isEmpty() || (long) one.get().size() * other.get().size() > bounds.pairs) {
            return Optional.empty();
        }
        meter.spend((long) one.get().size() * other.get().size());
        List<Point> pairs = new ArrayList<>(one.get().size() * other.get().size());
        for (Point a : one.get()) {
            for (Point b : other.get()) {
                pairs.add(new Point(measure.both(a.yield(), b.yield()), a.parts() + b.parts(), new Point.Made.Both(a, b)));
            }
        }
        return front(pairs);
    }

    private Optional<List<Point>> several(Optional<List<Point>> of, int copies) {
        Optional<List<Point>> chains = of.map(points -> points.stream().map(point -> new Point(point.yield(), point.parts(), new Point.Made.Several(List.of(point)))).toList());
        for (int i = 1; i < copies; i++) {
            chains = longer(chains, of).filter(points -> points.size() <= bounds.points);
        }
        return chains;
    }

    private Optional<List<Point>> longer(Optional<List<Point>> chains, Optional<List<Point>> of) {
        if (chains.isEmpty() || (long) chains.get().size() * of.get().size() > bounds.pairs) {
            return Optional.empty();
        }
        meter.spend((long) chains.get().size() * of.get().size());
        List<Point> pairs = new ArrayList<>(chains.get().size() * of.get().size());
        for (Point chain : chains.get()) {
            for (Point next : of.get()) {
                List<Point> each = new ArrayList<>(((Point.Made.Several) chain.made()).each());
                each.add(next);
                pairs.add(new Point(measure.both(chain.yield(), next.yield()), chain.parts() + next.parts(), new Point.Made.Several(each)));
            }
        }
        return front(pairs);
    }

    private Optional<List<Point>> either(int node) {
        List<Point> choices = new ArrayList<>();
        for (int i = 0; i < circuit.width(node); i++) {
            int alternative = circuit.alternative(node, i);
            Optional<List<Point>> points = known.get(alternative);
            if (points.isEmpty()) {
                return Optional.empty();
            }
            points.get().forEach(point -> choices.add(new Point(point.yield(), point.parts(), new Point.Made.Among(alternative, point))));
        }
        return front(choices);
    }

    /**
     * Those of some points that belong to their front, the heaviest first; of even ones the smallest. What is as good in every column is no lighter, so that each needs
     * comparing with those before it only, save where they weigh the same.
     */
    private Optional<List<Point>> front(List<Point> points) {
        meter.spend(1);
        List<Point> front = new ArrayList<>();
        // What was beaten later is beaten by something that beats whatever it does.
        BitSet beaten = new BitSet();
        Ranks ranks = null;
        long comparisons = 0;
        int likely = 0;
        for (Point point : HeaviestFirst.of(points, measure)) {
            int beater = beater(point, front, likely, ranks);
            comparisons += 1 + (beater < 0 ? front.size() : beater) / (ranks == null ? 1 : Ranks.PLACES_A_COMPARISON);
            if (beater >= 0) {
                likely = beater;
            } else {
                for (int i = front.size() - 1; i >= 0 && measure.weight(front.get(i).yield()) == measure.weight(point.yield()); i--) {
                    if (measure.neverWorse(point.yield(), front.get(i).yield())) {
                        beaten.set(i);
                    }
                }
                front.add(point);
                if (ranks != null) {
                    ranks.add(front.size() - 1, point.yield());
                } else if (front.size() == bounds.ranked) {
                    ranks = ranked(points, front);
                }
            }
            if (front.size() - beaten.cardinality() > bounds.points || comparisons > bounds.comparisons) {
                front = null;
                break;
            }
        }
        meter.spend(comparisons / COMPARISONS_A_STEP);
        return Optional.ofNullable(front).map(found -> beaten.isEmpty() ? found
                : IntStream.range(0, found.size()).filter(i -> !beaten.get(i)).mapToObj(found::get).toList());
    }

    private Ranks ranked(List<Point> points, List<Point> front) {
        return Ranks.of(measure, points.stream().map(Point::yield).toList(), front.stream().map(Point::yield).toList());
    }

    /** One that is as good; what beat the point before is likely to beat this one. */
    private int beater(Point point, List<Point> front, int likely, Ranks ranks) {
        if (likely < front.size() && measure.neverWorse(front.get(likely).yield(), point.yield())) {
            return likely;
        }
        if (ranks == null) {
            for (int i = 0; i < front.size(); i++) {
                if (measure.neverWorse(front.get(i).yield(), point.yield())) {
                    return i;
                }
            }
            return -1;
        }
        int[] ranked = ranks.of(point.yield());
        int next = ranks.next(0, ranked);
        while (next >= 0 && !measure.neverWorse(front.get(next).yield(), point.yield())) {
            next = ranks.next(next + 1, ranked);
        }
        return next;
    }
}

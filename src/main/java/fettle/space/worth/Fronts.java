package fettle.space.worth;

import fettle.space.Circuit;
import fettle.space.Evaluation;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.HashMap;
import java.util.Map;

/**
 * Pareto fronts: of the choices out of a node of the circuit, those than which no other is as good in every column, one for each that are even. Whatever is
 * put together from others is no worse when put together from members of their fronts. Fronts are worked out when asked for; one that would be large is not.
 */
final class Fronts {

    private static final int MOST_POINTS = 64;
    private static final int MOST_PAIRS = 1_024;

    private final Circuit circuit;
    private final Measure measure;
    private final Map<Integer, Optional<List<Point>>> known = new HashMap<>();
    private int largest;

    Fronts(Circuit circuit, Measure measure) {
        this.circuit = circuit;
        this.measure = measure;
    }

    /** A node's front; empty where it would be large. */
    Optional<List<Point>> of(int node) {
        Optional<List<Point>> front = known.get(node);
        if (front == null) {
            BitSet below = Evaluation.below(circuit, node);
            for (int next = below.nextSetBit(0); next >= 0; next = below.nextSetBit(next + 1)) {
                if (!known.containsKey(next)) {
                    known.put(next, work(next));
                }
            }
            front = known.get(node);
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
            case ONE -> Optional.of(List.of(new Point(measure.ofNothing(), 0, Pick.NOTHING)));
            case PART -> measure.ofPart(first) == null ? Optional.of(List.of()) : known.get(second).map(on -> headed(first, on));
            case SLOT -> known.get(second).map(held -> held.stream()
                    .map(point -> new Point(point.yield(), point.parts(), new Pick.InSlot(first, point.pick()))).toList());
            case BOTH -> both(known.get(first), known.get(second));
            case SEVERAL -> several(known.get(first), second);
            case EITHER -> either(node);
        };
        front = front.filter(points -> points.size() <= MOST_POINTS);
        largest = Math.max(largest, front.map(List::size).orElse(0));
        return front;
    }

    /** A greatest or least value that the part brings can make choices alike that were not. */
    private List<Point> headed(int part, List<Point> on) {
        return front(on.stream().map(point -> new Point(measure.both(measure.ofPart(part), point.yield()), point.parts() + 1, new Pick.Headed(part, point.pick())))
                .toList());
    }

    private Optional<List<Point>> both(Optional<List<Point>> one, Optional<List<Point>> other) {
        if (one.isEmpty() || other.isEmpty() || (long) one.get().size() * other.get().size() > MOST_PAIRS) {
            return Optional.empty();
        }
        List<Point> all = new ArrayList<>();
        for (Point a : one.get()) {
            for (Point b : other.get()) {
                all.add(new Point(measure.both(a.yield(), b.yield()), a.parts() + b.parts(), Pick.both(a.pick(), b.pick())));
            }
        }
        return Optional.of(front(all));
    }

    private Optional<List<Point>> several(Optional<List<Point>> of, int copies) {
        Optional<List<Point>> all = of;
        for (int i = 1; i < copies; i++) {
            all = both(all, of).filter(points -> points.size() <= MOST_POINTS);
        }
        return all;
    }

    private Optional<List<Point>> either(int node) {
        List<Point> all = new ArrayList<>();
        for (int i = 0; i < circuit.width(node); i++) {
            Optional<List<Point>> alternative = known.get(circuit.alternative(node, i));
            if (alternative.isEmpty()) {
                return Optional.empty();
            }
            all.addAll(alternative.get());
        }
        return Optional.of(front(all));
    }

    /** Those of some points that belong to their front; of even ones the smallest. */
    List<Point> front(List<Point> points) {
        List<Point> bySize = new ArrayList<>(points);
        bySize.sort(Comparator.comparingInt(Point::parts));
        List<Point> front = new ArrayList<>();
        for (Point point : bySize) {
            boolean beaten = false;
            for (Point kept : front) {
                if (measure.neverWorse(kept.yield(), point.yield())) {
                    beaten = true;
                    break;
                }
            }
            if (!beaten) {
                front.removeIf(kept -> measure.neverWorse(point.yield(), kept.yield()));
                front.add(point);
            }
        }
        return front;
    }
}

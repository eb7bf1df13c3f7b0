package fettle.space.worth;

import fettle.space.Bare;
import fettle.space.Circuit;
import java.util.ArrayList;
import java.util.List;

/** Puts choices out of the circuit without slots back into slots. */
final class Lifting {

    private final Circuit circuit;
    private final Bare bare;

    Lifting(Circuit circuit, Bare bare) {
        this.circuit = circuit;
        this.bare = bare;
    }

    /** A choice out of one of the factors of a node without slots. */
    private record Factor(int bare, Point point) {}

    /** The choice out of a node that a point of what the node is without slots stands for. */
    Pick pick(int node, Point point) {
        return lifted(node, factors(bare.of(node), point));
    }

    private List<Factor> factors(int node, Point point) {
        List<Factor> factors = new ArrayList<>();
        if (point.made() instanceof Point.Made.Both both && bare.circuit().kind(node) == Circuit.Kind.BOTH) {
            factors.addAll(factors(bare.circuit().first(node), both.one()));
            factors.addAll(factors(bare.circuit().second(node), both.other()));
        } else if (node != Circuit.ONE) {
            factors.add(new Factor(node, point));
        }
        return factors;
    }

    private Pick lifted(int node, List<Factor> factors) {
        int first = circuit.first(node);
        int second = circuit.second(node);
        return switch (circuit.kind(node)) {
            case ONE -> Pick.NOTHING;
            case SLOT -> new Pick.InSlot(first, lifted(second, factors));
            case PART -> {
                Point on = ((Point.Made.On) only(factors).point().made()).on();
                yield new Pick.Headed(first, lifted(second, factors(bare.of(second), on)));
            }
            case SEVERAL -> {
                Pick all = Pick.NOTHING;
                for (Point each : ((Point.Made.Several) only(factors).point().made()).each()) {
                    all = Pick.both(all, lifted(first, factors(bare.of(first), each)));
                }
                yield all;
            }
            case BOTH -> {
                List<Factor> left = new ArrayList<>(factors);
                List<Factor> own = taken(bare.factors(bare.of(first)), left);
                yield Pick.both(lifted(first, own), lifted(second, left));
            }
            case EITHER -> either(node, factors);
        };
    }

    /** Where all alternatives are the same without slots, there is no choice to be found in the point. */
    private Pick either(int node, List<Factor> factors) {
        int sum = bare.of(node);
        if (bare.circuit().kind(sum) != Circuit.Kind.EITHER || bare.of(circuit.alternative(node, 0)) == sum) {
            return lifted(circuit.alternative(node, 0), factors);
        }
        Point.Made.Among among = (Point.Made.Among) only(factors).point().made();
        for (int i = 0; i < circuit.width(node); i++) {
            int alternative = circuit.alternative(node, i);
            if (bare.of(alternative) == among.alternative()) {
                return lifted(alternative, factors(among.alternative(), among.of()));
            }
        }
        throw new IllegalStateException("a choice is none of its sum");
    }

    private static Factor only(List<Factor> factors) {
        if (factors.size() != 1) {
            throw new IllegalStateException("one choice stands for " + factors.size());
        }
        return factors.get(0);
    }

    /** Takes a choice for each of some nodes out of those that are left. */
    private static List<Factor> taken(List<Integer> nodes, List<Factor> left) {
        List<Factor> taken = new ArrayList<>();
        for (int node : nodes) {
            for (int i = 0; i < left.size(); i++) {
                if (left.get(i).bare() == node) {
                    taken.add(left.remove(i));
                    break;
                }
            }
        }
        return taken;
    }
}

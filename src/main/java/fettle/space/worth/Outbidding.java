package fettle.space.worth;

import fettle.space.Bare;
import fettle.space.Circuit;
import fettle.space.Stand;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * Looks whether some choice costs no more than another, brings no less, and differs in one.
 *
 * <p>By a rate at which cost is weighed against benefit, such a choice falls short of the best by no more than the other does, and so does each piece of it. The
 * nearer to the hull the other lies, the fewer choices have to be looked at.
 */
final class Outbidding {

    private static final int GRAINS = 4;

    private final Bare bare;
    private final Circuit circuit;
    private final RoleSets roles;
    private final Worths worths;
    private final Tradeoffs corners;
    private final Meter meter;
    private final Rate rate;
    /** The most that may be fallen short by. */
    private long whole;
    private final Map<Asked, Curve> known = new HashMap<>();

    private record Asked(int node, long set, long shortfall) {
        // Written out, as in SlotId.
        @Override
        public boolean equals(Object other) {
            return other instanceof Asked that && node == that.node && set == that.set && shortfall == that.shortfall;
        }

        @Override
        public int hashCode() {
            return 31 * (31 * node + Long.hashCode(set)) + Long.hashCode(shortfall);
        }
    }

    /** For a rate: any will do; the slope of the hull spares most. */
    Outbidding(Bare bare, RoleSets roles, Worths worths, Tradeoffs corners, Meter meter, Rate rate) {
        this.bare = bare;
        this.circuit = bare.circuit();
        this.roles = roles;
        this.worths = worths;
        this.corners = corners;
        this.meter = meter;
        this.rate = rate;
    }

    /** Whether some choice of these stands that serves the same roles betters one that is among them. */
    boolean better(List<Stand> stands, long set, long cost, long benefit) {
        long best = Long.MIN_VALUE;
        for (Stand stand : stands) {
            Curve curve = corners.of(stand, set);
            best = curve.isEmpty() ? best : Math.max(best, best(curve));
        }
        long shortfall = best - rate.weighed(cost, benefit);
        whole = shortfall;
        for (Stand stand : stands) {
            Curve curve = corners.of(stand, set);
            if (!curve.isEmpty() && best - best(curve) <= shortfall) {
                Curve near = near(bare.of(stand.node()), set, shortfall - best + best(curve));
                for (int i = 0; i < near.size() && near.cost(i) <= cost; i++) {
                    if (near.benefit(i) > benefit || near.benefit(i) == benefit && near.cost(i) < cost) {
                        return true;
                    }
                }
            }
        }
        return false;
    }

    private long best(Curve curve) {
        long best = Long.MIN_VALUE;
        for (int i = 0; i < curve.size(); i++) {
            best = Math.max(best, rate.weighed(curve.cost(i), curve.benefit(i)));
        }
        return best;
    }

    /** The choices of a node that fall short of the best by no more than that, and some others: what falls short by about as much is the same question, asked once. */
    private Curve near(int node, long set, long atMost) {
        long grain = Math.max(1, whole / GRAINS);
        long shortfall = atMost >= whole - grain ? whole : (atMost + grain - 1) / grain * grain;
        Asked asked = new Asked(node, set, shortfall);
        Curve curve = known.get(asked);
        if (curve == null) {
            curve = work(node, set, shortfall);
            known.put(asked, curve);
        }
        return curve;
    }

    private Curve work(int node, long set, long shortfall) {
        int first = circuit.first(node);
        int second = circuit.second(node);
        long best = best(corners.of(node, set));
        return switch (circuit.kind(node)) {
            case ONE -> Curve.NOTHING;
            case SLOT -> throw new IllegalStateException("there are no slots");
            case PART -> {
                long left = shortfall - best + rate.weighed(worths.cost(first), worths.benefit(first));
                long role = roles.of(first);
                Curve besides = within(second, set & ~role, left);
                Curve all = role == 0 ? besides : or(besides, within(second, set, left));
                yield all.moved(worths.cost(first), worths.benefit(first));
            }
            case BOTH -> both(first, second, set, shortfall - best);
            case SEVERAL -> several(first, second, set, best - shortfall);
            case EITHER -> {
                Curve all = Curve.NONE;
                for (int i = 0; i < circuit.width(node); i++) {
                    all = or(all, within(circuit.alternative(node, i), set, shortfall - best));
                }
                yield all;
            }
        };
    }

    /** The choices of a node that, weighed, come to no less than what is left takes away; none where the node has none that serve these roles. */
    private Curve within(int node, long set, long left) {
        meter.spend(1);
        Curve curve = corners.of(node, set);
        if (curve.isEmpty()) {
            return Curve.NONE;
        }
        long shortfall = left + best(curve);
        return shortfall < 0 ? Curve.NONE : near(node, set, shortfall);
    }

    private Curve both(int one, int other, long set, long left) {
        Curve all = Curve.NONE;
        for (long some : roles.below(one).sets()) {
            Curve curve = (some & ~set) == 0 ? corners.of(one, some) : Curve.NONE;
            if (!curve.isEmpty()) {
                for (long others : roles.below(other).sets()) {
                    Curve beside = (some | others) == set ? corners.of(other, others) : Curve.NONE;
                    if (!beside.isEmpty()) {
                        all = or(all, and(within(one, some, left + best(beside)), within(other, others, left + best(curve))).from(rate::weighed, -left));
                    }
                }
            }
        }
        return all;
    }

    /** Each of the copies falls short of the best by no more than all together may. */
    private Curve several(int of, int copies, long set, long least) {
        long most = Long.MIN_VALUE;
        for (long each : roles.below(of).sets()) {
            Curve curve = (each & ~set) == 0 ? corners.of(of, each) : Curve.NONE;
            most = curve.isEmpty() ? most : Math.max(most, best(curve));
        }
        long left = Math.subtractExact(Math.multiplyExact(copies - 1L, most), least);
        Map<Long, Curve> all = new HashMap<>(Map.of(0L, Curve.NOTHING));
        for (int i = 0; i < copies; i++) {
            Map<Long, Curve> more = new HashMap<>();
            all.forEach((some, curve) -> {
                for (long each : roles.below(of).sets()) {
                    if ((each & ~set) == 0) {
                        more.merge(some | each, and(curve, within(of, each, left)), this::or);
                    }
                }
            });
            all = more;
        }
        return all.getOrDefault(set, Curve.NONE).from(rate::weighed, least);
    }

    private Curve or(Curve one, Curve other) {
        meter.spend(1L + one.size() + other.size());
        return one.or(other, Curve.Keep.ALL);
    }

    private Curve and(Curve one, Curve other) {
        meter.spend(1L + (long) one.size() * other.size());
        return one.and(other, Curve.Keep.ALL);
    }
}

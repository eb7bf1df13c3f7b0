package fettle.space.worth;

import fettle.space.Bare;
import fettle.space.Circuit;
import fettle.space.Stand;
import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;

/** What the choices out of a node of the circuit without slots cost and bring, role set by role set, worked out when asked for. */
final class Tradeoffs {

    private final Circuit slotted;
    private final Bare bare;
    private final Circuit circuit;
    private final RoleSets roles;
    private final Worths worths;
    private final Curve.Keep keep;
    private final Meter meter;
    /** By node, for each of its sets of roles in their order. */
    private Curve[][] known = {};

    Tradeoffs(Circuit slotted, Bare bare, RoleSets roles, Worths worths, Curve.Keep keep, Meter meter) {
        this.slotted = slotted;
        this.bare = bare;
        this.circuit = bare.circuit();
        this.roles = roles;
        this.worths = worths;
        this.keep = keep;
        this.meter = meter;
    }

    /** The assemblies of a stand that serve just these roles and can be bought. */
    Curve of(Stand stand, long set) {
        return of(bare.of(stand.node()), set);
    }

    /** The choices of a node that serve just these roles and can be bought. */
    Curve of(int node, long set) {
        int at = roles.below(node).place(set);
        return at < 0 ? Curve.NONE : at(node, at);
    }

    private Curve at(int node, int place) {
        if (node >= known.length) {
            known = Arrays.copyOf(known, Math.max(circuit.size(), 2 * known.length));
        }
        if (known[node] == null) {
            known[node] = new Curve[roles.below(node).size()];
        }
        if (known[node][place] == null) {
            known[node][place] = work(node, place);
        }
        return known[node][place];
    }

    private Curve work(int node, int place) {
        long set = roles.below(node).set(place);
        int first = circuit.first(node);
        int second = circuit.second(node);
        return switch (circuit.kind(node)) {
            case ONE -> Curve.NOTHING;
            case PART -> worths.sold(first) ? on(second, roles.of(first), set).moved(worths.cost(first), worths.benefit(first)) : Curve.NONE;
            case SLOT -> throw new IllegalStateException("there are no slots");
            case BOTH -> both(first, second, roles.making(node, place));
            case SEVERAL -> several(first, second, set);
            case EITHER -> {
                Curve all = Curve.NONE;
                for (int i = 0; i < circuit.width(node); i++) {
                    all = or(all, of(circuit.alternative(node, i), set));
                }
                yield all;
            }
        };
    }

    /** What may be on a part that has a role or none. */
    private Curve on(int node, long role, long set) {
        Curve besides = of(node, set & ~role);
        return role == 0 ? besides : or(besides, of(node, set));
    }

    private Curve both(int one, int other, int[] making) {
        Curve all = Curve.NONE;
        for (int i = 0; i < making.length; i += 2) {
            Curve some = at(one, making[i]);
            Curve others = some.isEmpty() ? Curve.NONE : at(other, making[i + 1]);
            all = others.isEmpty() || all.coversAllOf(some, others, keep) ? all : or(all, and(some, others));
        }
        return all;
    }

    /** Of the same several times in no order the best are the best of so many in order. */
    private Curve several(int of, int copies, long set) {
        Map<Long, Curve> all = new HashMap<>(Map.of(0L, Curve.NOTHING));
        for (int i = 0; i < copies; i++) {
            Map<Long, Curve> more = new HashMap<>();
            all.forEach((some, curve) -> {
                for (long others : roles.below(of).sets()) {
                    if ((others & ~set) == 0) {
                        more.merge(some | others, and(curve, of(of, others)), this::or);
                    }
                }
            });
            all = more;
        }
        return all.getOrDefault(set, Curve.NONE);
    }

    private Curve or(Curve one, Curve other) {
        meter.spend(1L + one.size() + other.size());
        return one.or(other, keep);
    }

    private Curve and(Curve one, Curve other) {
        meter.spend(keep == Curve.Keep.CORNERS ? 1L + one.size() + other.size() : 1L + (long) one.size() * other.size());
        return one.and(other, keep);
    }

    /** The assembly of a stand that serves these roles, costs so much and brings so much, which is one of those kept. */
    Pick.Headed pick(Stand stand, long set, long cost, long benefit) {
        return (Pick.Headed) pick(stand.node(), set, cost, benefit);
    }

    /** A choice of a node with slots. */
    private Pick pick(int node, long set, long cost, long benefit) {
        int first = slotted.first(node);
        int second = slotted.second(node);
        return switch (slotted.kind(node)) {
            case ONE -> Pick.NOTHING;
            case PART -> {
                long cheaper = cost - worths.cost(first);
                long less = benefit - worths.benefit(first);
                long besides = set & ~roles.of(first);
                yield new Pick.Headed(first, pick(second, of(bare.of(second), besides).holds(cheaper, less) ? besides : set, cheaper, less));
            }
            case SLOT -> new Pick.InSlot(first, pick(second, set, cost, benefit));
            case BOTH -> halves(first, second, set, cost, benefit);
            case SEVERAL -> copies(first, second, set, cost, benefit);
            case EITHER -> {
                int i = 0;
                while (!of(bare.of(slotted.alternative(node, i)), set).holds(cost, benefit)) {
                    i++;
                }
                yield pick(slotted.alternative(node, i), set, cost, benefit);
            }
        };
    }

    private Pick halves(int one, int other, long set, long cost, long benefit) {
        for (long some : roles.served(one).sets()) {
            Curve curve = (some & ~set) == 0 ? of(bare.of(one), some) : Curve.NONE;
            for (int i = 0; i < curve.size(); i++) {
                for (long others : roles.served(other).sets()) {
                    if ((some | others) == set && of(bare.of(other), others).holds(cost - curve.cost(i), benefit - curve.benefit(i))) {
                        return Pick.both(pick(one, some, curve.cost(i), curve.benefit(i)), pick(other, others, cost - curve.cost(i), benefit - curve.benefit(i)));
                    }
                }
            }
        }
        throw new IllegalStateException("what was put together can be taken apart");
    }

    private Pick copies(int of, int copies, long set, long cost, long benefit) {
        if (copies == 1) {
            return pick(of, set, cost, benefit);
        }
        for (long some : roles.served(of).sets()) {
            Curve curve = (some & ~set) == 0 ? of(bare.of(of), some) : Curve.NONE;
            for (int i = 0; i < curve.size(); i++) {
                for (long others = set; ; others = (others - 1) & set) {
                    if ((some | others) == set && several(bare.of(of), copies - 1, others).holds(cost - curve.cost(i), benefit - curve.benefit(i))) {
                        return Pick.both(pick(of, some, curve.cost(i), curve.benefit(i)),
                                copies(of, copies - 1, others, cost - curve.cost(i), benefit - curve.benefit(i)));
                    }
                    if (others == 0) {
                        break;
                    }
                }
            }
        }
        throw new IllegalStateException("what was put together can be taken apart");
    }
}

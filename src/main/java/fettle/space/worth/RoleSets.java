package fettle.space.worth;

import fettle.catalog.Catalog;
import fettle.catalog.Part;
import fettle.space.Bare;
import fettle.space.Circuit;
import fettle.space.Prices;
import fettle.space.Terrain;
import java.nio.LongBuffer;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * The sets of role kinds that the choices out of a node of the circuit without slots serve, as bits, among the choices of which all parts are sold. Once made it may be used
 * by several threads.
 */
final class RoleSets {

    private static final int MOST = Long.SIZE - 1;

    private final Bare bare;
    private final Circuit circuit;
    private final Meter meter;
    private final long[] bits;
    private final boolean[] sold;
    private final Map<LongBuffer, RoleList> lists = new HashMap<>();
    private final Map<Long, RoleList.Joined> joined = new HashMap<>();
    private final Map<Long, RoleList> united = new HashMap<>();
    private final RoleList unsold = list();
    private final RoleList noRole = list(0L);
    /** By node. */
    private final RoleList[] below;
    private final RoleList.Joined[] joinedAt;

    /**
     * Those of all nodes that the circuit has.
     *
     * @throws Meter.Spent where there are too many
     */
    RoleSets(Catalog catalog, Terrain terrain, Bare bare, Prices prices, Meter meter) {
        this.bare = bare;
        this.circuit = bare.circuit();
        this.meter = meter;
        List<Part> parts = terrain.hosts().subList(0, terrain.parts()).stream().map(catalog.parts()::get).toList();
        List<String> roles = parts.stream().flatMap(part -> catalog.roleOf(part).stream()).distinct().sorted().toList();
        this.bits = parts.stream().mapToLong(part -> catalog.roleOf(part).map(role -> 1L << roles.indexOf(role)).orElse(0L)).toArray();
        this.sold = new boolean[parts.size()];
        for (int p = 0; p < sold.length; p++) {
            sold[p] = prices.cheapest(parts.get(p).id()).isPresent();
        }
        this.below = new RoleList[circuit.size()];
        this.joinedAt = new RoleList.Joined[circuit.size()];
        // Whatever a node is made of has a smaller number.
        for (int node = 0; node < below.length; node++) {
            below[node] = made(node);
        }
    }

    /** Whether a catalog has few enough role kinds. */
    static boolean fit(Catalog catalog) {
        return catalog.parts().values().stream().flatMap(part -> catalog.roleOf(part).stream()).distinct().count() <= MOST;
    }

    private RoleList made(int node) {
        int first = circuit.first(node);
        int second = circuit.second(node);
        return switch (circuit.kind(node)) {
            case ONE -> noRole;
            case PART -> !sold[first] ? unsold : bits[first] == 0 ? below[second] : joined(list(bits[first]), below[second]).all();
            case SLOT -> throw new IllegalStateException("there are no slots");
            case BOTH -> {
                joinedAt[node] = joined(below[first], below[second]);
                yield joinedAt[node].all();
            }
            case SEVERAL -> {
                RoleList all = below[first];
                for (int i = 1; i < second; i++) {
                    all = joined(all, below[first]).all();
                }
                yield all;
            }
            case EITHER -> {
                RoleList all = unsold;
                for (int i = 0; i < circuit.width(node); i++) {
                    all = united(all, below[circuit.alternative(node, i)]);
                }
                yield all;
            }
        };
    }

    private RoleList united(RoleList one, RoleList other) {
        if (one == other || other == unsold) {
            return one;
        }
        if (one == unsold) {
            return other;
        }
        return united.computeIfAbsent(key(one, other), unused -> {
            meter.spend((long) one.size() + other.size());
            return list(SmallestFirst.either(one.sets(), other.sets()));
        });
    }

    private RoleList.Joined joined(RoleList one, RoleList other) {
        return joined.computeIfAbsent(key(one, other), unused -> {
            meter.spend((long) one.size() * other.size());
            return new RoleList.Joined(one, other, list(SmallestFirst.both(one.sets(), other.sets())));
        });
    }

    private static long key(RoleList one, RoleList other) {
        return (long) one.number() << Integer.SIZE | other.number();
    }

    /** Equal lists are kept once. */
    private RoleList list(long... sets) {
        return lists.computeIfAbsent(LongBuffer.wrap(sets), unused -> new RoleList(lists.size(), sets));
    }

    /** The role of a part; no bit where it has none. */
    long of(int part) {
        return bits[part];
    }

    /** The places of sets of both nodes that a node is made of, which together make up the set in a place of its own: all such pairs one after the other. */
    int[] making(int both, int place) {
        return joinedAt[both].making(place);
    }

    /** Where the set is that each set of the first of the two that a node is made of makes up with each of the second, the first's first set first. */
    int[] madeBy(int both) {
        return joinedAt[both].made();
    }

    /** Those of a node with slots. */
    RoleList served(int slotted) {
        return below[bare.of(slotted)];
    }

    /** Those of a node, the smallest sets first; none where something that is not sold is in each choice. */
    RoleList below(int node) {
        return below[node];
    }
}

package fettle.space.worth;

import fettle.catalog.Catalog;
import fettle.catalog.Part;
import fettle.space.Circuit;
import fettle.space.Terrain;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeSet;

/** The sets of role kinds that the choices out of a node of the circuit serve, as bits. */
final class RoleSets {

    /** The smallest sets first. */
    static final Comparator<Long> SMALLEST = Comparator.<Long>comparingInt(Long::bitCount).thenComparing(Comparator.naturalOrder());

    private static final int MOST = Long.SIZE - 1;
    private static final long[] NO_ROLE = {0};

    private final Circuit circuit;
    private final Meter meter;
    private final List<String> roles;
    private final long[] bits;
    private final long[][] known;

    RoleSets(Catalog catalog, Terrain terrain, Circuit circuit, Meter meter) {
        this.circuit = circuit;
        this.meter = meter;
        this.known = new long[circuit.size()][];
        List<Part> parts = terrain.hosts().subList(0, terrain.parts()).stream().map(catalog.parts()::get).toList();
        this.roles = parts.stream().flatMap(part -> catalog.roleOf(part).stream()).distinct().sorted().toList();
        this.bits = parts.stream().mapToLong(part -> catalog.roleOf(part).map(role -> 1L << roles.indexOf(role)).orElse(0L)).toArray();
    }

    /** Whether there are few enough role kinds. */
    boolean fit() {
        return roles.size() <= MOST;
    }

    /** The role of a part; no bit where it has none. */
    long of(int part) {
        return bits[part];
    }

    /** The names of the roles in a set. */
    SortedSet<String> names(long set) {
        SortedSet<String> names = new TreeSet<>();
        for (int i = 0; i < roles.size(); i++) {
            if ((set & 1L << i) != 0) {
                names.add(roles.get(i));
            }
        }
        return names;
    }

    /** Those of a node, the smallest sets first. */
    long[] below(int node) {
        long[] sets = known[node];
        if (sets == null) {
            int first = circuit.first(node);
            int second = circuit.second(node);
            sets = switch (circuit.kind(node)) {
                case ONE -> NO_ROLE;
                case PART -> bits[first] == 0 ? below(second) : pairs(new long[] {bits[first]}, below(second));
                case SLOT -> below(second);
                case BOTH -> pairs(below(first), below(second));
                case SEVERAL -> {
                    long[] all = below(first);
                    for (int i = 1; i < second; i++) {
                        all = pairs(all, below(first));
                    }
                    yield all;
                }
                case EITHER -> {
                    Set<Long> all = new HashSet<>();
                    long[] last = NO_ROLE;
                    for (int i = 0; i < circuit.width(node); i++) {
                        long[] some = below(circuit.alternative(node, i));
                        if (i == 0 || !Arrays.equals(some, last)) {
                            meter.spend(some.length);
                            Arrays.stream(some).forEach(all::add);
                        }
                        last = some;
                    }
                    yield sorted(all);
                }
            };
            known[node] = sets;
        }
        return sets;
    }

    private long[] pairs(long[] some, long[] others) {
        if (some.length == 1 && some[0] == 0) {
            return others;
        }
        if (others.length == 1 && others[0] == 0) {
            return some;
        }
        meter.spend((long) some.length * others.length);
        Set<Long> all = new HashSet<>();
        for (long one : some) {
            for (long other : others) {
                all.add(one | other);
            }
        }
        return sorted(all);
    }

    private static long[] sorted(Set<Long> sets) {
        List<Long> all = new ArrayList<>(sets);
        all.sort(SMALLEST);
        return all.stream().mapToLong(Long::longValue).toArray();
    }
}

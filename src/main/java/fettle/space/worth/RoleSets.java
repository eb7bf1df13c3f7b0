package fettle.space.worth;

import fettle.catalog.Catalog;
import fettle.catalog.Part;
import fettle.space.Bare;
import fettle.space.Circuit;
import fettle.space.Prices;
import fettle.space.Stand;
import fettle.space.Terrain;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.stream.IntStream;

/** The sets of role kinds that the choices out of a node of the circuit without slots serve, as bits, among the choices of which all parts are sold. */
final class RoleSets {

    /** The smallest sets first. */
    static final Comparator<Long> SMALLEST = Comparator.<Long>comparingInt(Long::bitCount).thenComparing(Comparator.naturalOrder());

    private static final int MOST = Long.SIZE - 1;
    private static final int FEW = 4;
    /** With no more role kinds than this, places of sets are found without a search. */
    private static final int DIRECT = 12;
    /** Pairs of sets are remembered where there are no more. */
    private static final int MOST_PAIRED = 1 << 14;
    private static final long[] NO_ROLE = {0};
    private static final long[] UNSOLD = {};

    private final Bare bare;
    private final Circuit circuit;
    private final Meter meter;
    private final List<String> roles;
    private final long[] bits;
    private final boolean[] sold;
    private long[][] known = {};
    private final Map<Set<Long>, long[]> lists = new HashMap<>();
    private final Map<long[], Map<Long, Integer>> places = new IdentityHashMap<>();
    private final Map<long[], int[]> direct = new IdentityHashMap<>();
    private final Map<long[], Map<long[], Map<Long, int[]>>> pairs = new IdentityHashMap<>();

    RoleSets(Catalog catalog, Terrain terrain, Bare bare, Prices prices, Meter meter) {
        this.bare = bare;
        this.circuit = bare.circuit();
        this.meter = meter;
        List<Part> parts = terrain.hosts().subList(0, terrain.parts()).stream().map(catalog.parts()::get).toList();
        this.roles = parts.stream().flatMap(part -> catalog.roleOf(part).stream()).distinct().sorted().toList();
        this.bits = parts.stream().mapToLong(part -> catalog.roleOf(part).map(role -> 1L << roles.indexOf(role)).orElse(0L)).toArray();
        this.sold = new boolean[parts.size()];
        for (int p = 0; p < sold.length; p++) {
            sold[p] = prices.cheapest(parts.get(p).id()).isPresent();
        }
    }

    /** Whether there are few enough role kinds. */
    boolean fit() {
        return roles.size() <= MOST;
    }

    /** The role of a part; no bit where it has none. */
    long of(int part) {
        return bits[part];
    }

    /** Where a set is among those of a node; -1 where it is none of them. */
    int place(int node, long set) {
        long[] sets = below(node);
        if (sets.length <= FEW) {
            for (int at = 0; at < sets.length; at++) {
                if (sets[at] == set) {
                    return at;
                }
            }
            return -1;
        }
        return roles.size() <= DIRECT ? direct.computeIfAbsent(sets, this::directly)[(int) set] : places.computeIfAbsent(sets, RoleSets::placed).getOrDefault(set, -1);
    }

    /** By set, its place among some; -1 where it is none of them. */
    private int[] directly(long[] sets) {
        int[] found = new int[1 << roles.size()];
        Arrays.fill(found, -1);
        for (int at = 0; at < sets.length; at++) {
            found[(int) sets[at]] = at;
        }
        return found;
    }

    private static Map<Long, Integer> placed(long[] sets) {
        Map<Long, Integer> found = new HashMap<>();
        for (int at = 0; at < sets.length; at++) {
            found.put(sets[at], at);
        }
        return found;
    }

    /** The places of a set of one node and of one of another that together make up a set, all such pairs one after the other. */
    int[] making(int one, int other, long set) {
        long[] some = below(one);
        long[] others = below(other);
        if ((long) some.length * others.length > MOST_PAIRED) {
            return paired(some, others, set);
        }
        return pairs.computeIfAbsent(some, unused -> new IdentityHashMap<>()).computeIfAbsent(others, unused -> new HashMap<>())
                .computeIfAbsent(set, unused -> paired(some, others, set));
    }

    private int[] paired(long[] some, long[] others, long set) {
        IntStream.Builder places = IntStream.builder();
        for (int i = 0; i < some.length; i++) {
            if ((some[i] & ~set) == 0) {
                for (int j = 0; j < others.length; j++) {
                    if ((some[i] | others[j]) == set) {
                        places.add(i).add(j);
                    }
                }
            }
        }
        return places.build().toArray();
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

    /** Those of a stand. */
    long[] below(Stand stand) {
        return below(bare.of(stand.node()));
    }

    /** Those of a node, the smallest sets first; none where something that is not sold is in each choice. */
    long[] below(int node) {
        if (node >= known.length) {
            known = Arrays.copyOf(known, Math.max(circuit.size(), 2 * known.length));
        }
        long[] sets = known[node];
        if (sets == null) {
            int first = circuit.first(node);
            int second = circuit.second(node);
            sets = switch (circuit.kind(node)) {
                case ONE -> NO_ROLE;
                case PART -> !sold[first] ? UNSOLD : bits[first] == 0 ? below(second) : pairs(new long[] {bits[first]}, below(second));
                case SLOT -> throw new IllegalStateException("there are no slots");
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

    /** Equal lists are kept once. */
    private long[] sorted(Set<Long> sets) {
        return lists.computeIfAbsent(sets, unused -> {
            List<Long> all = new ArrayList<>(sets);
            all.sort(SMALLEST);
            return all.stream().mapToLong(Long::longValue).toArray();
        });
    }
}

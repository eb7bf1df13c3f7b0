package fettle.space;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.Collection;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.IntStream;

/**
 * What valid builds hold in a slot, whatever stands around it: slots of one platform or several that hold the same are dealt with together, and the swaps that are safe in
 * all of them, or in none, are known here.
 */
public final class Contents {

    /** What is known of a swap without looking at what stands around. */
    public enum Known { SAFE, UNSAFE, DEPENDS }

    private static final int[] NONE = {};
    private static final int MOST_MADE = 1_000;

    private final Ground ground;
    private final Terrain terrain;
    private final Watches watches;
    private final Company company;
    private final int slot;
    private final List<Integer> classes;
    private final List<BitSet> above;
    private final List<Stand> stands = new ArrayList<>();
    private final Map<Integer, int[]> classesOf = new HashMap<>();
    private final int[] looked;
    private final int[][] brought;
    /** What is known of swaps is asked for far more often than found out, by several threads. */
    private final Map<Long, int[]> open = new ConcurrentHashMap<>();
    private final Map<Integer, int[]> openToEmpty = new ConcurrentHashMap<>();
    /** By place among the monitors that are looked at, by state, the sets of states seen alike here that have it. */
    private final Map<Integer, Map<Integer, List<Integer>>> placed = new HashMap<>();
    private volatile Map<Integer, Beside> beside;
    /** What was asked about before, which is asked about again for other stands and other slots that hold this. */
    private final Map<Rehung, Made> made = new IdentityHashMap<>();

    /**
     * Contents.
     *
     * @param slot one of the slots
     * @param classes the nodes of what the slot holds, each seen alike from outside, in rising order
     * @param above for each, the parts that may not stand below themselves and stand above it in some valid build
     */
    Contents(Ground ground, Watches watches, Company company, int slot, List<Integer> classes, List<BitSet> above) {
        this.ground = ground;
        this.terrain = ground.terrain();
        this.watches = watches;
        this.company = company;
        this.slot = slot;
        this.classes = List.copyOf(classes);
        this.above = List.copyOf(above);
        this.looked = ground.insideMonitors(ground.nodeOf(slot));
        this.brought = new int[classes.size()][];
        Map<Integer, List<Integer>> found = new TreeMap<>();
        for (int i = 0; i < classes.size(); i++) {
            for (int part : watches.partsIn(classes.get(i))) {
                found.computeIfAbsent(part, unused -> new ArrayList<>()).add(i);
            }
        }
        found.forEach((part, in) -> {
            stands.add(new Stand(part, watches.circuit().first(part)));
            classesOf.put(part, in.stream().mapToInt(Integer::intValue).toArray());
        });
    }

    /** One of the slots that hold this. */
    public int slot() {
        return slot;
    }

    /** How much the slot holds. */
    public Capacity room() {
        return terrain.room()[slot];
    }

    /** Whether the slot holds several parts. */
    public boolean several() {
        return room().most() > 1;
    }

    /** All that stands there; each assembly stands in one of these, save where {@link #circling}. */
    public List<Stand> stands() {
        return stands;
    }

    /** Whether what may not stand below itself stands above, so that an assembly may stand in several stands and not be at home everywhere. */
    public boolean circling() {
        return above.stream().anyMatch(parts -> !parts.isEmpty());
    }

    /** The parts that may not stand below themselves and stand above some of these in some valid build. */
    public BitSet above(Collection<Stand> all) {
        BitSet found = new BitSet();
        for (Stand stand : all) {
            for (int i : classesOf.get(stand.node())) {
                found.or(above.get(i));
            }
        }
        return found;
    }

    /** The places, among the classes, of those in which a stand is. */
    int[] classesOf(Stand stand) {
        return classesOf.get(stand.node());
    }

    /** How many classes there are. */
    int classes() {
        return classes.size();
    }

    /** The node of a class. */
    int classNode(int i) {
        return classes.get(i);
    }

    /** Whether assemblies in place of others always find room: of their head and its span only. */
    boolean roomFor(Stand from, int head) {
        return !repeats(from, head) && longEnough(from, head);
    }

    /** Whether a head stands beside some assembly of a stand and may not stand there twice. */
    private boolean repeats(Stand from, int head) {
        return several() && room().distinct() && head != from.head() && beside().get(from.node()).heads().get(head);
    }

    private boolean longEnough(Stand from, int head) {
        if (!several()) {
            return terrain.span()[head] <= room().notches();
        }
        return !room().measured() || beside().get(from.node()).span() + terrain.span()[head] <= room().notches();
    }

    private Map<Integer, Beside> beside() {
        Map<Integer, Beside> found = beside;
        if (found == null) {
            synchronized (watches) {
                found = beside == null ? company.of(classes) : beside;
                beside = found;
            }
        }
        return found;
    }

    /** What is known of a swap. */
    public Known known(Stand from, Stand to) {
        if (!roomFor(from, to.head())) {
            return Known.UNSAFE;
        }
        return open(from, to).length == 0 ? Known.SAFE : Known.DEPENDS;
    }

    /** The relations' monitors for which a swap's safety depends on what stands around. */
    int[] open(Stand from, Stand to) {
        int[] fromClasses = classesOf(from);
        int[] toClasses = classesOf(to);
        if (!several() && Arrays.equals(fromClasses, toClasses)) {
            return NONE;
        }
        boolean byClass = !several() && fromClasses.length == 1 && toClasses.length == 1;
        // Classes are numbered by themselves, and must not be taken for nodes of the same number.
        long key = byClass ? KeyOfTwo.of(~fromClasses[0], ~toClasses[0]) : KeyOfTwo.of(from.node(), to.node());
        int[] found = open.get(key);
        if (found == null) {
            synchronized (watches) {
                found = watches.shared(
                        byClass ? openByClass(fromClasses[0], toClasses[0]) : Arrays.stream(looked).filter(monitor -> !sameFilling(watches.of(monitor), from, to)).toArray());
            }
            open.put(key, found);
        }
        return found;
    }

    private int[] openByClass(int from, int to) {
        int[] before = brought(from);
        int[] after = brought(to);
        int[] differing = new int[looked.length];
        int count = 0;
        for (int i = 0; i < looked.length; i++) {
            if (before[i] != after[i] && !watches.of(looked[i]).noWorse(after[i], before[i])) {
                differing[count++] = looked[i];
            }
        }
        return count == 0 ? NONE : Arrays.copyOf(differing, count);
    }

    /** The states of a class in a slot of one, with the slot in use, by each monitor that is looked at. */
    private int[] brought(int classAt) {
        if (brought[classAt] == null) {
            brought[classAt] = Arrays.stream(looked).map(monitor -> watches.of(monitor).closed(slot, watches.of(monitor).within(slot, classes.get(classAt)))).toArray();
        }
        return brought[classAt];
    }

    private boolean sameFilling(Watch watch, Stand from, Stand to) {
        int before = watch.brought(slot, from.head());
        int after = watch.brought(slot, to.head());
        int one = watch.inside(to.node());
        int other = watch.inside(from.node());
        if (before == after && watch.noWorse(one, other)) {
            return true;
        }
        return watch.sameGathered(before, after) && watch.noWorse(watch.plusFilling(one, after), watch.plusFilling(other, before));
    }

    /** Whether a swap is safe whatever stands around. */
    public boolean surelySafe(Stand from, Stand to) {
        return known(from, to) == Known.SAFE;
    }

    /** Whether swaps either way are safe whatever stands around, were it not that both can be there, side by side, and neither twice. */
    public boolean safeUnlessTwice(Stand one, Stand other) {
        return repeats(one, other.head()) && longEnough(one, other.head()) && longEnough(other, one.head()) && open(one, other).length == 0 && open(other, one).length == 0;
    }

    /** Whether a swap is unsafe whatever stands around. */
    public boolean surelyUnsafe(Stand from, Stand to) {
        return known(from, to) == Known.UNSAFE;
    }

    /** What is known of taking a stand out. */
    public Known knownToEmpty(Stand from) {
        if (several() || room().filled()) {
            return Known.UNSAFE;
        }
        return openToEmpty(from).length == 0 ? Known.SAFE : Known.DEPENDS;
    }

    int[] openToEmpty(Stand from) {
        int[] found = openToEmpty.get(from.node());
        if (found == null) {
            synchronized (watches) {
                found = watches.shared(Arrays.stream(looked).filter(monitor -> {
                    Watch watch = watches.of(monitor);
                    return !watch.noWorse(StateSets.ZERO, watch.closed(slot, watch.within(slot, from.node())));
                }).toArray());
            }
            openToEmpty.put(from.node(), found);
        }
        return found;
    }

    /** What is known of a swap for what is made from a stand. */
    public Known known(Stand from, Rehung to) {
        synchronized (watches) {
            if (!roomFor(from, to.head())) {
                return Known.UNSAFE;
            }
            return made(from.head(), to).sure() ? Known.SAFE : Known.DEPENDS;
        }
    }

    int[] open(Stand from, Rehung to) {
        synchronized (watches) {
            return made(from.head(), to).open();
        }
    }

    private Made made(int head, Rehung to) {
        Made known = made.get(to);
        if (known == null || known.head != head) {
            if (made.size() == MOST_MADE) {
                made.clear();
            }
            known = new Made(head, to);
            made.put(to, known);
        }
        return known;
    }

    /** What is made from any stand of a head; whether it may take the place of what it is made from is the same for all of them. */
    private final class Made {

        private final int head;
        private final Rehung to;
        private int[] open;
        private Boolean sure;

        Made(int head, Rehung to) {
            this.head = head;
            this.to = to;
        }

        /** Whether it may whatever stands around. */
        boolean sure() {
            if (sure == null) {
                sure = IntStream.range(0, looked.length).allMatch(this::noWorse);
            }
            return sure;
        }

        /** The monitors for which that depends on what stands around. */
        int[] open() {
            if (open == null) {
                open = sure() ? NONE : IntStream.range(0, looked.length).filter(i -> !noWorse(i)).map(i -> looked[i]).toArray();
            }
            return open;
        }

        private boolean noWorse(int at) {
            return watches.of(looked[at]).rehungNoWorse(slot, head, to) || rehungAsPlaced(at, head, to);
        }
    }

    /** Whether all that is made is as good as what it is made from, seen from where this stands: states that are apart by themselves are often alike there. */
    private boolean rehungAsPlaced(int at, int head, Rehung to) {
        return !several() && watches.of(looked[at]).rehungAmong(slot, head, to, placed.computeIfAbsent(at, this::placedBy));
    }

    private Map<Integer, List<Integer>> placedBy(int at) {
        Map<Integer, List<Integer>> sets = new HashMap<>();
        IntStream.range(0, classes.size()).map(i -> brought(i)[at]).distinct()
                .forEach(set -> Arrays.stream(watches.of(looked[at]).states().get(set)).forEach(state -> sets.computeIfAbsent(state, one -> new ArrayList<>()).add(set)));
        return sets;
    }

    /** Whether what a use of a slot holds may stand wherever what another holds does; either may be {@link Circuit#ONE} for nothing. */
    public boolean alwaysInstead(int inSlot, int before, int after) {
        synchronized (watches) {
            return Arrays.stream(ground.insideMonitors(ground.nodeOf(inSlot))).mapToObj(watches::of).allMatch(watch -> watch.noWorse(watch.inside(after), watch.inside(before)));
        }
    }

    /** A number that slots share which hold the same and look the same. */
    public int shape(int ofSlot) {
        return ground.nodeOf(ofSlot);
    }

    /** All swaps whose safety depends on what stands around taken as safe, or all as unsafe. */
    public Swaps supposing(boolean safe) {
        return new Swaps() {
            @Override
            public boolean onlyIfSure() {
                return !safe;
            }

            @Override
            public boolean safe(Stand from, Stand to) {
                return supposed(known(from, to));
            }

            @Override
            public boolean safeToEmpty(Stand from) {
                return supposed(knownToEmpty(from));
            }

            @Override
            public boolean safe(Stand from, Rehung to) {
                return safe ? roomFor(from, to.head()) : supposed(known(from, to));
            }

            private boolean supposed(Known known) {
                return known == Known.SAFE || safe && known == Known.DEPENDS;
            }
        };
    }

    /** Whether what a slot holds can stand in another for sure. */
    public boolean takes(int from, int into) {
        if (ground.nodeOf(from) == ground.nodeOf(into)) {
            return true;
        }
        Capacity less = terrain.room()[from];
        Capacity more = terrain.room()[into];
        return more.most() >= less.most() && more.notches() >= less.notches() && (less.distinct() || !more.distinct())
                && Numbers.contains(terrain.candidates()[into], terrain.candidates()[from])
                && ground.monitors().lookOf(from).equals(ground.monitors().lookOf(into));
    }

    /** Whether a part can come back below itself. */
    public boolean circular(int part) {
        return ground.circular(part);
    }

    /** Whether something in a slot can come back below itself. */
    public boolean circularSlot(int slot) {
        return ground.circular(ground.nodeOf(slot));
    }
}

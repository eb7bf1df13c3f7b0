package fettle.space;

import fettle.catalog.SlotId;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/** The parts to which chains of fits lead from a platform. */
final class Reach {

    private final Terrain terrain;
    private final int platform;
    private final BitSet parts = new BitSet();

    private Reach(Terrain terrain, int platform) {
        this.terrain = terrain;
        this.platform = platform;
    }

    static Reach of(Terrain terrain, int platform) {
        Reach reach = new Reach(terrain, platform);
        List<Integer> open = new ArrayList<>(List.of(platform));
        for (int i = 0; i < open.size(); i++) {
            for (int slot : terrain.slotsOf()[open.get(i)]) {
                for (int part : terrain.candidates()[slot]) {
                    if (!reach.parts.get(part)) {
                        reach.parts.set(part);
                        open.add(part);
                    }
                }
            }
        }
        return reach;
    }

    String platformName() {
        return terrain.hosts().get(platform);
    }

    BitSet parts() {
        return parts;
    }

    SortedSet<String> partNames() {
        return named(parts, terrain.hosts());
    }

    /** The slots of the platform and of these parts. */
    SortedSet<SlotId> slots() {
        return named(slotNumbers(), terrain.slots());
    }

    /** The parts that are not among some. */
    SortedSet<String> partsBut(BitSet some) {
        return named(but(parts, some), terrain.hosts());
    }

    /** The slots that are not among some. */
    SortedSet<SlotId> slotsBut(BitSet some) {
        return named(but(slotNumbers(), some), terrain.slots());
    }

    private BitSet slotNumbers() {
        BitSet slots = new BitSet();
        IntStream.concat(IntStream.of(platform), parts.stream()).flatMap(host -> IntStream.of(terrain.slotsOf()[host])).forEach(slots::set);
        return slots;
    }

    private static BitSet but(BitSet all, BitSet some) {
        BitSet rest = (BitSet) all.clone();
        rest.andNot(some);
        return rest;
    }

    private static <T extends Comparable<? super T>> SortedSet<T> named(BitSet numbers, List<T> names) {
        return numbers.stream().mapToObj(names::get).collect(Collectors.toCollection(TreeSet::new));
    }
}

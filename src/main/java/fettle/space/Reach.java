package fettle.space;

import fettle.catalog.SlotId;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.SortedSet;
import java.util.TreeSet;

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
        SortedSet<String> names = new TreeSet<>();
        parts.stream().forEach(part -> names.add(terrain.hosts().get(part)));
        return names;
    }

    /** The slots of the platform and of these parts. */
    List<SlotId> slots() {
        List<SlotId> slots = new ArrayList<>();
        for (int slot : terrain.slotsOf()[platform]) {
            slots.add(terrain.slots().get(slot));
        }
        parts.stream().forEach(part -> {
            for (int slot : terrain.slotsOf()[part]) {
                slots.add(terrain.slots().get(slot));
            }
        });
        return slots;
    }
}

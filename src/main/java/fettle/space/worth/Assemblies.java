package fettle.space.worth;

import fettle.space.Assembly;
import fettle.space.Terrain;
import java.util.ArrayList;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;

/** Writes choices out as assemblies. */
final class Assemblies {

    private final Terrain terrain;

    Assemblies(Terrain terrain) {
        this.terrain = terrain;
    }

    /** The assembly of a choice that is one part with what is on it. */
    Assembly of(Pick.Headed pick) {
        SortedMap<String, List<Assembly>> slots = new TreeMap<>();
        place(pick.on(), slots);
        TreeSet<String> several = new TreeSet<>();
        for (int slot : terrain.slotsOf()[pick.part()]) {
            if (terrain.room()[slot].most() > 1) {
                several.add(terrain.slots().get(slot).slot());
            }
        }
        return new Assembly(terrain.hosts().get(pick.part()), slots, several);
    }

    private void place(Pick on, SortedMap<String, List<Assembly>> slots) {
        if (on instanceof Pick.Both both) {
            place(both.one(), slots);
            place(both.other(), slots);
        } else if (on instanceof Pick.InSlot inSlot) {
            collect(inSlot.held(), slots.computeIfAbsent(terrain.slots().get(inSlot.slot()).slot(), unused -> new ArrayList<>()));
        }
    }

    private void collect(Pick held, List<Assembly> into) {
        if (held instanceof Pick.Both both) {
            collect(both.one(), into);
            collect(both.other(), into);
        } else if (held instanceof Pick.Headed headed) {
            into.add(of(headed));
        }
    }
}

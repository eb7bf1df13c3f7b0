package fettle.space.worth;

import fettle.space.Assembly;
import fettle.space.Stand;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** All assemblies of some stands one by one, the smallest first, each with those of the stands that it stands in: where parts can come back below themselves, these may be several. */
final class Whereabouts {

    private static final int MOST = 20_000;

    private final List<Stand> stands;
    private final Arena arena;
    private final Assemblies assemblies;
    private final Meter meter;
    private Optional<Map<Assembly, Listed>> listed = Optional.empty();
    private boolean tooMany;

    /** An assembly as a choice, with all the stands that it stands in. */
    record Listed(Pick pick, List<Stand> in) {}

    Whereabouts(List<Stand> stands, Arena arena, Assemblies assemblies, Meter meter) {
        this.stands = stands;
        this.arena = arena;
        this.assemblies = assemblies;
        this.meter = meter;
    }

    /** Whether these are the very stands. */
    boolean isOf(List<Stand> others) {
        return stands == others;
    }

    /** The stands that one of the assemblies stands in. */
    List<Stand> of(Assembly assembly) {
        return all().get(assembly).in;
    }

    /** All assemblies; breaks off as a decision that takes too many steps where there are too many, and once that was so it is so again. */
    Map<Assembly, Listed> all() {
        if (tooMany) {
            throw new Meter.Spent();
        }
        if (listed.isEmpty()) {
            tooMany = true;
            Map<Assembly, Listed> found = new HashMap<>();
            for (Stand stand : stands) {
                for (Pick pick : new Listing(arena.circuit(), MOST, meter).of(stand.node())) {
                    if (arena.broughtBy(pick) != null) {
                        Assembly assembly = assemblies.of((Pick.Headed) pick);
                        meter.spend(assembly.parts().size());
                        found.computeIfAbsent(assembly, unused -> new Listed(pick, new ArrayList<>())).in.add(stand);
                    }
                }
            }
            Map<Assembly, Listed> ordered = new LinkedHashMap<>();
            Assembly.smallestFirst(found.keySet()).forEach(assembly -> ordered.put(assembly, found.get(assembly)));
            listed = Optional.of(ordered);
            tooMany = false;
        }
        return listed.get();
    }
}

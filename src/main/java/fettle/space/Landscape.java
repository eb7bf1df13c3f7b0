package fettle.space;

import fettle.relation.Relations;
import java.util.Collections;
import java.util.Optional;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;

/** The valid builds of some platforms of a catalog, folded into one circuit, with what stands around what in them. */
public final class Landscape {

    private final Relations relations;
    private final Terrain terrain;
    private final Circuit circuit;
    private final Optional<Ground> ground;
    private final SortedMap<String, Folded> folded;
    private final Bare bare;
    private Optional<Common> common = Optional.empty();

    /** What plots have in common. */
    private record Common(Watches watches, Stock stock, Uplinks uplinks) {}

    Landscape(Relations relations, Terrain terrain, Circuit circuit, Optional<Ground> ground, SortedMap<String, Folded> folded) {
        this.relations = relations;
        this.terrain = terrain;
        this.circuit = circuit;
        this.ground = ground;
        this.bare = new Bare(circuit);
        this.folded = Collections.unmodifiableSortedMap(new TreeMap<>(folded));
    }

    /** The relations that the builds keep. */
    public Relations relations() {
        return relations;
    }

    /** Parts and slots by number. */
    public Terrain terrain() {
        return terrain;
    }

    /** All that was folded. */
    public Circuit circuit() {
        return circuit;
    }

    /** The same with the slots left out. */
    public Bare bare() {
        return bare;
    }

    /** Each platform's builds, by its id. */
    public SortedMap<String, Folded> folded() {
        return folded;
    }

    /** The platforms that have a valid build. */
    public SortedSet<String> platforms() {
        SortedSet<String> platforms = new TreeSet<>(folded.keySet());
        platforms.removeIf(platform -> folded.get(platform).root() == Circuit.NONE);
        return platforms;
    }

    /** The parts to which a chain of fits leads from a platform. */
    public SortedSet<String> reachable(String platform) {
        return Reach.of(terrain, terrain.number(platform)).partNames();
    }

    /** The circuit's nodes of all builds of each platform that has one. */
    public int[] roots() {
        return folded.values().stream().mapToInt(Folded::root).filter(root -> root != Circuit.NONE).toArray();
    }

    /** A platform that has a valid build, slot by slot. */
    public Plot plot(String platform) {
        if (common.isEmpty()) {
            Watches watches = new Watches(ground.orElseThrow(), circuit);
            common = Optional.of(new Common(watches, new Stock(ground.get(), watches), new Uplinks(circuit, Evaluation.below(circuit, roots()))));
        }
        Common shared = common.get();
        int number = terrain.number(platform);
        int[] base = new Outlook(ground.orElseThrow(), number).base();
        return new Plot(ground.get(), circuit, shared.watches, shared.uplinks, shared.stock, number, base, folded.get(platform).root());
    }
}

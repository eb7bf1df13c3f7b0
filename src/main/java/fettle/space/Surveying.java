package fettle.space;

import fettle.catalog.Catalog;
import fettle.catalog.SlotId;
import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeSet;

/** Asks a circuit all that a survey tells, of several platforms at a time. */
final class Surveying {

    private final Catalog catalog;
    private final Terrain terrain;
    private final Circuit circuit;
    private final int[] platforms;
    private final int[] roots;

    /**
     * A survey of some platforms that are not void.
     *
     * @param platforms their numbers
     * @param roots by platform, the node of all its builds
     */
    Surveying(Catalog catalog, Terrain terrain, Circuit circuit, int[] platforms, int[] roots) {
        this.catalog = catalog;
        this.terrain = terrain;
        this.circuit = circuit;
        this.platforms = platforms;
        this.roots = roots;
    }

    List<Survey> surveys() {
        BitSet all = Evaluation.below(circuit, roots);
        Evaluation<BigInteger> counts = Evaluation.of(circuit, new Counting(), all);
        Evaluation<int[]> essential = Evaluation.of(circuit, new InAll(), all);
        List<SortedMap<String, Range>> ranges = new Ranges(catalog, terrain, circuit, platforms, roots, all).ranges();
        List<Survey> surveys = new ArrayList<>();
        for (int i = 0; i < platforms.length; i++) {
            Reach reach = Reach.of(terrain, platforms[i]);
            SortedSet<String> dead = reach.partNames();
            SortedSet<SlotId> deadSlots = new TreeSet<>(reach.slots());
            BitSet nodes = Evaluation.below(circuit, roots[i]);
            nodes.stream().forEach(node -> {
                switch (circuit.kind(node)) {
                    case PART -> dead.remove(terrain.hosts().get(circuit.first(node)));
                    case SLOT -> deadSlots.remove(terrain.slots().get(circuit.first(node)));
                    case ONE, BOTH, SEVERAL, EITHER -> { }
                }
            });
            SortedSet<String> always = new TreeSet<>(Arrays.stream(essential.of(roots[i])).mapToObj(terrain.hosts()::get).toList());
            surveys.add(new Survey.Known(
                    terrain.hosts().get(platforms[i]), reach.partNames(), counts.of(roots[i]), dead, always, deadSlots, ranges.get(i)));
        }
        return surveys;
    }
}

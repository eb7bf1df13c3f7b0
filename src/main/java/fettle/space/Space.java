package fettle.space;

import fettle.catalog.SlotId;
import fettle.relation.Relations;
import java.math.BigInteger;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;

/** All valid builds of each platform, as the relations have them. Answers are exact, or say that they were given up. */
public final class Space {

    private final Relations relations;
    private final Bounds bounds;
    private final Terrain terrain;
    private final TermMembers members;
    private final Map<Object, Monoid> shapes = new HashMap<>();

    private Space(Relations relations, Bounds bounds) {
        this.relations = relations;
        this.bounds = bounds;
        this.terrain = Terrain.of(relations);
        this.members = new TermMembers(relations, terrain);
    }

    /** The space of the builds that keep these relations. */
    public static Space of(Relations relations) {
        return of(relations, Bounds.ORDINARY);
    }

    /** The same, with bounds on the work that may be spent. */
    public static Space of(Relations relations, Bounds bounds) {
        return new Space(relations, bounds);
    }

    /** The parts that fit no slot of the catalog. */
    public SortedSet<String> homeless() {
        BitSet housed = new BitSet();
        for (int[] candidates : terrain.candidates()) {
            for (int part : candidates) {
                housed.set(part);
            }
        }
        SortedSet<String> homeless = new TreeSet<>();
        for (int part = housed.nextClearBit(0); part < terrain.parts(); part = housed.nextClearBit(part + 1)) {
            homeless.add(terrain.hosts().get(part));
        }
        return homeless;
    }

    /** The valid builds of one platform as a circuit of its own. */
    public Folded folded(String platform) {
        Circuit circuit = new Circuit();
        try {
            Ground ground = new Ground(terrain, Monitors.of(new Rules(relations.clauses(), relations.agreements()), terrain, members, bounds, shapes));
            int root = new Fold(ground, circuit, bounds).platform(terrain.number(platform));
            return new Folded(platform, circuit, root, terrain.hosts(), terrain.slots(), Optional.empty());
        } catch (TooLarge tooLarge) {
            return new Folded(platform, circuit, Circuit.NONE, terrain.hosts(), terrain.slots(), Optional.of(Undecided.of(tooLarge)));
        }
    }

    /** Every platform's survey, by its id. */
    public SortedMap<String, Survey> survey() {
        return survey(relations.catalog().platforms().keySet());
    }

    /** Some platforms' surveys, by their ids; work that they share is done once. */
    public SortedMap<String, Survey> survey(Collection<String> platforms) {
        SortedMap<String, Survey> surveys = new TreeMap<>();
        Ground ground;
        try {
            ground = new Ground(terrain, Monitors.of(new Rules(relations.clauses(), relations.agreements()), terrain, members, bounds, shapes));
        } catch (TooLarge tooLarge) {
            platforms.forEach(platform -> surveys.put(platform, new Survey.Open(platform, reachable(platform), Undecided.of(tooLarge))));
            return surveys;
        }
        Circuit circuit = new Circuit();
        Fold fold = new Fold(ground, circuit, bounds);
        List<Integer> folded = new ArrayList<>();
        List<Integer> roots = new ArrayList<>();
        for (String platform : new TreeSet<>(platforms)) {
            try {
                int root = fold.platform(terrain.number(platform));
                if (root == Circuit.NONE) {
                    surveys.put(platform, empty(platform));
                } else {
                    folded.add(terrain.number(platform));
                    roots.add(root);
                }
            } catch (TooLarge tooLarge) {
                surveys.put(platform, new Survey.Open(platform, reachable(platform), Undecided.of(tooLarge)));
            }
        }
        new Surveying(relations.catalog(), terrain, circuit, ints(folded), ints(roots)).surveys()
                .forEach(survey -> surveys.put(survey.platform(), survey));
        return surveys;
    }

    private static int[] ints(List<Integer> numbers) {
        return numbers.stream().mapToInt(Integer::intValue).toArray();
    }

    private SortedSet<String> reachable(String platform) {
        return Reach.of(terrain, terrain.number(platform)).partNames();
    }

    private Survey empty(String platform) {
        Reach reach = Reach.of(terrain, terrain.number(platform));
        SortedSet<SlotId> slots = new TreeSet<>(reach.slots());
        return new Survey.Known(platform, reach.partNames(), BigInteger.ZERO, reach.partNames(), new TreeSet<>(), slots, new TreeMap<>());
    }
}

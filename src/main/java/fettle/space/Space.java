package fettle.space;

import fettle.catalog.SlotId;
import fettle.document.DeepStack;
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
    private final Rules rules;
    private final Bounds bounds;
    private final Terrain terrain;
    private final TermMembers members;
    private final Map<Object, Monoid> shapes = new HashMap<>();
    /** Made when it is first asked for, which in most catalogs nothing does. */
    private Takers takers;

    private Space(Relations relations, Rules rules, Bounds bounds, Terrain terrain) {
        this.relations = relations;
        this.rules = rules;
        this.bounds = bounds;
        this.terrain = terrain;
        this.members = new TermMembers(relations, terrain);
    }

    /** The space of the builds that keep these relations. */
    public static Space of(Relations relations) {
        return of(relations, Bounds.ORDINARY);
    }

    /** The same, with bounds on the work that may be spent. */
    public static Space of(Relations relations, Bounds bounds) {
        return of(relations, new Rules(relations.clauses(), relations.agreements()), bounds);
    }

    /** The space of the builds that keep these rules, whatever else the relations say of placed things. */
    static Space of(Relations relations, Rules rules, Bounds bounds) {
        return new Space(relations, rules, bounds, Terrain.of(relations));
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
        return folded(List.of(platform)).get(platform);
    }

    /** The valid builds of some platforms, by their ids, in one circuit; work that they share is done once. */
    public SortedMap<String, Folded> folded(Collection<String> platforms) {
        return landscape(platforms).folded();
    }

    /** The valid builds of some platforms with what stands around what in them. */
    public Landscape landscape(Collection<String> platforms) {
        SortedMap<String, Folded> all = new TreeMap<>();
        Circuit circuit = new Circuit();
        Optional<Ground> ground = Optional.empty();
        Optional<Fold> fold = Optional.empty();
        Optional<Undecided> none = Optional.empty();
        try {
            ground = Optional.of(new Ground(terrain, Monitors.of(rules, terrain, members, bounds, shapes)));
            fold = Optional.of(new Fold(ground.get(), circuit, bounds));
        } catch (TooLarge tooLarge) {
            none = Optional.of(Undecided.of(tooLarge));
        }
        for (String platform : new TreeSet<>(platforms)) {
            int root = Circuit.NONE;
            Optional<Undecided> undecided = none;
            try {
                root = fold.isPresent() ? fold.get().platform(terrain.number(platform)) : Circuit.NONE;
            } catch (TooLarge tooLarge) {
                undecided = Optional.of(Undecided.of(tooLarge));
            }
            all.put(platform, new Folded(platform, circuit, root, terrain.hosts(), terrain.slots(), undecided));
        }
        return new Landscape(relations, terrain, circuit, ground, all);
    }

    /** Every platform's survey, by its id. */
    public SortedMap<String, Survey> survey() {
        return survey(relations.catalog().platforms().keySet());
    }

    /** Some platforms' surveys, by their ids; work is done once that is shared by the platforms of a half, and the halves are worked out side by side. */
    public SortedMap<String, Survey> survey(Collection<String> platforms) {
        SortedMap<String, Survey> surveys = new TreeMap<>();
        DeepStack.each(Halves.of(terrain, platforms), half -> {
            Space space = new Space(relations, rules, bounds, terrain);
            return space.survey(space.landscape(half));
        }).forEach(surveys::putAll);
        return surveys;
    }

    /** The surveys of platforms that have been folded, by their ids. */
    public SortedMap<String, Survey> survey(Landscape landscape) {
        SortedMap<String, Survey> surveys = new TreeMap<>();
        List<Folded> filled = new ArrayList<>();
        for (Folded folded : landscape.folded().values()) {
            if (folded.undecided().isPresent()) {
                surveys.put(folded.platform(), new Survey.Open(folded.platform(), reachable(folded.platform()), folded.undecided().get()));
            } else if (folded.isVoid()) {
                surveys.put(folded.platform(), empty(folded.platform()));
            } else {
                filled.add(folded);
            }
        }
        if (!filled.isEmpty()) {
            int[] numbers = filled.stream().mapToInt(folded -> terrain.number(folded.platform())).toArray();
            int[] roots = filled.stream().mapToInt(Folded::root).toArray();
            new Surveying(relations.catalog(), terrain, filled.get(0).circuit(), numbers, roots).surveys()
                    .forEach(survey -> surveys.put(survey.platform(), survey));
        }
        return surveys;
    }

    /**
     * Whether parts can be together in a valid build of a platform; of no parts, whether it has a valid build.
     *
     * @throws IllegalArgumentException where a part or the platform isn't in the catalog
     */
    public Together together(String platform, Collection<String> parts) {
        List<Cause> asked = parts.stream().distinct().<Cause>map(Cause.Asked::new).toList();
        parts.forEach(part -> known(part, relations.catalog().parts().containsKey(part)));
        Together answer = answer(platform, asked);
        // Where there is too much to be reasoned about, a build that is come upon by trying answers all the same.
        return answer instanceof Together.Open
                ? new Muster(relations, platform).with(parts.stream().distinct().toList()).<Together>map(found -> new Together.Possible(platform, found)).orElse(answer) : answer;
    }

    /**
     * Whether a slot of a platform, or of a part that can be on it, holds a part in a valid build.
     *
     * @throws IllegalArgumentException where the slot or the platform isn't in the catalog
     */
    public Together inUse(String platform, SlotId slot) {
        if (relations.slot(slot).isEmpty()) {
            throw new IllegalArgumentException("no slot " + slot);
        }
        return answer(platform, List.of(new Cause.AskedSlot(slot)));
    }

    /** Whether chains of fits lead from a platform to all of these parts. */
    public boolean leadsTo(String platform, Collection<String> parts) {
        return reachable(platform).containsAll(parts);
    }

    private Takers takers() {
        if (takers == null) {
            takers = new Takers(terrain);
        }
        return takers;
    }

    private Together answer(String platform, List<Cause> asked) {
        int number = known(platform, relations.catalog().platforms().containsKey(platform));
        try {
            return new Reasoning(relations, new Setting(terrain, takers(), members, bounds, shapes, number)).answer(asked);
        } catch (TooLarge tooLarge) {
            return new Together.Open(platform, Undecided.of(tooLarge));
        }
    }

    private int known(String id, boolean there) {
        if (!there) {
            throw new IllegalArgumentException("no " + id + " in the catalog");
        }
        return terrain.number(id);
    }

    private SortedSet<String> reachable(String platform) {
        return Reach.of(terrain, terrain.number(platform)).partNames();
    }

    private Survey empty(String platform) {
        Reach reach = Reach.of(terrain, terrain.number(platform));
        return new Survey.Known(platform, reach.partNames(), BigInteger.ZERO, reach.partNames(), new TreeSet<>(), reach.slots(), new TreeMap<>());
    }
}

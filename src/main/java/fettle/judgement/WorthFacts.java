package fettle.judgement;

import fettle.catalog.Catalog;
import fettle.catalog.Fact;
import fettle.catalog.FactList;
import fettle.catalog.Part;
import fettle.space.Assembly;
import fettle.space.Landscape;
import fettle.space.Prices;
import fettle.space.Undecided;
import fettle.space.worth.Comparison;
import fettle.space.worth.Gain;
import fettle.space.worth.Gains;
import fettle.space.worth.Likeness;
import fettle.space.worth.PartWorth;
import fettle.space.worth.Placing;
import fettle.space.worth.SlotWorth;
import fettle.space.worth.Verdict;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Gathers part by part what outdoes it in the slots of all platforms, and what is its equal, as the facts that judgement rules match. Parts of which no figure is stated are
 * left aside, since nothing is known that they could be compared by.
 */
final class WorthFacts {

    private final Catalog catalog;
    private final Prices prices;
    private final Gains gains;
    private final Obscure obscure;
    private final HalfRead halfRead;
    private final Set<String> measured;
    private final SortedMap<String, Seen> seen = new TreeMap<>();
    private final SortedMap<String, SortedMap<String, List<String>>> twins = new TreeMap<>();
    private final SortedMap<String, SortedMap<String, List<String>>> sideBySide = new TreeMap<>();

    /**
     * A slot of a platform that holds a part.
     *
     * @param standing parts that stand there too, among them all that could be the part's twins
     */
    private record Home(String platform, String slot, Set<String> standing) {}

    /** A part standing the same in some slots. */
    private record Alike(PartWorth worth, List<Home> slots) {}

    /** A part wherever it stands. Slots that hold the same share how it stands there, of which there are far fewer than slots. */
    private static final class Seen {

        private final Map<PartWorth, Alike> byWorth = new IdentityHashMap<>();
        private final List<Alike> alike = new ArrayList<>();

        void add(Home slot, PartWorth worth) {
            byWorth.computeIfAbsent(worth, unused -> {
                Alike first = new Alike(worth, new ArrayList<>());
                alike.add(first);
                return first;
            }).slots.add(slot);
        }
    }

    /**
     * All that is known of where a part stands.
     *
     * @param platforms how many platforms it stands on, by slot
     * @param obscure whether it may stand on more
     */
    private record Standing(List<Alike> places, Map<String, Integer> platforms, boolean obscure) {

        SlotsOnPlatforms where(List<Alike> some) {
            SortedMap<String, SortedSet<String>> found = new TreeMap<>();
            some.forEach(alike -> alike.slots.forEach(home -> found.computeIfAbsent(home.slot, unused -> new TreeSet<>()).add(home.platform)));
            List<String> onAll = found.entrySet().stream().filter(each -> onAll(each.getKey(), each.getValue())).map(Map.Entry::getKey).toList();
            onAll.forEach(found::remove);
            return new SlotsOnPlatforms(onAll, found);
        }

        private boolean onAll(String slot, SortedSet<String> on) {
            boolean own = slot.startsWith(on.first() + "/");
            return own || !obscure && on.size() == platforms.get(slot);
        }
    }

    private WorthFacts(Catalog catalog, Obscure obscure, HalfRead halfRead) {
        this.catalog = catalog;
        this.halfRead = halfRead;
        this.prices = new Prices(catalog, Optional.empty());
        this.gains = new Gains(catalog, prices);
        this.obscure = obscure;
        this.measured = measured(catalog, halfRead);
    }

    /** Whether there is any figure to compare parts by. */
    static boolean comparable(Catalog catalog) {
        return !measured(catalog, HalfRead.NONE).isEmpty();
    }

    static List<Object> of(Catalog catalog, HalfRead halfRead, Landscape landscape) {
        WorthFacts worth = new WorthFacts(catalog, Obscure.of(landscape), halfRead);
        Comparison comparison = new Comparison(landscape, Optional.empty());
        landscape.platforms().forEach(platform -> comparison.platform(platform).forEach(worth::see));
        return worth.facts();
    }

    /** Those that are of one part. */
    static List<Object> of(Catalog catalog, HalfRead halfRead, Landscape landscape, String part, List<Placing> placings) {
        WorthFacts worth = new WorthFacts(catalog, Obscure.of(landscape), halfRead);
        placings.forEach(placing -> worth.see(part, placing));
        return worth.facts();
    }

    private List<Object> facts() {
        List<Object> facts = new ArrayList<>(outdone());
        facts.addAll(twins());
        facts.addAll(open());
        return facts;
    }

    /** What was not decided, platform by platform. */
    private List<LeftOpen> open() {
        SortedMap<String, SortedSet<String>> parts = new TreeMap<>();
        SortedMap<String, Undecided> why = new TreeMap<>();
        seen.forEach((part, places) -> places.alike.forEach(alike -> List.of(alike.worth.ignoringCost(), alike.worth.withCost()).forEach(verdict -> {
            if (verdict instanceof Verdict.Open open) {
                alike.slots.forEach(slot -> {
                    parts.computeIfAbsent(slot.platform, unused -> new TreeSet<>()).add(part);
                    why.putIfAbsent(slot.platform, open.undecided());
                });
            }
        })));
        List<LeftOpen> open = new ArrayList<>();
        obscure.platforms().forEach((platform, undecided) -> {
            Part host = catalog.platforms().get(platform);
            open.add(new LeftOpen(host.subject(), host.origin(), "something outdoes what can be on", List.of(platform), undecided));
        });
        parts.forEach((platform, some) -> {
            Part host = catalog.platforms().get(platform);
            open.add(new LeftOpen(host.subject(), host.origin(), "something outdoes", List.copyOf(some), why.get(platform)));
        });
        return open;
    }

    /** The parts of which some figure is stated, and all that is stated was read. */
    static Set<String> measured(Catalog catalog, HalfRead halfRead) {
        return catalog.parts().values().stream().filter(part -> !part.stats().isEmpty() || !part.loaded().isEmpty()).map(Part::id)
                .filter(part -> !halfRead.has(part)).collect(Collectors.toSet());
    }

    private void see(SlotWorth slot) {
        Home home = new Home(slot.platform(), slot.slot().toString(), slot.parts().keySet());
        slot.parts().forEach((part, worth) -> {
            if (measured.contains(part)) {
                seen.computeIfAbsent(part, unused -> new Seen()).add(home, worth);
            }
        });
        see(slot.twins(), home, twins);
        see(slot.sideBySide(), home, sideBySide);
    }

    private void see(List<SlotWorth.Twins> pairs, Home home, SortedMap<String, SortedMap<String, List<String>>> where) {
        pairs.stream().filter(pair -> measured.contains(pair.one()) && measured.contains(pair.other())).forEach(pair -> see(pair.one(), pair.other(), home, where));
    }

    private static void see(String one, String other, Home home, SortedMap<String, SortedMap<String, List<String>>> where) {
        where.computeIfAbsent(one, unused -> new TreeMap<>()).computeIfAbsent(other, unused -> new ArrayList<>()).add(home.slot);
    }

    private void see(String part, Placing placing) {
        Home home = new Home(placing.platform(), placing.slot().toString(), placing.alike().keySet());
        if (measured.contains(part)) {
            seen.computeIfAbsent(part, unused -> new Seen()).add(home, placing.worth());
            placing.alike().forEach((other, likeness) -> {
                if (likeness != Likeness.APART && measured.contains(other) && part.compareTo(other) < 0) {
                    see(part, other, home, likeness == Likeness.TWINS ? twins : sideBySide);
                }
            });
        }
    }

    /** Whether all that is known to outdo a part there was read in full. */
    private boolean certain(Alike place) {
        return place.worth.dominated().filter(verdict -> halfRead.in(Optional.of(verdict.shown())) || halfRead.in(verdict.by())).isEmpty();
    }

    private List<OutdonePart> outdone() {
        List<OutdonePart> found = new ArrayList<>();
        seen.forEach((id, everywhere) -> {
            List<Alike> places = everywhere.alike;
            if (places.stream().anyMatch(place -> place.worth.dominated().isPresent() && certain(place))) {
                Part part = catalog.parts().get(id);
                Predicate<Alike> free = place -> place.worth.ignoringCost() instanceof Verdict.Dominated && certain(place);
                Standing standing = standing(id, places);
                Predicate<Alike> adapted = place -> place.worth.dominated().map(dominated -> adapted(part, dominated)).orElse(false);
                found.add(new OutdonePart(
                        part, everywhere(id, places, free), everywhere(id, places, place -> place.worth.worseThanEmpty() && certain(place)),
                        places(standing, free), places(standing, free.and(adapted.negate())), places(standing, free.and(adapted)),
                        places(standing, free.negate().and(place -> place.worth.withCost() instanceof Verdict.Dominated && certain(place)))));
            }
        });
        return found;
    }

    /** Whether something holds of a part in every slot that can hold it. */
    private boolean everywhere(String part, List<Alike> places, Predicate<Alike> holds) {
        return !obscure.parts().contains(part) && places.stream().allMatch(holds);
    }

    /** Whether what outdoes a part is another of its kind that stands on something of another kind. */
    private boolean adapted(Part part, Verdict.Dominated dominated) {
        return dominated.by().map(by -> !kindOf(by.part()).equals(part.kind()) && by.parts().stream().anyMatch(id -> kindOf(id).equals(part.kind()))).orElse(false);
    }

    private Optional<String> kindOf(String part) {
        return catalog.parts().get(part).kind();
    }

    private Standing standing(String part, List<Alike> places) {
        Map<String, Integer> platforms = new HashMap<>();
        places.forEach(alike -> alike.slots.forEach(home -> platforms.merge(home.slot, 1, Integer::sum)));
        return new Standing(places, platforms, obscure.parts().contains(part));
    }

    private OutdonePart.Places places(Standing standing, Predicate<Alike> wanted) {
        Map<List<Optional<Assembly>>, List<Alike>> byWitness = new LinkedHashMap<>();
        standing.places.stream().filter(wanted).forEach(place -> {
            Verdict.Dominated dominated = place.worth.dominated().orElseThrow();
            byWitness.computeIfAbsent(List.of(Optional.of(dominated.shown()), dominated.by()), unused -> new ArrayList<>()).add(place);
        });
        return new OutdonePart.Places(byWitness.values().stream().map(places -> place(standing, places))
                .sorted(Comparator.comparing(OutdonePart.Place::where, SlotsOnPlatforms.WIDEST_FIRST)
                        .thenComparing(place -> place.where().slots().get(0)).thenComparing(OutdonePart.Place::by))
                .toList());
    }

    private OutdonePart.Place place(Standing standing, List<Alike> places) {
        Verdict.Dominated dominated = places.get(0).worth.dominated().orElseThrow();
        List<Gain> told = gains.of(dominated);
        return new OutdonePart.Place(
                standing.where(places), Assemblies.words(Optional.of(dominated.shown())),
                Assemblies.words(dominated.by()), dominated.by().isEmpty(), told, because(dominated, told));
    }

    /** What the catalog states of the parts of either in which the two differ. */
    private List<Fact> because(Verdict.Dominated dominated, List<Gain> told) {
        FactList facts = new FactList();
        for (Gain gain : told) {
            Stream.concat(Stream.of(dominated.shown()), dominated.by().stream()).flatMap(assembly -> assembly.parts().stream()).distinct().map(catalog.parts()::get)
                    .flatMap(part -> gain.column().attribute()
                            .<Optional<? extends Fact>>map(attribute -> Optional.ofNullable((gain.column().loaded() ? part.loaded() : part.stats()).get(attribute.id())))
                            .orElseGet(() -> prices.cheapest(part.id()).map(Prices.Priced::offer)).stream())
                    .forEach(facts::add);
        }
        return facts.list();
    }

    /** Pairs that are twins wherever both can stand, save where they are not for standing side by side alone. */
    private List<TwinParts> twins() {
        List<TwinParts> found = new ArrayList<>();
        twins.forEach((one, others) -> others.forEach((other, slots) -> {
            long together = seen.get(one).alike.stream().flatMap(alike -> alike.slots.stream()).filter(slot -> slot.standing.contains(other)).count();
            int beside = sideBySide.getOrDefault(one, new TreeMap<>()).getOrDefault(other, List.of()).size();
            if (together == slots.size() + beside && !obscure.both(one, other)) {
                found.add(new TwinParts(catalog.parts().get(one), catalog.parts().get(other), slots.stream().distinct().sorted().toList(), prices.cheapest(one), prices.cheapest(other)));
            }
        }));
        return found;
    }
}

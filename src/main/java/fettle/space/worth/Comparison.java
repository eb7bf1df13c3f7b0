package fettle.space.worth;

import fettle.catalog.Access;
import fettle.catalog.Attribute;
import fettle.catalog.Catalog;
import fettle.catalog.Part;
import fettle.catalog.Stat;
import fettle.document.DeepStack;
import fettle.space.Contents;
import fettle.space.Landscape;
import fettle.space.Prices;
import fettle.space.Site;
import fettle.space.Stand;
import fettle.space.Terrain;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/** Compares whole assemblies in every slot of every platform of a catalog. */
public final class Comparison {

    /** How many steps all comparisons of one way together may take in trying what most often settles them, and in going on where it does not. */
    private static final long QUICK_STEPS = 120_000_000;
    private static final long THOROUGH_STEPS = 20_000_000;

    /** How many steps one head may take before all others have had theirs. */
    private static final long FIRST_PATIENCE = 100_000;

    /** How many more what was left undecided then may take, and how many of these one head. */
    private static final long STEPS_ONCE_MORE = 60_000_000;
    private static final long LONG_PATIENCE = 30_000_000;

    /** Likewise what is not the same in all slots with the same contents. */
    private static final long STEPS_SLOT_BY_SLOT = 30_000_000;
    private static final long LAST_PATIENCE = 1_500_000;

    /** With fewer nodes in the circuit there are steps for all, and little is gained by going both ways side by side. */
    private static final int LARGE = 5_000;
    /** How many platforms are gone through side by side in a large one. */
    private static final int AT_ONCE = 16;

    private final Landscape landscape;
    private final Catalog catalog;
    private final Terrain terrain;
    private final Arena ignoringCost;
    private final Arena withCost;
    private final Map<Contents, Deal> deals = new IdentityHashMap<>();
    private final Map<String, List<SlotWorth>> platforms = new HashMap<>();
    private final Map<Integer, List<Object>> figures = new HashMap<>();
    private boolean timeTaken;

    /** A comparison under an access profile; with all offers, where none is named. */
    public Comparison(Landscape landscape, Optional<Access> access) {
        this(landscape, access, QUICK_STEPS, THOROUGH_STEPS);
    }

    /**
     * The same with so much work.
     *
     * @param quick the steps that all quick attempts of one way of comparing may take together
     * @param thorough those for all that goes beyond them
     */
    Comparison(Landscape landscape, Optional<Access> access, long quick, long thorough) {
        this.landscape = landscape;
        this.catalog = landscape.relations().catalog();
        this.terrain = landscape.terrain();
        this.ignoringCost = new Arena(landscape, Measure.ignoringCost(catalog, terrain), new Meter(quick), new Meter(thorough));
        this.withCost = new Arena(landscape, Measure.withCost(catalog, terrain, new Prices(catalog, access)), new Meter(quick), new Meter(thorough));
    }

    /** Every slot that holds something in some valid build of a platform that has one, in order of hosts and slots. */
    public List<SlotWorth> platform(String platform) {
        if (!platforms.containsKey(platform)) {
            easiestFirst();
            List<String> some = from(platform);
            List<Spot> spots = some.stream().flatMap(each -> landscape.plot(each).sites().stream().map(site -> new Spot(each, site))).toList();
            Map<String, List<SlotWorth>> worths = worths(spots).stream().collect(Collectors.groupingBy(SlotWorth::platform));
            some.forEach(each -> platforms.put(each, List.copyOf(worths.getOrDefault(each, List.of()))));
        }
        return platforms.get(platform);
    }

    /** A platform, and in a large catalog, where it isn't the only one, some that are likely next, so that neither way of comparing has to wait for the other after each. */
    private List<String> from(String platform) {
        if (platforms.isEmpty() || landscape.circuit().size() <= LARGE) {
            return List.of(platform);
        }
        List<String> all = List.copyOf(landscape.platforms());
        return all.subList(all.indexOf(platform), all.size()).stream().filter(each -> !platforms.containsKey(each)).limit(AT_ONCE).toList();
    }

    /** A slot of a platform. */
    private record Spot(String platform, Site site) {}

    /** What is hard uses up the steps that all have together, so that it comes after what is easy. */
    private void easiestFirst() {
        if (deals.isEmpty() && landscape.circuit().size() > LARGE) {
            Set<Contents> all = Collections.newSetFromMap(new IdentityHashMap<>());
            landscape.platforms().forEach(platform -> landscape.plot(platform).sites().forEach(site -> all.add(site.contents())));
            List<Contents> ordered = all.stream()
                    .sorted(Comparator.comparingInt((Contents contents) -> contents.stands().size()).thenComparingInt(Contents::slot)).toList();
            bothWays(arena -> {
                arena.patience(FIRST_PATIENCE);
                ordered.forEach(contents -> arena.verdicts(contents).settle());
                arena.goOn(STEPS_ONCE_MORE, LONG_PATIENCE);
                ordered.forEach(contents -> arena.verdicts(contents).settleAgain());
                arena.goOn(STEPS_SLOT_BY_SLOT, LAST_PATIENCE);
                return arena;
            });
            ordered.forEach(this::deal);
        }
    }

    /** What comes of work by either way of comparing, ignoring cost first; in a large catalog each is done beside the other. */
    private <R> List<R> bothWays(Function<Arena, R> work) {
        List<Arena> ways = List.of(ignoringCost, withCost);
        return landscape.circuit().size() > LARGE ? DeepStack.each(ways, work) : ways.stream().map(work).toList();
    }

    private List<SlotWorth> worths(List<Spot> spots) {
        List<Deal> dealt = spots.stream().map(spot -> deal(spot.site().contents())).toList();
        List<List<List<Verdict>>> found = bothWays(arena -> {
            List<List<Verdict>> each = new ArrayList<>();
            for (int i = 0; i < dealt.size(); i++) {
                Site site = spots.get(i).site();
                each.add(arena == ignoringCost ? dealt.get(i).free(site) : dealt.get(i).priced(site));
            }
            return each;
        });
        List<SlotWorth> worths = new ArrayList<>();
        for (int i = 0; i < dealt.size(); i++) {
            Spot spot = spots.get(i);
            worths.add(dealt.get(i).in(spot.platform(), spot.site().slot(), spot.site(), found.get(0).get(i), found.get(1).get(i)));
        }
        return List.copyOf(worths);
    }

    /** The same for the slots that hold one of some parts. */
    public List<SlotWorth> holding(String platform, Set<String> parts) {
        Set<Integer> heads = parts.stream().map(terrain::number).collect(Collectors.toSet());
        return worths(landscape.plot(platform).sites().stream().filter(site -> site.contents().stands().stream().anyMatch(stand -> heads.contains(stand.head())))
                .map(site -> new Spot(platform, site)).toList());
    }

    /** How a part stands in every slot of a platform that holds it in some valid build of one that has any, in order of hosts and slots; other parts are not gone into. */
    public List<Placing> placings(String platform, String part) {
        takeTime();
        int head = terrain.number(part);
        List<Site> sites = landscape.plot(platform).sites().stream().filter(site -> site.contents().stands().stream().anyMatch(stand -> stand.head() == head)).toList();
        List<List<Verdict>> found = bothWays(arena -> sites.stream().map(site -> arena.verdicts(site.contents()).in(head, site)).toList());
        return IntStream.range(0, sites.size()).mapToObj(i -> placing(platform, sites.get(i), head, found.get(0).get(i), found.get(1).get(i))).toList();
    }

    /** One part may be gone into for longer, where it isn't one of many. */
    private void takeTime() {
        if (!timeTaken && landscape.circuit().size() > LARGE) {
            ignoringCost.goOn(STEPS_ONCE_MORE, LONG_PATIENCE);
            withCost.goOn(STEPS_ONCE_MORE, LONG_PATIENCE);
            timeTaken = true;
        }
    }

    private Placing placing(String platform, Site site, int head, Verdict free, Verdict priced) {
        PartWorth worth = new PartWorth(free, priced, ignoringCost.verdicts(site.contents()).worseThanEmpty(head, site));
        Optional<Merit> merit = merit(worth.ignoringCost(), site, ignoringCost);
        Optional<Merit> forPrice = worth.ignoringCost() instanceof Verdict.Dominated ? merit(worth.withCost(), site, withCost) : Optional.empty();
        return new Placing(platform, terrain.slots().get(site.slot()), worth, merit, forPrice, alike(site, head));
    }

    private SortedMap<String, Likeness> alike(Site site, int head) {
        SortedMap<String, Likeness> alike = new TreeMap<>();
        for (List<Stand> same : Deal.alike(site.contents(), terrain, this::figuresOf)) {
            same.stream().filter(stand -> stand.head() == head).forEach(stand -> same.stream().filter(other -> other.head() != head).forEach(other ->
                    alike.put(terrain.hosts().get(other.head()), likeness(site, stand, other))));
        }
        return alike;
    }

    private static Likeness likeness(Site site, Stand one, Stand other) {
        if (site.safe(one, other) && site.safe(other, one)) {
            return Likeness.TWINS;
        }
        return site.contents().safeUnlessTwice(one, other) ? Likeness.SIDE_BY_SIDE : Likeness.APART;
    }

    private Optional<Merit> merit(Verdict verdict, Site site, Arena arena) {
        return verdict instanceof Verdict.Undominated found ? Optional.of(new Merits(catalog, site.contents(), arena).of(found.best())) : Optional.empty();
    }

    /** Sizes of what was compared. */
    Map<String, Object> figures() {
        return new TreeMap<>(Map.of(
                "fronts, ignoring cost", ignoringCost.fronts().count() + ", largest " + ignoringCost.fronts().largest(),
                "fronts, with cost", withCost.fronts().count() + ", largest " + withCost.fronts().largest()));
    }

    private Deal deal(Contents contents) {
        Deal deal = deals.get(contents);
        if (deal == null) {
            deal = new Deal(contents, terrain, ignoringCost.verdicts(contents), withCost.verdicts(contents), this::figuresOf);
            deals.put(contents, deal);
        }
        return deal;
    }

    private List<Object> figuresOf(int head) {
        return figures.computeIfAbsent(head, unused -> figures(terrain.hosts().get(head)));
    }

    /** All that twins have in common: the role and every contribution, those that serve in no direction included. */
    private List<Object> figures(String id) {
        Part part = catalog.parts().get(id);
        List<Object> figures = new ArrayList<>();
        figures.add(catalog.roleOf(part));
        for (Attribute attribute : catalog.attributes().values()) {
            for (Map<String, Stat> stats : List.of(part.stats(), part.loaded())) {
                Optional<BigDecimal> figure = Optional.ofNullable(stats.get(attribute.id())).map(stat -> stat.value().stripTrailingZeros());
                boolean compares = attribute.combine() == Attribute.Combine.MAX || attribute.combine() == Attribute.Combine.MIN;
                figures.add(compares ? figure : figure.filter(value -> value.signum() != 0));
            }
        }
        return figures;
    }
}

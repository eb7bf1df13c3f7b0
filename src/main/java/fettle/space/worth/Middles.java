package fettle.space.worth;

import fettle.catalog.Catalog;
import fettle.catalog.Lens;
import fettle.catalog.SlotId;
import fettle.document.DeepStack;
import fettle.space.Assembly;
import fettle.space.Bare;
import fettle.space.BetweenRungs;
import fettle.space.Contents;
import fettle.space.Landscape;
import fettle.space.Prices;
import fettle.space.Site;
import fettle.space.Stand;
import fettle.space.Terrain;
import fettle.space.Undecided;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Queue;
import java.util.Set;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.stream.Collectors;

/**
 * Finds the parts that lie between the rungs of the value ladder in every slot in which they can be bought and used.
 *
 * <p>Slots that hold the same have the same ladder. Most parts are seen to be a rung by the corners of the hulls alone, mostly among what serves as few roles as it can;
 * only for the rest is looked at all that is worth its price.
 */
public final class Middles {

    private static final long STEPS_A_LENS = 60_000_000;
    private static final long STEPS_A_CHOICE = 1_000_000;
    private static final long STEPS_FOR_ALL_CHOICES = 40_000_000;
    private static final int FEW_SETS = 4;
    private static final String TOO_MANY_ROLES = "There are too many role kinds.";
    private static final String TOO_MANY = "Comparing what its slots offer takes too many steps.";

    private final Catalog catalog;
    private final Terrain terrain;
    private final Landscape landscape;
    private final Optional<Set<String>> wanted;
    private final int few;
    private final Prices prices;
    private final Bare bare;
    private final Map<Contents, SortedMap<SlotId, SortedSet<String>>> slots = new LinkedHashMap<>();
    private final Assemblies assemblies;

    /**
     * Ladders are those of all offers. What stands where is looked up here, and what is worked out later is kept by this alone: once it is made, others may use the
     * landscape while parts are sought on another thread.
     *
     * @param wanted the parts of which it is asked; all, where none are named
     */
    public Middles(Landscape landscape, Optional<Set<String>> wanted) {
        this(landscape, wanted, FEW_SETS);
    }

    /**
     * The same with another way of looking.
     *
     * @param few the sets of roles that are looked at one by one, before all that are left are looked at together
     */
    Middles(Landscape landscape, Optional<Set<String>> wanted, int few) {
        this.landscape = landscape;
        this.wanted = wanted;
        this.few = few;
        this.catalog = landscape.relations().catalog();
        this.terrain = landscape.terrain();
        this.prices = new Prices(catalog, Optional.empty());
        this.bare = new Bare(landscape.circuit());
        this.assemblies = new Assemblies(terrain);
        Map<Contents, SortedMap<SlotId, SortedSet<String>>> same = new IdentityHashMap<>();
        for (String platform : landscape.platforms()) {
            for (Site site : landscape.plot(platform).sites()) {
                if (site.contents().stands().stream().noneMatch(stand -> wanted(stand.head()))) {
                    continue;
                }
                SortedMap<SlotId, SortedSet<String>> named = same.computeIfAbsent(site.contents(), unused -> new TreeMap<>());
                slots.putIfAbsent(site.contents(), named);
                named.computeIfAbsent(terrain.slots().get(site.slot()), unused -> new TreeSet<>()).add(platform);
            }
        }
    }

    private boolean wanted(int head) {
        return wanted.map(parts -> parts.contains(terrain.hosts().get(head))).orElse(true);
    }

    /**
     * What was found for a lens.
     *
     * @param lens the lens that it was sought by
     * @param between by part, slots that hold the same together
     * @param open parts of which it is not known, in order
     * @param why why that is
     */
    public record Outcome(Lens lens, SortedMap<String, List<BetweenRungs>> between, List<String> open, Optional<Undecided> why) {}

    /** By lens, the parts that lie between rungs wherever they can be bought and used; each lens is looked through beside the others. */
    public List<Outcome> of(Collection<Lens> lenses) {
        List<String> all = slots.keySet().stream().flatMap(contents -> contents.stands().stream()).filter(stand -> wanted(stand.head()))
                .map(stand -> terrain.hosts().get(stand.head())).distinct().sorted().toList();
        if (!RoleSets.fit(catalog)) {
            return lenses.stream().map(lens -> open(lens, all, TOO_MANY_ROLES)).toList();
        }
        slots.keySet().forEach(contents -> contents.stands().forEach(stand -> bare.of(stand.node())));
        try {
            RoleSets roles = new RoleSets(catalog, terrain, bare, prices, new Meter(STEPS_A_LENS));
            Places places = new Places(slots.keySet(), roles);
            Queue<Rooms> spare = new ConcurrentLinkedQueue<>();
            return DeepStack.each(List.copyOf(lenses), lens -> Worths.of(catalog, terrain, lens, prices).map(worths -> {
                Rooms rooms = Optional.ofNullable(spare.poll()).orElseGet(Rooms::new);
                Outcome outcome = new Search(lens, worths, roles, places, rooms).outcome(all);
                spare.add(rooms);
                return outcome;
            }).orElseGet(() -> new Outcome(lens, new TreeMap<>(), all, Optional.of(Worths.tooLong(catalog, terrain, lens, prices)))));
        } catch (Meter.Spent spent) {
            return lenses.stream().map(lens -> open(lens, all, TOO_MANY)).toList();
        }
    }

    private static Outcome open(Lens lens, List<String> all, String why) {
        return new Outcome(lens, new TreeMap<>(), all, Optional.of(new Undecided(why, "lens:" + lens.id())));
    }

    /** What one lens after the other is looked through in. */
    private record Rooms(BestAtRate.Room forBenefit, BestAtRate.Room forCost, BestAtRate.Room between) {

        Rooms() {
            this(new BestAtRate.Room(), new BestAtRate.Room(), new BestAtRate.Room());
        }
    }

    private final class Search {

        private final Lens lens;
        private final Worths worths;
        private final RoleSets roles;
        private final Places places;
        private final Meter meter = new Meter(STEPS_A_LENS);
        private final Tradeoffs corners;
        private final Tradeoffs fronts;
        private final Contenders contenders;
        private final Meter forChoice = new Meter(STEPS_A_CHOICE, Optional.of(meter));
        private final BestAtRate byBenefit;
        private final BestAtRate byCost;
        private final BestAtRate between;
        private final Map<Contents, Map<Long, Curve>> hulls = new IdentityHashMap<>();
        private final Map<Contents, Map<Long, Curve>> plain = new IdentityHashMap<>();

        Search(Lens lens, Worths worths, RoleSets roles, Places places, Rooms rooms) {
            this.lens = lens;
            this.roles = roles;
            this.places = places;
            this.worths = worths;
            this.contenders = new Contenders(bare, roles, worths, meter);
            this.byBenefit = new BestAtRate(bare, roles, worths, meter, rooms.forBenefit());
            this.byCost = new BestAtRate(bare, roles, worths, meter, rooms.forCost());
            this.between = new BestAtRate(bare, roles, worths, meter, rooms.between());
            this.corners = new Tradeoffs(landscape.circuit(), bare, roles, worths, Curve.Keep.CORNERS, meter);
            this.fronts = new Tradeoffs(landscape.circuit(), bare, roles, worths, Curve.Keep.ALL, new Meter(STEPS_FOR_ALL_CHOICES, Optional.of(meter)));
        }

        Outcome outcome(List<String> all) {
            SortedMap<String, List<BetweenRungs>> between = new TreeMap<>();
            List<String> open = new ArrayList<>(all);
            try {
                places.byHead().forEach((head, stood) -> {
                    if (!wanted(head)) {
                        return;
                    }
                    if (stood.stream().anyMatch(Place::alone) || stood.stream().anyMatch(this::bettered) || stood.stream().anyMatch(place -> rung(place, place.sets().subList(0, 1)))) {
                        open.remove(terrain.hosts().get(head));
                    }
                });
                open.removeIf(part -> !places.byHead().containsKey(terrain.number(part)) || decided(part, places.byHead().get(terrain.number(part)), between));
            } catch (Meter.Spent spent) {
                // What is still open is told.
            }
            return new Outcome(lens, between, open, Optional.of(new Undecided(TOO_MANY, "lens:" + lens.id())).filter(why -> !open.isEmpty()));
        }

        private boolean decided(String part, List<Place> stood, SortedMap<String, List<BetweenRungs>> between) {
            try {
                everywhere(stood).ifPresent(found -> between.put(part, found));
                return true;
            } catch (Meter.Spent | ArithmeticException tooMuch) {
                return false;
            }
        }

        /** That a part lies between rungs in all places; nothing where it is a rung in one of them, or each of its assemblies there is bettered. */
        private Optional<List<BetweenRungs>> everywhere(List<Place> stood) {
            Map<BetweenRungs, SortedMap<SlotId, SortedSet<String>>> alike = new LinkedHashMap<>();
            for (Place place : stood) {
                Optional<BetweenRungs> shown = bettered(place) || place.alone() ? Optional.empty() : unlessRung(place);
                if (shown.isEmpty()) {
                    return Optional.empty();
                }
                SortedMap<SlotId, SortedSet<String>> where = alike.computeIfAbsent(shown.get(), unused -> new TreeMap<>());
                slots.get(place.contents()).forEach((slot, platforms) -> where.computeIfAbsent(slot, unused -> new TreeSet<>()).addAll(platforms));
            }
            Set<SlotId> met = new HashSet<>();
            Set<SlotId> divided = alike.values().stream().flatMap(where -> where.keySet().stream()).filter(slot -> !met.add(slot)).collect(Collectors.toSet());
            return Optional.of(alike.entrySet().stream().map(each -> each.getKey().in(each.getValue(), divided))
                    .sorted(Comparator.comparing(each -> each.slots().get(0).toString())).toList());
        }

        /** An assembly of a part that none other betters; nothing where the part is a rung for some set of roles, as most are for one of the first, or each is bettered. */
        private Optional<BetweenRungs> unlessRung(Place place) {
            List<Long> sets = place.contested();
            List<Long> first = sets.subList(0, Math.min(few, sets.size()));
            List<Long> rest = sets.subList(first.size(), sets.size());
            if (rung(place, first)) {
                return Optional.empty();
            }
            Optional<RungSets> seen = rest.isEmpty() ? Optional.empty() : atRates(place);
            boolean rung = seen.map(RungSets::rung).orElse(false) || rung(place, seen.map(RungSets::open).orElse(rest));
            return rung ? Optional.empty() : unbettered(place, seen.map(RungSets::nearestFirst).orElse(sets));
        }

        /** Nothing where figures are too long for it. */
        private Optional<RungSets> atRates(Place place) {
            try {
                return Optional.of(new RungSets(place, places.in(place.contents()), contenders, this::atRate));
            } catch (ArithmeticException tooLong) {
                return Optional.empty();
            }
        }

        /** The extremes are asked for more than once. */
        private BestAtRate atRate(Rate rate) {
            return (rate.equals(Rate.BENEFIT) ? byBenefit : rate.equals(Rate.COST) ? byCost : between).by(rate);
        }

        /** Whether a part is a rung among what serves the same roles as some of its assemblies, for some sets of roles. */
        private boolean rung(Place place, List<Long> sets) {
            for (long set : sets) {
                if (rung(place, set)) {
                    return true;
                }
            }
            return false;
        }

        /** Few others are often enough to lie above a part, so that they come in one by one, those with the fewest stands first. */
        private boolean rung(Place place, long set) {
            Curve own = all(contenders.of(place), set, corners);
            Curve known = hulls.getOrDefault(place.contents(), Map.of()).get(set);
            if (known != null || own.isEmpty()) {
                return !own.isEmpty() && known.touches(own);
            }
            Curve hull = own;
            for (Place rival : places.in(place.contents())) {
                if (rival.head() != place.head() && rival.sets().contains(set)) {
                    hull = hull.or(all(contenders.of(rival), set, corners), Curve.Keep.CORNERS);
                    if (!hull.touches(own)) {
                        return false;
                    }
                }
            }
            return hull(place.contents(), set).touches(own);
        }

        /** Whether it is plain that each assembly of a part is bettered. */
        private boolean bettered(Place place) {
            return plainlyBettered(place) || contenders.of(place).isEmpty();
        }

        /** Whether a part without slots is bettered by another, or by nothing, without slots. */
        private boolean plainlyBettered(Place place) {
            if (terrain.slotsOf()[place.head()].length > 0) {
                return false;
            }
            Curve front = plain.computeIfAbsent(place.contents(), this::plain).get(roles.of(place.head()));
            return !front.holds(worths.cost(place.head()), worths.benefit(place.head()));
        }

        /** By role, the parts without slots that no other betters. */
        private Map<Long, Curve> plain(Contents contents) {
            Map<Long, Curve> fronts = new HashMap<>(Place.orNothing(contents) ? Map.of(0L, Curve.NOTHING) : Map.of());
            for (Stand stand : contents.stands()) {
                if (terrain.slotsOf()[stand.head()].length == 0 && worths.sold(stand.head())) {
                    meter.spend(1);
                    fronts.merge(roles.of(stand.head()), Curve.point(worths.cost(stand.head()), worths.benefit(stand.head())), (one, other) -> one.or(other, Curve.Keep.ALL));
                }
            }
            return fronts;
        }

        private Curve hull(Contents contents, long set) {
            return hulls.computeIfAbsent(contents, unused -> new HashMap<>()).computeIfAbsent(set, unused -> everything(contents, set, corners));
        }

        private Curve everything(Contents contents, long set, Tradeoffs tradeoffs) {
            Curve all = all(contenders.of(contents), set, tradeoffs);
            return set == 0 && Place.orNothing(contents) ? all.or(Curve.NOTHING, tradeoffs == corners ? Curve.Keep.CORNERS : Curve.Keep.ALL) : all;
        }

        private Curve all(List<Stand> stands, long set, Tradeoffs tradeoffs) {
            Curve all = Curve.NONE;
            for (Stand stand : stands) {
                Curve some = tradeoffs.of(stand, set);
                meter.spend(1L + some.size());
                all = all.or(some, tradeoffs == corners ? Curve.Keep.CORNERS : Curve.Keep.ALL);
            }
            return all;
        }

        /** An assembly of a part that is no rung, which none other betters; nothing where each is bettered. The corners of its own hull are tried first. */
        private Optional<BetweenRungs> unbettered(Place place, List<Long> sets) {
            List<Long> open = new ArrayList<>();
            for (long set : sets) {
                Curve own = all(contenders.of(place), set, corners);
                if (below(place, set, own)) {
                    continue;
                }
                open.add(set);
                Curve hull = hull(place.contents(), set);
                for (int i : nearestFirst(own, hull)) {
                    int upper = hull.after(own.cost(i));
                    if (!bettered(place, set, own, i, hull, upper)) {
                        return Optional.of(shown(place, set, own, i, corners));
                    }
                }
            }
            for (long set : open) {
                Curve own = all(contenders.of(place), set, fronts);
                Curve every = own.isEmpty() ? Curve.NONE : everything(place.contents(), set, fronts);
                for (int i = 0; i < own.size(); i++) {
                    if (every.holds(own.cost(i), own.benefit(i))) {
                        return Optional.of(shown(place, set, own, i, fronts));
                    }
                }
            }
            return Optional.empty();
        }

        /** Those of a part's choices that lie between corners of the hull; the less they fall short of it, the likelier it is that nothing betters them. */
        private static List<Integer> nearestFirst(Curve own, Curve hull) {
            Map<Integer, Long> between = new HashMap<>();
            for (int i = 0; i < own.size(); i++) {
                int upper = hull.after(own.cost(i));
                if (upper > 0 && upper < hull.size()) {
                    Rate rate = slope(hull, upper);
                    between.put(i, (rate.weighed(hull.cost(upper), hull.benefit(upper)) - rate.weighed(own.cost(i), own.benefit(i))) / rate.perBenefit());
                }
            }
            return between.keySet().stream().sorted(Comparator.<Integer, Long>comparing(between::get).thenComparing(Comparator.naturalOrder())).toList();
        }

        /** The rate by which two corners of a hull that follow each other come to much the same. */
        private static Rate slope(Curve hull, int upper) {
            return Rate.of(hull.benefit(upper) - hull.benefit(upper - 1), hull.cost(upper) - hull.cost(upper - 1));
        }

        /** Whether it is seen from corners alone that each assembly of a part that serves these roles is bettered. */
        private boolean below(Place place, long set, Curve own) {
            Curve hull = Curve.NONE;
            for (Place rival : places.in(place.contents())) {
                if (rival.head() != place.head() && rival.sets().contains(set)) {
                    hull = hull.or(all(contenders.of(rival), set, corners), Curve.Keep.CORNERS);
                    if (hull.above(own)) {
                        return true;
                    }
                }
            }
            return hull(place.contents(), set).above(own);
        }

        private boolean bettered(Place place, long set, Curve own, int i, Curve hull, int upper) {
            if (set == 0 && Place.orNothing(place.contents()) && own.benefit(i) <= 0) {
                return true;
            }
            forChoice.allow(STEPS_A_CHOICE);
            return new Outbidding(bare, roles, worths, corners, forChoice, slope(hull, upper))
                    .better(contenders.of(place.contents()), set, own.cost(i), own.benefit(i));
        }

        private BetweenRungs shown(Place place, long set, Curve own, int i, Tradeoffs tradeoffs) {
            Curve hull = hull(place.contents(), set);
            int upper = hull.after(own.cost(i));
            return new BetweenRungs(
                    lens.id(), Collections.emptySortedMap(), Set.of(), offer(contenders.of(place), set, own, i, tradeoffs),
                    offer(contenders.of(place.contents()), set, hull, upper - 1, corners), offer(contenders.of(place.contents()), set, hull, upper, corners));
        }

        private BetweenRungs.Offer offer(List<Stand> stands, long set, Curve curve, int i, Tradeoffs tradeoffs) {
            Optional<Assembly> assembly = stands.stream().filter(stand -> tradeoffs.of(stand, set).holds(curve.cost(i), curve.benefit(i)))
                    .map(stand -> assemblies.of(tradeoffs.pick(stand, set, curve.cost(i), curve.benefit(i))))
                    .min(Comparator.naturalOrder());
            return new BetweenRungs.Offer(assembly, worths.cost(curve.cost(i)), worths.benefit(curve.benefit(i)));
        }
    }
}

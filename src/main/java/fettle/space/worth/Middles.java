package fettle.space.worth;

import fettle.catalog.Catalog;
import fettle.catalog.Lens;
import fettle.catalog.SlotId;
import fettle.space.Assembly;
import fettle.space.BetweenRungs;
import fettle.space.Contents;
import fettle.space.Landscape;
import fettle.space.Prices;
import fettle.space.Site;
import fettle.space.Stand;
import fettle.space.Terrain;
import fettle.space.Undecided;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * Finds the parts that lie between the rungs of the value ladder in every slot in which they can be bought and used.
 *
 * <p>Slots that hold the same have the same ladder. Most parts are seen to be a rung by the corners of the hulls alone, mostly among what serves as few roles as it can;
 * only for the rest is looked at all that is worth its price.
 */
public final class Middles {

    private static final long STEPS_A_LENS = 60_000_000;
    private static final long STEPS_A_CHOICE = 200_000;
    private static final long STEPS_FOR_ALL_CHOICES = 4_000_000;

    private final Catalog catalog;
    private final Terrain terrain;
    private final Landscape landscape;
    private final Prices prices;
    private final Meter meter = new Meter(STEPS_A_LENS);
    private final RoleSets roles;
    private final Map<Contents, SortedSet<SlotId>> slots = new LinkedHashMap<>();
    private final Assemblies assemblies;

    /** Ladders are those of all offers. */
    public Middles(Landscape landscape) {
        this.landscape = landscape;
        this.catalog = landscape.relations().catalog();
        this.terrain = landscape.terrain();
        this.prices = new Prices(catalog, Optional.empty());
        this.roles = new RoleSets(catalog, terrain, landscape.circuit(), meter);
        this.assemblies = new Assemblies(terrain);
        Map<Contents, SortedSet<SlotId>> same = new IdentityHashMap<>();
        for (String platform : landscape.platforms()) {
            for (Site site : landscape.plot(platform).sites()) {
                SortedSet<SlotId> named = same.computeIfAbsent(site.contents(), unused -> new TreeSet<>());
                slots.putIfAbsent(site.contents(), named);
                named.add(terrain.slots().get(site.slot()));
            }
        }
    }

    /**
     * What was found for a lens.
     *
     * @param between by part, slots that hold the same together
     * @param open parts of which it is not known, in order
     * @param why why that is
     */
    public record Outcome(SortedMap<String, List<BetweenRungs>> between, List<String> open, Optional<Undecided> why) {}

    /** The parts that lie between rungs wherever they can be bought and used. */
    public Outcome of(Lens lens) {
        Optional<Worths> worths = roles.fit() ? Worths.of(catalog, terrain, lens, prices) : Optional.empty();
        List<String> all = slots.keySet().stream().flatMap(contents -> contents.stands().stream()).map(stand -> terrain.hosts().get(stand.head())).distinct().sorted().toList();
        if (worths.isEmpty()) {
            return new Outcome(new TreeMap<>(), all, Optional.of(new Undecided("Its figures are too long, or there are too many role kinds.", "lens:" + lens.id())));
        }
        meter.allow(STEPS_A_LENS);
        return new Search(lens, worths.get()).outcome(all);
    }

    private final class Search {

        private final Lens lens;
        private final Worths worths;
        private final Tradeoffs corners;
        private final Tradeoffs fronts;
        private final Meter forChoice = new Meter(STEPS_A_CHOICE, Optional.of(meter));
        private final Map<Contents, Map<Long, Curve>> hulls = new IdentityHashMap<>();

        /** Where a part stands among what a slot can hold, and the sets of roles that its assemblies there serve. */
        private record Place(Contents contents, List<Stand> stands, List<Long> sets) {}

        Search(Lens lens, Worths worths) {
            this.lens = lens;
            this.worths = worths;
            this.corners = new Tradeoffs(landscape.circuit(), roles, worths, Curve.Keep.CORNERS, meter);
            this.fronts = new Tradeoffs(landscape.circuit(), roles, worths, Curve.Keep.ALL, new Meter(STEPS_FOR_ALL_CHOICES, Optional.of(meter)));
        }

        Outcome outcome(List<String> all) {
            SortedMap<String, List<BetweenRungs>> between = new TreeMap<>();
            List<String> open = new ArrayList<>(all);
            try {
                SortedMap<Integer, List<Place>> heads = heads();
                heads.forEach((head, places) -> {
                    if (places.stream().anyMatch(place -> rung(place, place.sets.subList(0, 1)))) {
                        open.remove(terrain.hosts().get(head));
                    }
                });
                open.removeIf(part -> !heads.containsKey(terrain.number(part)) || decided(part, heads.get(terrain.number(part)), between));
            } catch (Meter.Spent spent) {
                // What is still open is told.
            }
            Undecided why = new Undecided("Comparing what its slots offer takes too many steps.", "lens:" + lens.id());
            return new Outcome(between, open, Optional.of(why).filter(told -> !open.isEmpty()));
        }

        private boolean decided(String part, List<Place> places, SortedMap<String, List<BetweenRungs>> between) {
            try {
                everywhere(places).ifPresent(found -> between.put(part, found));
                return true;
            } catch (Meter.Spent | ArithmeticException tooMuch) {
                return false;
            }
        }

        /** Where each part stands that can be bought, the places with the fewest sets of roles first. */
        private SortedMap<Integer, List<Place>> heads() {
            SortedMap<Integer, List<Place>> heads = new TreeMap<>();
            for (Contents contents : slots.keySet()) {
                SortedMap<Integer, List<Stand>> stands = new TreeMap<>();
                contents.stands().stream().filter(this::sold).forEach(stand -> stands.computeIfAbsent(stand.head(), unused -> new ArrayList<>()).add(stand));
                stands.forEach((head, some) -> heads.computeIfAbsent(head, unused -> new ArrayList<>()).add(new Place(contents, some, sets(some))));
            }
            heads.values().forEach(places -> places.sort(Comparator.comparingInt(place -> place.sets.size())));
            return heads;
        }

        private boolean sold(Stand stand) {
            return Arrays.stream(roles.below(stand.node())).anyMatch(set -> !corners.of(stand.node(), set).isEmpty());
        }

        /** The sets of roles that some of these serve and that can be bought, the smallest first. */
        private List<Long> sets(List<Stand> stands) {
            SortedSet<Long> sets = new TreeSet<>(RoleSets.SMALLEST);
            stands.forEach(stand -> Arrays.stream(roles.below(stand.node())).forEach(sets::add));
            return List.copyOf(sets);
        }

        /** That a part lies between rungs in all places; nothing where it is a rung in one of them, or each of its assemblies there is bettered. */
        private Optional<List<BetweenRungs>> everywhere(List<Place> places) {
            Map<BetweenRungs, SortedSet<SlotId>> alike = new LinkedHashMap<>();
            for (Place place : places) {
                Optional<BetweenRungs> shown = rung(place, place.sets) ? Optional.empty() : unbettered(place);
                if (shown.isEmpty()) {
                    return Optional.empty();
                }
                alike.computeIfAbsent(shown.get(), unused -> new TreeSet<>()).addAll(slots.get(place.contents));
            }
            return Optional.of(alike.entrySet().stream().map(each -> each.getKey().in(each.getValue()))
                    .sorted(Comparator.comparing(each -> each.slots().get(0).toString())).toList());
        }

        /** Whether a part is a rung among what serves the same roles as some of its assemblies, for some sets of roles. */
        private boolean rung(Place place, List<Long> sets) {
            for (long set : sets) {
                Curve own = all(place.stands, set, corners);
                Curve hull = own.isEmpty() ? Curve.NONE : hull(place.contents, set);
                for (int i = 0; i < own.size(); i++) {
                    if (hull.onHull(own.cost(i), own.benefit(i))) {
                        return true;
                    }
                }
            }
            return false;
        }

        private Curve hull(Contents contents, long set) {
            return hulls.computeIfAbsent(contents, unused -> new HashMap<>()).computeIfAbsent(set, unused -> everything(contents, set, corners));
        }

        private Curve everything(Contents contents, long set, Tradeoffs tradeoffs) {
            Curve all = all(contents.stands(), set, tradeoffs);
            return set == 0 && !contents.room().filled() ? all.or(Curve.NOTHING, tradeoffs == corners ? Curve.Keep.CORNERS : Curve.Keep.ALL) : all;
        }

        private Curve all(List<Stand> stands, long set, Tradeoffs tradeoffs) {
            Curve all = Curve.NONE;
            for (Stand stand : stands) {
                Curve some = tradeoffs.of(stand.node(), set);
                meter.spend(1L + some.size());
                all = all.or(some, tradeoffs == corners ? Curve.Keep.CORNERS : Curve.Keep.ALL);
            }
            return all;
        }

        /** An assembly of a part that is no rung, which none other betters; nothing where each is bettered. The corners of its own hull are tried first. */
        private Optional<BetweenRungs> unbettered(Place place) {
            List<Long> open = new ArrayList<>();
            for (long set : place.sets) {
                if (!hull(place.contents, set).above(all(place.stands, set, corners))) {
                    open.add(set);
                }
            }
            for (long set : open) {
                Curve own = all(place.stands, set, corners);
                Curve hull = hull(place.contents, set);
                for (int i = 0; i < own.size(); i++) {
                    int upper = hull.after(own.cost(i));
                    if (upper > 0 && upper < hull.size() && !bettered(place, set, own, i, hull, upper)) {
                        return Optional.of(shown(place, set, own, i, corners));
                    }
                }
            }
            for (long set : open) {
                Curve own = all(place.stands, set, fronts);
                Curve every = own.isEmpty() ? Curve.NONE : everything(place.contents, set, fronts);
                for (int i = 0; i < own.size(); i++) {
                    if (every.holds(own.cost(i), own.benefit(i))) {
                        return Optional.of(shown(place, set, own, i, fronts));
                    }
                }
            }
            return Optional.empty();
        }

        private boolean bettered(Place place, long set, Curve own, int i, Curve hull, int upper) {
            if (set == 0 && !place.contents.room().filled() && own.benefit(i) <= 0) {
                return true;
            }
            forChoice.allow(STEPS_A_CHOICE);
            return new Outbidding(landscape.circuit(), roles, worths, corners, forChoice, hull.benefit(upper) - hull.benefit(upper - 1), hull.cost(upper) - hull.cost(upper - 1))
                    .better(place.contents.stands(), set, own.cost(i), own.benefit(i));
        }

        private BetweenRungs shown(Place place, long set, Curve own, int i, Tradeoffs tradeoffs) {
            Curve hull = hull(place.contents, set);
            int upper = hull.after(own.cost(i));
            return new BetweenRungs(
                    lens.id(), List.of(), offer(place.stands, set, own, i, tradeoffs),
                    offer(place.contents.stands(), set, hull, upper - 1, corners), offer(place.contents.stands(), set, hull, upper, corners));
        }

        private BetweenRungs.Offer offer(List<Stand> stands, long set, Curve curve, int i, Tradeoffs tradeoffs) {
            Optional<Assembly> assembly = stands.stream().filter(stand -> tradeoffs.of(stand.node(), set).holds(curve.cost(i), curve.benefit(i)))
                    .map(stand -> assemblies.of((Pick.Headed) tradeoffs.pick(stand.node(), set, curve.cost(i), curve.benefit(i))))
                    .min(Comparator.naturalOrder());
            return new BetweenRungs.Offer(assembly, worths.cost(curve.cost(i)), worths.benefit(curve.benefit(i)));
        }
    }
}

package fettle.judgement;

import fettle.catalog.Attribute;
import fettle.catalog.Build;
import fettle.catalog.Catalog;
import fettle.catalog.CatalogHead;
import fettle.catalog.Part;
import fettle.document.Origin;
import fettle.space.BuildCheck;
import fettle.space.BuildResult;
import fettle.space.Fraction;
import fettle.space.LimitMargin;
import fettle.space.Occurrence;
import fettle.space.Prices;
import fettle.space.best.Improvement;
import fettle.space.best.Prospect;
import fettle.space.best.Shopping;
import fettle.space.best.Swaps;
import fettle.space.best.Turn;
import fettle.space.best.Weighing;
import fettle.space.worth.Standing;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/**
 * Lays out what single swaps would do to a build, as facts for rules to judge. Only a valid build that names a lens, and no unknown access profile, is
 * looked at, where it can be told of every limit how the build stands to it, and only swaps that keep all role kinds of what they take out, take the build past no limit,
 * nor farther past one and keep to the budget bear on it. Few of hundreds or thousands of swaps do bear on what rules find or on a ladder, so that a swap is tried when that
 * is asked. What a part does or costs that was not read in full is not known, so that no swap of it is looked at.
 *
 * <p>A point's going price is the median of the step prices on the ladders of all places of the build, the lower of two.
 */
final class Advising {

    /** A swap with what the assembly that it puts in would cost as a whole. */
    private record Whole(Prospect swap, BigDecimal cost) {}

    private final Catalog catalog;
    private final Build build;
    private final BuildResult result;
    private final Weighing weighing;
    private final Shopping shopping;
    private final Evidence evidence;
    private final SortedMap<String, List<Prospect>> swaps;
    private final Map<PlaceLadder.Priced, Prospect> priced = new IdentityHashMap<>();

    private Advising(CatalogReading reading, BuildCheck check, BuildResult result, Prices prices) {
        this.catalog = reading.catalog();
        this.build = result.build();
        this.result = result;
        this.weighing = new Weighing(catalog, catalog.lenses().get(build.lens().orElseThrow().id()),
                build.outfit().flatMap(worn -> Optional.ofNullable(catalog.outfits().get(worn.id()))));
        Set<String> owned = new HashSet<>();
        build.owned().forEach(part -> owned.add(part.id()));
        this.shopping = new Shopping(prices, owned);
        this.evidence = new Evidence(result, weighing, shopping);
        Set<String> obscure = obscure(reading.halfRead());
        this.swaps = Swaps.thought(reading.relations(), check, weighing, shopping, result).prospects().stream()
                .filter(swap -> Collections.disjoint(obscure, swap.from().values()) && Collections.disjoint(obscure, swap.to().values()))
                .collect(Collectors.groupingBy(Prospect::path, TreeMap::new, Collectors.toList()));
    }

    static List<Object> facts(CatalogReading reading, BuildCheck check, BuildResult result) {
        boolean lens = result.build().lens().filter(named -> reading.catalog().lenses().containsKey(named.id()) && !reading.halfRead().lenses().contains(named.id())).isPresent();
        boolean measured = result.limits().stream().allMatch(LimitMargin::told);
        Optional<Prices> prices = check.prices(result.build());
        return lens && result.valid() && measured && prices.isPresent() ? new Advising(reading, check, result, prices.get()).facts() : List.of();
    }

    /** The parts of which it isn't known what they do to the build's totals, or what they cost. */
    private Set<String> obscure(HalfRead halfRead) {
        Part platform = catalog.platforms().get(build.platform().id());
        Set<String> baseless = catalog.attributes().values().stream().filter(each -> each.baseless(platform)).map(Attribute::id).collect(Collectors.toSet());
        Set<String> obscure = new HashSet<>(halfRead.parts());
        if (!baseless.isEmpty()) {
            catalog.parts().values().stream().filter(part -> !Collections.disjoint(baseless, part.stats().keySet()) || !Collections.disjoint(baseless, part.loaded().keySet()))
                    .map(Part::id).forEach(obscure::add);
        }
        return obscure;
    }

    private List<Object> facts() {
        SortedMap<String, PlaceLadder> ladders = new TreeMap<>();
        swaps.forEach((path, here) -> ladders.put(path, new PlaceLadder(points(here), present(here))));
        PlaceLadder.settle(ladders.values());
        List<Fraction> steps = new ArrayList<>();
        ladders.values().forEach(ladder -> steps.addAll(steps(ladder.rungs())));
        steps.sort(null);
        Optional<Fraction> going = steps.isEmpty() ? Optional.empty() : Optional.of(steps.get((steps.size() - 1) / 2));
        List<Object> facts = new ArrayList<>();
        swaps.forEach((path, here) -> {
            facts.addAll(alternatives(here, going));
            if (!here.get(0).from().isEmpty()) {
                midway(path, here.get(0).from(), ladders.get(path)).filter(found -> !outdoneWithin(path, ladders)).ifPresent(facts::add);
            }
        });
        return facts;
    }

    /** Whether something farther in betters what is there at no more cost: the assembly that it leaves is no choice between two others then, and is told of where it lies. */
    private static boolean outdoneWithin(String path, SortedMap<String, PlaceLadder> ladders) {
        return ladders.entrySet().stream().filter(ladder -> ladder.getKey().startsWith(path + "/")).map(Map.Entry::getValue)
                .anyMatch(ladder -> ladder.present().isPresent() && ladder.standing() == Standing.DOMINATED);
    }

    private List<PlaceLadder.Priced> points(List<Prospect> here) {
        List<PlaceLadder.Priced> points = new ArrayList<>();
        // What loses a role bears on nothing, which needs no trial.
        here.stream().filter(Advising::serves).forEach(swap -> cost(swap.to().values()).ifPresent(cost -> {
            PlaceLadder.Priced point = new PlaceLadder.Priced(Assemblies.words(swap.to()), cost, swap.benefit(), Optional.of(() -> bears(swap)));
            priced.put(point, swap);
            points.add(point);
        }));
        return points;
    }

    /** What is there now. */
    private Optional<PlaceLadder.Priced> present(List<Prospect> here) {
        SortedMap<String, String> from = here.get(0).from();
        return cost(from.values()).map(cost -> new PlaceLadder.Priced(Assemblies.words(from), cost, weighing.benefit(result.totals()), Optional.empty()));
    }

    /** Whether what a swap puts in has every role kind that what it takes out has, wherever else the build has them. */
    private static boolean serves(Prospect swap) {
        return swap.rolesLost().isEmpty() && swap.rolesElsewhere().isEmpty();
    }

    /** Whether a swap gives a valid build, serves as before, takes the build past no limit and keeps to the budget. */
    private boolean bears(Prospect swap) {
        return serves(swap) && swap.tried().filter(made -> made.sound() && Improvement.affordable(result, made.after())).isPresent();
    }

    private static List<Fraction> steps(List<PlaceLadder.Priced> rungs) {
        List<Fraction> steps = new ArrayList<>();
        for (int i = 1; i < rungs.size(); i++) {
            BigDecimal more = rungs.get(i).cost().subtract(rungs.get(i - 1).cost());
            steps.add(Fraction.of(more).over(Fraction.of(rungs.get(i).benefit().subtract(rungs.get(i - 1).benefit()))));
        }
        return steps;
    }

    private Optional<BigDecimal> cost(Iterable<String> parts) {
        BigDecimal sum = BigDecimal.ZERO;
        for (String part : parts) {
            Optional<BigDecimal> cost = shopping.owned().contains(part) ? Optional.of(BigDecimal.ZERO)
                    : shopping.prices().cheapest(part).map(priced -> priced.cost());
            if (cost.isEmpty()) {
                return Optional.empty();
            }
            sum = sum.add(cost.get());
        }
        return Optional.of(sum);
    }

    /** Without the parts that nobody sells: the build has them. */
    private List<String> sold(Collection<String> parts) {
        return parts.stream().filter(part -> result.unobtainable().stream().noneMatch(had -> had.id().equals(part))).toList();
    }

    private List<Alternative> alternatives(List<Prospect> here, Optional<Fraction> going) {
        List<Whole> wholes = here.stream().flatMap(swap -> cost(sold(swap.to().values())).map(cost -> new Whole(swap, cost)).stream()).toList();
        int[] thrift = thrift(wholes);
        List<Alternative> alternatives = new ArrayList<>();
        for (int rank = 0; rank < wholes.size(); rank++) {
            Prospect swap = wholes.get(rank).swap;
            SortedMap<String, Turn> better = new TreeMap<>();
            SortedMap<String, Turn> worse = new TreeMap<>();
            Turn.between(weighing, result.totals(), swap.totals()).forEach(turn -> (turn.better() ? better : worse).put(turn.attribute().id(), turn));
            Optional<Fraction> step = swap.gain().signum() > 0 ? Optional.of(Fraction.of(swap.price()).over(Fraction.of(swap.gain()))) : Optional.empty();
            alternatives.add(new Alternative(build, swap, () -> bears(swap), place(swap.path()), better, worse, cost(swap.from().values()), wholes.get(rank).cost, step, going,
                    rank, thrift[rank], catalog.head().map(CatalogHead::currency).orElse(""), evidence));
        }
        return alternatives;
    }

    /** The rank of each by what it would cost as a whole; of two that cost the same, the one that comes first is first. */
    private static int[] thrift(List<Whole> priced) {
        List<Integer> order = IntStream.range(0, priced.size()).boxed().sorted(Comparator.comparing(place -> priced.get(place).cost)).toList();
        int[] thrift = new int[priced.size()];
        for (int rank = 0; rank < thrift.length; rank++) {
            thrift[order.get(rank)] = rank;
        }
        return thrift;
    }

    private Optional<Midway> midway(String path, SortedMap<String, String> from, PlaceLadder ladder) {
        if (ladder.present().isEmpty()) {
            return Optional.empty();
        }
        PlaceLadder.Priced now = ladder.present().get();
        Optional<PlaceLadder.Priced> cheaper = ladder.rungs().stream().filter(rung -> rung.cost().compareTo(now.cost()) < 0).reduce((one, other) -> other);
        Optional<PlaceLadder.Priced> dearer = ladder.rungs().stream().filter(rung -> rung.cost().compareTo(now.cost()) > 0).findFirst();
        return cheaper.isEmpty() || dearer.isEmpty() ? Optional.empty() : Optional.of(new Midway(build, path, place(path), from, ladder.standing(),
                beside(now, cheaper.get()), beside(now, dearer.get()), evidence));
    }

    private Midway.Rung beside(PlaceLadder.Priced now, PlaceLadder.Priced rung) {
        return new Midway.Rung(priced.get(rung), rung.cost().subtract(now.cost()).abs(), rung.benefit().subtract(now.benefit()).abs());
    }

    private Origin place(String path) {
        return result.placement().orElseThrow().parts().stream().filter(part -> part.path().equals(path)).map(Occurrence::entry)
                .map(entry -> entry.origin()).findFirst().orElse(build.origin());
    }
}

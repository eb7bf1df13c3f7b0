package fettle.judgement;

import fettle.catalog.Attribute;
import fettle.catalog.Build;
import fettle.catalog.Catalog;
import fettle.catalog.CatalogHead;
import fettle.document.Origin;
import fettle.relation.Relations;
import fettle.space.BuildCheck;
import fettle.space.BuildResult;
import fettle.space.Fraction;
import fettle.space.Occurrence;
import fettle.space.best.Improvement;
import fettle.space.best.Shares;
import fettle.space.best.Shopping;
import fettle.space.best.Swap;
import fettle.space.best.Swaps;
import fettle.space.best.Weighing;
import fettle.space.worth.Hull;
import fettle.space.worth.Standing;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/**
 * Lays out what single swaps would do to a build, as facts for rules to judge. Only a valid build that names a lens is looked at, and only swaps that keep
 * its role kinds, break no limit that holds and keep to the budget.
 *
 * <p>A point's going price is the median of the step prices on the ladders of all places of the build, the lower of two.
 */
final class Advising {

    /** An assembly with what it would cost and what the build would then weigh. */
    private record Priced(String assembly, BigDecimal cost, BigDecimal benefit) implements Hull.Point {}

    /** A swap with what the assembly that it puts in would cost as a whole. */
    private record Whole(Swap swap, BigDecimal cost) {}

    private final Catalog catalog;
    private final Build build;
    private final BuildResult result;
    private final Weighing weighing;
    private final Shopping shopping;
    private final List<Swap> swaps;

    private Advising(Relations relations, BuildCheck check, BuildResult result) {
        this.catalog = relations.catalog();
        this.build = result.build();
        this.result = result;
        this.weighing = new Weighing(catalog, catalog.lenses().get(build.lens().orElseThrow().id()),
                build.outfit().flatMap(worn -> Optional.ofNullable(catalog.outfits().get(worn.id()))));
        Set<String> owned = new HashSet<>();
        build.owned().forEach(part -> owned.add(part.id()));
        this.shopping = new Shopping(check.prices(build), owned);
        this.swaps = Swaps.of(relations, check, weighing, shopping, result).swaps().stream()
                .filter(swap -> swap.sound() && Improvement.affordable(result, swap.after())).toList();
    }

    static List<Object> facts(Relations relations, BuildCheck check, BuildResult result) {
        boolean lens = result.build().lens().map(named -> relations.catalog().lenses().containsKey(named.id())).orElse(false);
        return lens && result.valid() ? new Advising(relations, check, result).facts() : List.of();
    }

    private List<Object> facts() {
        Map<String, List<Swap>> byPath = swaps.stream().collect(Collectors.groupingBy(Swap::path, TreeMap::new, Collectors.toList()));
        List<Fraction> steps = new ArrayList<>();
        List<Object> facts = new ArrayList<>();
        byPath.forEach((path, here) -> {
            Hull<Priced> hull = new Hull<>(points(here));
            steps.addAll(steps(hull.rungs()));
        });
        steps.sort(null);
        Optional<Fraction> going = steps.isEmpty() ? Optional.empty() : Optional.of(steps.get((steps.size() - 1) / 2));
        byPath.forEach((path, here) -> {
            facts.addAll(alternatives(here, going));
            midway(path, here).ifPresent(facts::add);
        });
        return facts;
    }

    private List<Priced> points(List<Swap> here) {
        List<Priced> points = new ArrayList<>();
        here.forEach(swap -> cost(swap.to().values()).ifPresent(cost -> points.add(new Priced(Assemblies.words(swap.to()), cost, swap.benefit()))));
        present(here).ifPresent(points::add);
        return points;
    }

    /** What is there now. */
    private Optional<Priced> present(List<Swap> here) {
        SortedMap<String, String> from = here.get(0).from();
        return cost(from.values()).map(cost -> new Priced(Assemblies.words(from), cost, weighing.benefit(result.totals())));
    }

    private static List<Fraction> steps(List<Priced> rungs) {
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

    private List<Alternative> alternatives(List<Swap> here, Optional<Fraction> going) {
        List<Whole> priced = here.stream().flatMap(swap -> cost(swap.to().values()).map(cost -> new Whole(swap, cost)).stream()).toList();
        int[] thrift = thrift(priced);
        List<Alternative> alternatives = new ArrayList<>();
        for (int rank = 0; rank < priced.size(); rank++) {
            Swap swap = priced.get(rank).swap;
            SortedMap<String, BigDecimal> better = new TreeMap<>();
            SortedMap<String, BigDecimal> worse = new TreeMap<>();
            boolean material = false;
            boolean harmful = false;
            for (Map.Entry<String, BigDecimal> change : Shares.difference(result.totals(), swap.after().totals()).entrySet()) {
                Attribute attribute = catalog.attributes().get(change.getKey());
                if (attribute.better() == Attribute.Better.NONE) {
                    continue;
                }
                boolean serves = change.getValue().signum() > 0 == (attribute.better() == Attribute.Better.HIGHER);
                BigDecimal size = change.getValue().abs();
                (serves ? better : worse).put(change.getKey(), size);
                boolean matters = size.compareTo(attribute.material()) >= 0;
                material |= serves && matters;
                harmful |= !serves && matters;
            }
            Optional<Fraction> step = swap.gain().signum() > 0 ? Optional.of(Fraction.of(swap.price()).over(Fraction.of(swap.gain()))) : Optional.empty();
            // A total that only one of the two has can't be weighed against the other.
            if (result.totals().keySet().equals(swap.after().totals().keySet())) {
                alternatives.add(new Alternative(build, swap, place(swap.path()), better, worse, material, harmful, cost(swap.from().values()),
                        priced.get(rank).cost, step, going, rank, thrift[rank],
                        catalog.head().map(CatalogHead::currency).orElse("")));
            }
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

    private Optional<Midway> midway(String path, List<Swap> here) {
        Optional<Priced> present = present(here);
        if (present.isEmpty() || here.get(0).from().isEmpty()) {
            return Optional.empty();
        }
        List<Priced> points = points(here);
        Priced now = points.get(points.size() - 1);
        Hull<Priced> hull = new Hull<>(points);
        Optional<Priced> cheaper = hull.rungs().stream().filter(rung -> rung.cost().compareTo(now.cost()) < 0).reduce((one, other) -> other);
        Optional<Priced> dearer = hull.rungs().stream().filter(rung -> rung.cost().compareTo(now.cost()) > 0).findFirst();
        Standing standing = hull.standing(now);
        return cheaper.isEmpty() || dearer.isEmpty() ? Optional.empty() : Optional.of(new Midway(build, path, place(path), now.assembly(), standing,
                cheaper.get().assembly(), now.cost().subtract(cheaper.get().cost()), dearer.get().assembly(), dearer.get().cost().subtract(now.cost())));
    }

    private Origin place(String path) {
        return result.placement().orElseThrow().parts().stream().filter(part -> part.path().equals(path)).map(Occurrence::entry)
                .map(entry -> entry.origin()).findFirst().orElse(build.origin());
    }
}

package fettle.space.worth;

import static org.junit.jupiter.api.Assertions.assertEquals;

import fettle.catalog.Attribute;
import fettle.catalog.Catalog;
import fettle.catalog.Part;
import fettle.catalog.Stat;
import fettle.space.Catalogs;
import fettle.space.Evaluation;
import fettle.space.Landscape;
import fettle.space.Prices;
import fettle.space.RandomCatalog;
import fettle.space.Space;
import fettle.space.Terrain;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import java.util.stream.StreamSupport;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.ShrinkingMode;
import net.jqwik.api.statistics.Statistics;
import org.moeaframework.core.Solution;
import org.moeaframework.core.population.NondominatedPopulation;

/** Fronts are what the MOEA Framework's archive of non-dominated solutions keeps of all choices, by figures worked out from the entries here. */
class FrontsTest {

    private static final int MOST_CHOICES = 400;
    private static final Fronts.Bounds RANKED = new Fronts.Bounds(1_000, 100_000, Long.MAX_VALUE, Long.MAX_VALUE / 2, 1);

    @Provide
    static Arbitrary<String> catalogs() {
        return Arbitraries.randomValue(random -> RandomCatalog.json(random, 6 + random.nextInt(5)));
    }

    @Property(tries = 200, shrinking = ShrinkingMode.OFF)
    void a_front_is_what_an_archive_of_all_choices_keeps(@ForAll("catalogs") String json) {
        Landscape landscape = Space.of(Catalogs.relations(json)).landscape(Catalogs.relations(json).catalog().platforms().keySet());
        Catalog catalog = landscape.relations().catalog();
        Terrain terrain = landscape.terrain();
        Prices prices = new Prices(catalog, Optional.empty());
        agree(landscape, Measure.ignoringCost(catalog, terrain), new Figures(catalog, terrain, Optional.empty()));
        agree(landscape, Measure.withCost(catalog, terrain, prices), new Figures(catalog, terrain, Optional.of(prices)));
    }

    private static void agree(Landscape landscape, Measure measure, Figures figures) {
        agree(landscape, measure, Fronts.Bounds.NARROW, figures);
        agree(landscape, measure, Fronts.Bounds.BROAD, figures);
        agree(landscape, measure, RANKED, figures);
    }

    private static void agree(Landscape landscape, Measure measure, Fronts.Bounds bounds, Figures figures) {
        Fronts fronts = new Fronts(landscape.bare(), measure, bounds, new Meter(Long.MAX_VALUE));
        Lifting lifting = new Lifting(landscape.circuit(), landscape.bare());
        Listing listing = new Listing(landscape.circuit(), MOST_CHOICES, new Meter(Long.MAX_VALUE));
        BitSet nodes = Evaluation.below(landscape.circuit(), landscape.roots());
        for (int node = nodes.nextSetBit(0); node >= 0; node = nodes.nextSetBit(node + 1)) {
            int root = node;
            List<List<BigDecimal>> all;
            try {
                all = listing.of(node).stream().map(figures::of).flatMap(Optional::stream).toList();
            } catch (Meter.Spent tooMany) {
                continue;
            }
            Optional<List<Point>> front = fronts.of(node);
            if (front.isPresent() && !figures.turning()) {
                Set<List<Integer>> found = ranked(front.get().stream().map(point -> figures.of(lifting.pick(root, point)).orElseThrow()).toList(), all);
                assertEquals(found.size(), front.get().size(), "no two points of a front are alike");
                assertEquals(archived(all), found);
                Statistics.label("points").collect(Math.min(found.size(), 5));
            }
        }
    }

    /** What the archive keeps; it is told ranks, since it knows floating-point numbers only. */
    private static Set<List<Integer>> archived(List<List<BigDecimal>> all) {
        NondominatedPopulation archive = new NondominatedPopulation();
        for (List<Integer> ranks : ranked(all, all)) {
            Solution solution = new Solution(0, ranks.size());
            for (int i = 0; i < ranks.size(); i++) {
                solution.setObjectiveValue(i, -ranks.get(i));
            }
            archive.add(solution);
        }
        return StreamSupport.stream(archive.spliterator(), false)
                .map(solution -> Arrays.stream(solution.getObjectiveValues()).mapToObj(value -> (int) -value).toList()).collect(Collectors.toSet());
    }

    private static Set<List<Integer>> ranked(List<List<BigDecimal>> some, List<List<BigDecimal>> all) {
        List<List<BigDecimal>> columns = new ArrayList<>();
        for (int c = 0; !all.isEmpty() && c < all.get(0).size(); c++) {
            int column = c;
            columns.add(List.copyOf(all.stream().map(figures -> figures.get(column)).collect(Collectors.toCollection(TreeSet::new))));
        }
        return some.stream().map(figures -> {
            List<Integer> ranks = new ArrayList<>();
            for (int c = 0; c < figures.size(); c++) {
                ranks.add(Collections.binarySearch(columns.get(c), figures.get(c)));
            }
            return ranks;
        }).collect(Collectors.toSet());
    }

    /** What assemblies are compared by, each figure turned so that more is better. */
    private record Figures(Catalog catalog, Terrain terrain, Optional<Prices> prices) {

        private static final BigDecimal BEYOND = new BigDecimal("1E12");

        /** Empty where something is not sold. */
        Optional<List<BigDecimal>> of(Pick pick) {
            List<Part> parts = new ArrayList<>();
            collect(pick, parts);
            List<BigDecimal> figures = new ArrayList<>();
            for (Attribute attribute : catalog.attributes().values()) {
                if (attribute.better() != Attribute.Better.NONE) {
                    figures.add(turned(attribute, total(attribute, parts.stream().map(Part::stats).toList())));
                    figures.add(turned(attribute, total(attribute, parts.stream().map(Part::loaded).toList())));
                }
            }
            catalog.kinds().values().stream().filter(Catalog.Kind::role).forEach(kind ->
                    figures.add(parts.stream().anyMatch(part -> part.kind().equals(Optional.of(kind.id()))) ? BigDecimal.ONE : BigDecimal.ZERO));
            if (prices.isPresent()) {
                BigDecimal cost = BigDecimal.ZERO;
                for (Part part : parts) {
                    Optional<Prices.Priced> cheapest = prices.get().cheapest(part.id());
                    if (cheapest.isEmpty()) {
                        return Optional.empty();
                    }
                    cost = cost.add(cheapest.get().cost());
                }
                figures.add(cost.negate());
            }
            return Optional.of(figures);
        }

        /** Where a factor is negative, less of a part can be more of a whole, and fronts keep more than an archive would. */
        boolean turning() {
            return catalog.attributes().values().stream().filter(attribute -> attribute.combine() == Attribute.Combine.PRODUCT)
                    .anyMatch(attribute -> catalog.parts().values().stream().flatMap(part -> Stream.of(part.stats(), part.loaded()))
                            .anyMatch(stats -> stats.containsKey(attribute.id()) && stats.get(attribute.id()).value().compareTo(new BigDecimal(-100)) < 0));
        }

        private void collect(Pick pick, List<Part> parts) {
            if (pick instanceof Pick.Headed headed) {
                parts.add(catalog.parts().get(terrain.hosts().get(headed.part())));
                collect(headed.on(), parts);
            } else if (pick instanceof Pick.InSlot inSlot) {
                collect(inSlot.held(), parts);
            } else if (pick instanceof Pick.Both both) {
                collect(both.one(), parts);
                collect(both.other(), parts);
            }
        }

        private static BigDecimal turned(Attribute attribute, BigDecimal total) {
            return attribute.better() == Attribute.Better.HIGHER ? total : total.negate();
        }

        private static BigDecimal total(Attribute attribute, List<Map<String, Stat>> entries) {
            List<BigDecimal> values = entries.stream().map(stats -> stats.get(attribute.id())).filter(Objects::nonNull).map(Stat::value).toList();
            return switch (attribute.combine()) {
                case SUM, PERCENT -> values.stream().reduce(BigDecimal.ZERO, BigDecimal::add);
                case PRODUCT -> values.stream().map(value -> value.movePointLeft(2).add(BigDecimal.ONE)).reduce(BigDecimal.ONE, BigDecimal::multiply);
                // With nothing to compare, whatever comes along is the greatest, or the least.
                case MAX -> values.stream().max(BigDecimal::compareTo).orElse(BEYOND.negate());
                case MIN -> values.stream().min(BigDecimal::compareTo).orElse(BEYOND);
            };
        }
    }
}

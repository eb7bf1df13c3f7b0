package fettle.benchmark;

import fettle.catalog.Catalog;
import fettle.catalog.CatalogReader;
import fettle.catalog.Limit;
import fettle.catalog.Outfit;
import fettle.engine.RuleBase;
import fettle.relation.Deriver;
import fettle.relation.Relations;
import fettle.sat.Encoding;
import fettle.sat.Optimizer;
import fettle.space.Folded;
import fettle.space.Prices;
import fettle.space.Space;
import fettle.space.Survey;
import fettle.space.best.Demands;
import fettle.space.best.Effort;
import fettle.space.best.Optimum;
import fettle.space.best.Outcome;
import java.lang.management.ManagementFactory;
import java.lang.management.MemoryType;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Seeks the best build of platforms of a made-up catalog by a lens, with a limit that follows another total by a table, prices, and three quarters of the money that
 * the best build would cost: of the largest catalog by itself, in an outfit, and of small ones, within another limit besides, also with a library for constraint
 * programming, which must find builds of the same benefit and cost wherever it is done in time.
 */
public final class BestBuildBenchmark {

    private static final int PLATFORMS = Integer.getInteger("fettle.platforms", 6);
    private static final int MOST_OCCURRENCES = 20_000;
    private static final Duration PATIENCE = Duration.ofSeconds(20);

    private BestBuildBenchmark() {}

    public static void main(String[] arguments) {
        alone();
        System.out.println("peak memory " + peakMegabytes() + " MB");
        for (int parts : new int[] {220, 300, 380}) {
            besideLibrary(parts);
        }
    }

    private static Relations relations(BenchmarkCatalog.Size size) {
        return Deriver.derive(RuleBase.builtIn(), CatalogReader.read(BenchmarkCatalog.documents(BenchmarkCatalog.of(size, 7).texts())));
    }

    private static void alone() {
        Relations relations = relations(BenchmarkCatalog.Size.LARGE);
        System.out.println(relations.catalog().parts().size() + " parts in the catalog");
        for (String platform : relations.catalog().platforms().keySet().stream().limit(PLATFORMS).toList()) {
            Survey survey = Space.of(relations).survey(List.of(platform)).get(platform);
            String builds = survey instanceof Survey.Known known ? known.count().toString().length() + " digits" : "unknown";
            seek(relations, platform, "number of builds: " + builds, Optional.of(relations.catalog().outfits().get("plate")));
        }
    }

    private record Ours(BigDecimal budget, Outcome outcome, double seconds) {}

    private static Ours seek(Relations relations, String platform, String about, Optional<Outfit> outfit) {
        Optimum optimum = new Optimum(relations, Space.of(relations).folded(platform));
        BigDecimal budget = optimum.seek(demands(relations.catalog(), Optional.empty(), outfit), Effort.of(PATIENCE)) instanceof Outcome.Found free
                ? free.cost().multiply(new BigDecimal("0.75")).setScale(0, RoundingMode.UP) : BigDecimal.valueOf(500_000);
        long start = System.nanoTime();
        Folded folded = Space.of(relations).folded(platform);
        double fold = since(start);
        Outcome outcome = new Optimum(relations, folded).seek(demands(relations.catalog(), Optional.of(budget), outfit), Effort.of(PATIENCE));
        double whole = since(start);
        System.out.printf("%s, %s: %.2f s, of which %.2f s fold; within %s: %s%n", platform, about, whole, fold, budget.toPlainString(), told(outcome));
        return new Ours(budget, outcome, whole);
    }

    private static String told(Outcome outcome) {
        return outcome instanceof Outcome.Found found
                ? (found.proved() ? "proved" : "not proved, bound " + found.bound().toPlainString()) + ", benefit " + found.benefit().toPlainString() + ", cost " + found.cost().toPlainString()
                : outcome.getClass().getSimpleName();
    }

    private static Demands demands(Catalog catalog, Optional<BigDecimal> budget, Optional<Outfit> outfit) {
        List<Limit> limits = catalog.limits().values().stream().filter(limit -> outfit.isEmpty() || limit.bound() instanceof Limit.Table).toList();
        return new Demands(Optional.of(catalog.lenses().get("control")), Optional.of(new Prices(catalog, Optional.of(catalog.access().get("regular")))), budget,
                outfit, Set.of(), true, Optional.empty(), Set.of(), limits);
    }

    private static void besideLibrary(int parts) {
        Relations relations = relations(new BenchmarkCatalog.Size(parts, 6, 3, 0, false));
        Catalog catalog = relations.catalog();
        System.out.println(catalog.parts().size() + " parts in the catalog");
        double ours = 0;
        double theirs = 0;
        int unfinished = 0;
        for (String platform : catalog.platforms().keySet()) {
            Ours found = seek(relations, platform, "alone", Optional.empty());
            long start = System.nanoTime();
            Encoding encoding;
            try {
                encoding = Encoding.of(relations, platform, MOST_OCCURRENCES);
            } catch (Encoding.TooLarge | UnsupportedOperationException unfit) {
                System.out.println("  too large for the library");
                continue;
            }
            Optimizer.Answer answer = new Optimizer(catalog, encoding, new Optimizer.Demand(catalog.lenses().get("control"), true, Optional.empty(),
                    Optional.of(catalog.access().get("regular").vendors()), Optional.of(found.budget), Set.of(), Map.of())).best(PATIENCE);
            double seconds = since(start);
            System.out.printf("  library: %.2f s, %s%n", seconds, answer.complete() ? "proved " + answer.best() : "not done");
            if (!answer.complete()) {
                unfinished++;
            } else if (!same(answer.best(), found.outcome)) {
                throw new IllegalStateException("the library finds " + answer.best() + " on " + platform + ", and not " + found.outcome);
            }
            ours += found.seconds;
            theirs += seconds;
        }
        System.out.printf("with %d parts the library takes %.0f times as long%s%n", parts, theirs / ours,
                unfinished == 0 ? "" : " at least; on " + unfinished + " platforms it was not done within " + PATIENCE.toSeconds() + " s");
    }

    private static boolean same(Optional<Optimizer.Best> best, Outcome outcome) {
        return best.map(expected -> outcome instanceof Outcome.Found found && found.proved() && expected.benefit().compareTo(found.benefit()) == 0
                && expected.cost().compareTo(found.cost()) == 0).orElse(outcome instanceof Outcome.Nothing);
    }

    private static double since(long start) {
        return (System.nanoTime() - start) / 1e9;
    }

    private static long peakMegabytes() {
        return ManagementFactory.getMemoryPoolMXBeans().stream().filter(pool -> pool.getType() == MemoryType.HEAP)
                .mapToLong(pool -> pool.getPeakUsage().getUsed()).sum() >> 20;
    }
}

package fettle.space.worth;

import fettle.catalog.Catalog;
import fettle.space.Contents;
import fettle.space.Landscape;
import fettle.space.Prices;
import fettle.space.Site;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;

/** A comparison of whole assemblies taken stage by stage, so that each can be timed. */
public final class ComparisonStages {

    private final Landscape landscape;
    private final Map<String, Long> millis = new LinkedHashMap<>();
    private final Map<String, Object> figures = new LinkedHashMap<>();

    public ComparisonStages(Landscape landscape) {
        this.landscape = landscape;
    }

    private interface Stage<T> {
        T run();
    }

    private <T> T time(String name, Stage<T> stage) {
        long start = System.nanoTime();
        T result = stage.run();
        millis.merge(name, (System.nanoTime() - start) / 1_000_000, Long::sum);
        return result;
    }

    /** Runs all stages. */
    public void run() {
        Catalog catalog = landscape.relations().catalog();
        slots(time("plots", () -> landscape.platforms().stream().flatMap(platform -> landscape.plot(platform).sites().stream()).toList()));
        Comparison comparison = time("measures", () -> new Comparison(landscape, Optional.empty()));
        List<SlotWorth> worths = time("verdicts", () -> landscape.platforms().stream().flatMap(platform -> comparison.platform(platform).stream()).toList());
        count("ignoring cost", worths, PartWorth::ignoringCost);
        count("with cost", worths, PartWorth::withCost);
        figures.putAll(comparison.figures());

        Middles middles = time("ladder roles", () -> new Middles(landscape, Optional.empty()));
        catalog.lenses().values().forEach(lens -> {
            Middles.Outcome outcome = time("middles, " + lens.id(), () -> middles.of(List.of(lens)).get(0));
            figures.put("between rungs, " + lens.id(), outcome.between().size() + ", undecided " + outcome.open().size());
        });
    }

    private void slots(List<Site> sites) {
        Set<Contents> different = Collections.newSetFromMap(new IdentityHashMap<>());
        sites.forEach(site -> different.add(site.contents()));
        figures.put("slots in use", sites.size());
        figures.put("different contents", different.size());
        figures.put("stands in them", different.stream().mapToInt(contents -> contents.stands().size()).sum());
    }

    private void count(String way, List<SlotWorth> worths, Function<PartWorth, Verdict> verdict) {
        Map<Class<?>, Long> counts = worths.stream().flatMap(worth -> worth.parts().values().stream())
                .collect(Collectors.groupingBy(worth -> verdict.apply(worth).getClass(), Collectors.counting()));
        figures.put("verdicts " + way, "dominated " + counts.getOrDefault(Verdict.Dominated.class, 0L) + ", undominated " + counts.getOrDefault(Verdict.Undominated.class, 0L)
                + ", undecided " + counts.getOrDefault(Verdict.Open.class, 0L) + ", of " + counts.values().stream().mapToLong(Long::longValue).sum());
    }

    /** Milliseconds by stage. */
    public Map<String, Long> millis() {
        return millis;
    }

    /** Sizes of what was compared. */
    public Map<String, Object> figures() {
        return figures;
    }
}

package fettle.space.worth;

import fettle.catalog.Catalog;
import fettle.space.Contents;
import fettle.space.Landscape;
import fettle.space.Prices;
import fettle.space.Site;
import java.lang.management.ManagementFactory;
import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.Collections;

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
        long start = cpu();
        T result = stage.run();
        millis.merge(name, (cpu() - start) / 1_000_000, Long::sum);
        return result;
    }

    /** Processor time, so that whatever else the machine does counts for little. */
    private static long cpu() {
        return ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
    }

    /** Runs all stages. */
    public void run() {
        Catalog catalog = landscape.relations().catalog();
        List<Site> sites = new ArrayList<>();
        time("plots", () -> landscape.platforms().stream().flatMap(platform -> landscape.plot(platform).sites().stream()).toList()).forEach(sites::add);
        Set<Contents> different = Collections.newSetFromMap(new IdentityHashMap<>());
        sites.forEach(site -> different.add(site.contents()));
        figures.put("slots in use", sites.size());
        figures.put("different contents", different.size());
        figures.put("stands in them", different.stream().mapToInt(contents -> contents.stands().size()).sum());

        Comparison comparison = time("measures", () -> new Comparison(landscape, Optional.empty()));
        List<SlotWorth> worths = time("verdicts", () -> landscape.platforms().stream().flatMap(platform -> comparison.platform(platform).stream()).toList());
        count("ignoring cost", worths.stream().flatMap(worth -> worth.parts().values().stream()).map(PartWorth::ignoringCost).toList());
        count("with cost", worths.stream().flatMap(worth -> worth.parts().values().stream()).map(PartWorth::withCost).toList());
        figures.putAll(comparison.figures());

        Middles middles = time("ladder roles", () -> new Middles(landscape, Optional.empty()));
        catalog.lenses().values().forEach(lens -> {
            Middles.Outcome outcome = time("middles, " + lens.id(), () -> middles.of(List.of(lens)).get(0));
            figures.put("between rungs, " + lens.id(), outcome.between().size() + ", undecided " + outcome.open().size());
        });
    }

    private void count(String way, List<Verdict> verdicts) {
        long dominated = verdicts.stream().filter(Verdict.Dominated.class::isInstance).count();
        long undominated = verdicts.stream().filter(Verdict.Undominated.class::isInstance).count();
        long open = verdicts.stream().filter(Verdict.Open.class::isInstance).count();
        figures.put("verdicts " + way, "dominated " + dominated + ", undominated " + undominated + ", undecided " + open + ", of " + verdicts.size());
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

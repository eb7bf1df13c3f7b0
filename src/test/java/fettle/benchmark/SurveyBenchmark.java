package fettle.benchmark;

import fettle.catalog.Catalog;
import fettle.catalog.CatalogReader;
import fettle.engine.RuleBase;
import fettle.relation.Deriver;
import fettle.relation.Relations;
import fettle.space.Space;
import fettle.space.Survey;
import fettle.space.SurveyStages;
import java.lang.management.ManagementFactory;
import java.lang.management.MemoryType;
import java.util.Map;

/** Times the survey of a large made-up catalog; run by hand, since how long it takes is no matter of right and wrong. */
public final class SurveyBenchmark {

    private SurveyBenchmark() {}

    public static void main(String[] arguments) {
        Map<String, String> texts = BenchmarkCatalog.of(BenchmarkCatalog.Size.asked(), 7).texts();
        long start = System.nanoTime();
        Catalog catalog = CatalogReader.read(BenchmarkCatalog.documents(texts));
        start = lap("read " + catalog.parts().size() + " parts, " + catalog.platforms().size() + " platforms", start);
        Relations relations = Deriver.derive(RuleBase.builtIn(), catalog);
        start = lap("derive relations (" + relations.clauses().size() + " clauses)", start);
        Map<String, Survey> surveys = Space.of(relations).survey();
        start = lap("survey", start);
        System.out.println("  dead somewhere: " + surveys.values().stream().filter(Survey.Known.class::isInstance).mapToInt(s -> ((Survey.Known) s).dead().size()).sum()
                + ", reachable: " + surveys.values().stream().mapToInt(s -> s.reachable().size()).sum());
        System.out.println("peak memory " + peakMegabytes() + " MB");
        SurveyStages stages = new SurveyStages(relations);
        stages.run();
        lap("survey again, by stages", start);
        stages.millis().forEach((stage, millis) -> System.out.println("  " + stage + ": " + millis + " ms"));
        stages.figures().forEach((what, figure) -> System.out.println("  " + what + ": " + figure));
    }

    private static long lap(String what, long start) {
        long now = System.nanoTime();
        System.out.println(what + ": " + (now - start) / 1_000_000 + " ms");
        return now;
    }

    /** The most that the heap ever held, garbage included. */
    private static long peakMegabytes() {
        return ManagementFactory.getMemoryPoolMXBeans().stream().filter(pool -> pool.getType() == MemoryType.HEAP)
                .mapToLong(pool -> pool.getPeakUsage().getUsed()).sum() >> 20;
    }
}

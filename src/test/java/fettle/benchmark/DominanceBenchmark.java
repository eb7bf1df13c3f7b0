package fettle.benchmark;

import fettle.catalog.Catalog;
import fettle.catalog.CatalogReader;
import fettle.engine.RuleBase;
import fettle.relation.Deriver;
import fettle.relation.Relations;
import fettle.space.Landscape;
import fettle.space.Space;
import fettle.space.worth.ComparisonStages;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.lang.management.MemoryType;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;

/**
 * Times how parts are compared, by dominance and on value ladders, in a made-up catalog or in one that is named: {@code fettle.parts} is the number of parts to make up,
 * {@code fettle.dense} whether they are dense, {@code fettle.catalog} a directory. Run by hand.
 */
public final class DominanceBenchmark {

    private DominanceBenchmark() {}

    public static void main(String[] arguments) throws IOException {
        Map<String, String> texts = texts();
        long start = System.nanoTime();
        Catalog catalog = CatalogReader.read(BenchmarkCatalog.documents(texts));
        start = lap("read " + catalog.parts().size() + " parts, " + catalog.platforms().size() + " platforms", start);
        Relations relations = Deriver.derive(RuleBase.builtIn(), catalog);
        start = lap("derive relations (" + relations.clauses().size() + " clauses)", start);
        Landscape landscape = Space.of(relations).landscape(catalog.platforms().keySet());
        start = lap("fold (circuit of " + landscape.circuit().size() + " nodes)", start);
        ComparisonStages stages = new ComparisonStages(landscape);
        stages.run();
        lap("compare", start);
        stages.millis().forEach((stage, millis) -> System.out.println("  " + stage + ": " + millis + " ms"));
        stages.figures().forEach((what, figure) -> System.out.println("  " + what + ": " + figure));
        System.out.println("peak memory " + peakMegabytes() + " MB");
    }

    private static Map<String, String> texts() throws IOException {
        String directory = System.getProperty("fettle.catalog", "");
        if (directory.isEmpty()) {
            int parts = Integer.getInteger("fettle.parts", BenchmarkCatalog.Size.LARGE.parts());
            BenchmarkCatalog.Size asked = BenchmarkCatalog.Size.asked();
            return BenchmarkCatalog.of(new BenchmarkCatalog.Size(parts, asked.platforms(), asked.families(), asked.builds(), asked.dense()), 7).texts();
        }
        Map<String, String> texts = new TreeMap<>();
        try (Stream<Path> files = Files.walk(Path.of(directory))) {
            for (Path file : files.filter(Files::isRegularFile).toList()) {
                texts.put(file.toString(), Files.readString(file));
            }
        }
        return texts;
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

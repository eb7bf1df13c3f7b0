package fettle.benchmark;

import fettle.catalog.CatalogReader;
import fettle.engine.RuleBase;
import fettle.relation.Deriver;
import fettle.relation.Relations;
import fettle.sat.Encoding;
import fettle.sat.Solver;
import fettle.space.Space;
import fettle.space.Survey;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeSet;

/**
 * Asks which parts are dead on the platforms of a large made-up catalog: of the survey, which answers for all at once, and of a library for propositional logic, one
 * part after another. The library gets as many platforms as it manages in the time that is set; what it answers must be the same.
 */
public final class DeadPartBenchmark {

    /** With all of {@link BenchmarkCatalog.Size#LARGE} a platform has millions of occurrences, which the library can't be given. */
    private static final List<Integer> PARTS = List.of(300, 500, 800);
    private static final int MOST_OCCURRENCES = 400_000;
    private static final long SECONDS = 40;

    private DeadPartBenchmark() {}

    public static void main(String[] arguments) {
        PARTS.forEach(DeadPartBenchmark::ask);
    }

    private static void ask(int size) {
        BenchmarkCatalog catalog = BenchmarkCatalog.of(new BenchmarkCatalog.Size(size, 24, 12, 0, true), 7);
        Relations relations = Deriver.derive(RuleBase.builtIn(), CatalogReader.read(BenchmarkCatalog.documents(catalog.texts())));

        long start = System.nanoTime();
        Map<String, Survey> surveys = Space.of(relations).survey();
        double surveyed = since(start);
        long questions = surveys.values().stream().mapToLong(survey -> survey.reachable().size()).sum();
        System.out.printf("%d parts in the catalog%n", relations.catalog().parts().size());
        System.out.printf("survey, all of it: %.2f s for %d platforms, %d parts on them%n", surveyed, surveys.size(), questions);

        long begun = System.nanoTime();
        double encoding = 0;
        double solving = 0;
        long asked = 0;
        long variables = 0;
        int platforms = 0;
        int tooLarge = 0;
        for (String platform : surveys.keySet()) {
            if (since(begun) > SECONDS) {
                break;
            }
            Survey.Known known = (Survey.Known) surveys.get(platform);
            long first = System.nanoTime();
            Solver solver;
            Set<String> parts;
            try {
                Encoding encoded = Encoding.of(relations, platform, MOST_OCCURRENCES);
                parts = encoded.placed().keySet();
                variables += encoded.variables();
                solver = new Solver(encoded);
            } catch (Encoding.TooLarge | UnsupportedOperationException unfit) {
                tooLarge++;
                continue;
            }
            encoding += since(first);
            long second = System.nanoTime();
            SortedSet<String> dead = new TreeSet<>();
            for (String part : parts) {
                if (!solver.possible(part)) {
                    dead.add(part);
                }
            }
            solving += since(second);
            asked += parts.size();
            platforms++;
            if (!dead.equals(known.dead())) {
                throw new IllegalStateException("on " + platform + " the library finds other dead parts: " + dead + " where the survey has " + known.dead());
            }
        }
        if (platforms == 0) {
            System.out.println("the library was given no platform: " + tooLarge + " have more than " + MOST_OCCURRENCES + " occurrences of parts");
            return;
        }
        System.out.printf("library, part by part: %.2f s to write down and %.2f s to ask of %d platforms (%d parts, %d variables a platform); same dead parts%n",
                encoding, solving, platforms, asked, variables / platforms);
        System.out.printf("platforms too large for it: %d%n", tooLarge);
        double each = (encoding + solving) / asked;
        System.out.printf("a part: %.3f ms by the survey, %.3f ms by the library; ratio %.0f%n", 1000 * surveyed / questions, 1000 * each, each / (surveyed / questions));
    }

    private static double since(long start) {
        return (System.nanoTime() - start) / 1e9;
    }
}

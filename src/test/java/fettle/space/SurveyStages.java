package fettle.space;

import fettle.relation.Relations;
import com.sun.management.OperatingSystemMXBean;
import java.lang.management.ManagementFactory;
import java.math.BigInteger;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** A survey taken stage by stage, so that each can be timed; gives what {@link Space#survey()} gives. */
public final class SurveyStages {

    private final Relations relations;
    private final Map<String, Long> millis = new LinkedHashMap<>();
    private final Map<String, Object> figures = new LinkedHashMap<>();

    public SurveyStages(Relations relations) {
        this.relations = relations;
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

    /** Processor time of the whole process, so that whatever else the machine does counts for little. */
    private static long cpu() {
        return ManagementFactory.getPlatformMXBean(OperatingSystemMXBean.class).getProcessCpuTime();
    }

    /** Runs all stages. */
    public List<Survey> run() {
        Terrain terrain = time("terrain", () -> Terrain.of(relations));
        TermMembers members = new TermMembers(relations, terrain);
        Monitors monitors = time("monitors",
                () -> Monitors.of(new Rules(relations.clauses(), relations.agreements()), terrain, members, Bounds.ORDINARY, new HashMap<>()));
        Ground ground = time("ground", () -> new Ground(terrain, monitors));
        Circuit circuit = new Circuit();
        Fold fold = new Fold(ground, circuit, Bounds.ORDINARY);
        List<Integer> platforms = new ArrayList<>();
        List<Integer> roots = new ArrayList<>();
        List<String> open = new ArrayList<>();
        long outlooks = cpu();
        relations.catalog().platforms().keySet().forEach(platform -> new Outlook(ground, terrain.number(platform)));
        figures.put("outlooks alone, ms", (cpu() - outlooks) / 1_000_000);
        for (String platform : relations.catalog().platforms().keySet()) {
            try {
                int root = time("fold", () -> fold.platform(terrain.number(platform)));
                if (root != Circuit.NONE) {
                    platforms.add(terrain.number(platform));
                    roots.add(root);
                } else {
                    open.add(platform + " void");
                }
            } catch (TooLarge tooLarge) {
                open.add(platform + " " + Undecided.of(tooLarge));
            }
        }
        figures.put("monitors", monitors.count());
        figures.put("nodes of the terrain", ground.nodes());
        figures.put("circuit", circuit.size());
        figures.put("circuit in use", Evaluation.below(circuit, roots.stream().mapToInt(Integer::intValue).toArray()).cardinality());
        figures.put("void or undecided", open);
        int[] numbers = platforms.stream().mapToInt(Integer::intValue).toArray();
        int[] nodes = roots.stream().mapToInt(Integer::intValue).toArray();
        Sweep sweep = time("sweep", () -> Sweep.of(circuit, nodes));
        figures.put("places of the sweep", sweep.places());
        Evaluation<BigInteger> counts = time("count", () -> Evaluation.of(circuit, new Counting(), sweep));
        time("essential", () -> Evaluation.of(circuit, new InAll(), sweep));
        time("ranges", () -> {
            Ranges ranges = new Ranges(relations.catalog(), terrain, circuit, numbers, nodes, sweep);
            ranges.questions().forEach(Runnable::run);
            return ranges.ranges();
        });
        figures.put("least digits", roots.stream().mapToInt(root -> counts.of(root).toString().length()).min().orElse(0));
        figures.put("most digits", roots.stream().mapToInt(root -> counts.of(root).toString().length()).max().orElse(0));
        return time("all answers again, with dead parts", () -> new Surveying(relations.catalog(), terrain, circuit, numbers, nodes).surveys());
    }

    /** Milliseconds by stage. */
    public Map<String, Long> millis() {
        return millis;
    }

    /** Sizes of what was built. */
    public Map<String, Object> figures() {
        return figures;
    }
}

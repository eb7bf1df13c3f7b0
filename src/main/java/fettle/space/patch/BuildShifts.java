package fettle.space.patch;

import fettle.catalog.Build;
import fettle.catalog.Catalog;
import fettle.document.DeepStack;
import fettle.relation.Relations;
import fettle.space.Change;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.stream.IntStream;

/** Tells what a patch did to each of many builds, on all processors. */
public final class BuildShifts {

    /** Fewer builds than this are not worth another thread. */
    private static final int FEWEST_APART = 25;

    private BuildShifts() {}

    /**
     * What the patch did to each build, in their order.
     *
     * @param hidden whether a difference, an entry that seems gone, may come of what could not be read of the new catalog
     * @param derive derives the relations of a catalog by the same rules that {@code old} and {@code now} were derived by
     */
    public static List<BuildShift> of(List<Build> builds, Relations old, Relations now, CatalogChanges changes, Predicate<Change> hidden,
            Function<Catalog, Relations> derive) {
        FormerIds former = new FormerIds(changes.renames());
        CatalogChanges followed = builds.stream().anyMatch(former::in) ? changes.followingRenames(old.catalog().references()) : changes;
        int workers = Math.max(1, Math.min(Runtime.getRuntime().availableProcessors(), builds.size() / FEWEST_APART));
        List<Integer> numbers = IntStream.range(0, workers).boxed().toList();
        return DeepStack.each(numbers, worker -> share(builds, worker, workers, new BuildComparison(old, now, changes, followed, hidden, derive))).stream()
                .flatMap(Collection::stream)
                .toList();
    }

    private static List<BuildShift> share(List<Build> builds, int worker, int workers, BuildComparison comparison) {
        List<BuildShift> shifts = new ArrayList<>();
        builds.subList(worker * builds.size() / workers, (worker + 1) * builds.size() / workers).forEach(build -> shifts.add(comparison.of(build)));
        return shifts;
    }
}

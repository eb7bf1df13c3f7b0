package fettle.space.patch;

import fettle.catalog.Build;
import fettle.catalog.Catalog;
import fettle.catalog.Limit;
import fettle.relation.Relations;
import fettle.space.BuildCheck;
import fettle.space.BuildResult;
import fettle.space.Change;
import fettle.space.EntryName;
import fettle.space.LimitMargin;
import fettle.space.Occurrence;
import fettle.space.Prices;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Function;

/** Checks builds against both catalogs and tells what the patch did to each, and through which differences. Not for several threads at once. */
final class BuildComparison {

    /** How many arrangements may be looked at in search of one repair. */
    private static final int MOST_ARRANGEMENTS = 6_000;

    private final BuildCheck old;
    private final BuildCheck now;
    private final CatalogChanges changes;
    private final Map<String, String> renamed = new HashMap<>();
    private final Map<String, String> formerly = new HashMap<>();
    private final LimitPairs limits;
    private final FigureBlame figureBlame;
    private final ValidityBlame validityBlame;
    private final Repairs repairs;

    BuildComparison(Relations old, Relations now, CatalogChanges changes, Function<Catalog, Relations> derive) {
        this.old = new BuildCheck(old);
        this.now = new BuildCheck(now);
        this.changes = changes;
        changes.renames().forEach(rename -> {
            renamed.put(rename.from().id(), rename.to().id());
            formerly.put(rename.to().id(), rename.from().id());
        });
        this.limits = new LimitPairs(old.catalog().limits(), now.catalog().limits());
        this.figureBlame = new FigureBlame(changes);
        this.validityBlame = new ValidityBlame(changes, derive);
        this.repairs = new Repairs(now, this.now, renamed, MOST_ARRANGEMENTS);
    }

    BuildShift of(Build build) {
        BuildResult before = old.check(build);
        BuildResult after = now.check(build);
        Optional<FigureBlame.Placed> placed = placed(build, before, after);
        List<FigureShift> figures = figures(build, before, after, placed);
        // Of what could not all be placed it isn't known what it comes to.
        List<LimitCrossing> crossings = placed.map(known -> crossings(before, after, known)).orElse(List.of());
        Verdict verdict = verdict(before, after, !figures.isEmpty() || !crossings.isEmpty());
        boolean turned = verdict == Verdict.BROKEN || verdict == Verdict.MENDED;
        Optional<RepairOutcome> repair = verdict == Verdict.BROKEN ? Optional.of(repairs.nearest(build, before.placement().orElseThrow())) : Optional.empty();
        return new BuildShift(
                build, before, after, verdict, figures, crossings, turned ? validityBlame.of(build, before, after) : List.of(), renamedUses(build),
                repair, repair.flatMap(nearest -> keeping(build, before, nearest)));
    }

    private static Verdict verdict(BuildResult before, BuildResult after, boolean moved) {
        if (before.valid() != after.valid()) {
            return before.valid() ? Verdict.BROKEN : Verdict.MENDED;
        }
        return moved ? Verdict.SHIFTED : Verdict.UNCHANGED;
    }

    private Optional<Repair> keeping(Build build, BuildResult before, RepairOutcome nearest) {
        return nearest instanceof RepairOutcome.Found found ? repairs.keeping(build, before.placement().orElseThrow(), found.repair()) : Optional.empty();
    }

    /** The build's parts, where all are known on both sides. */
    private static Optional<FigureBlame.Placed> placed(Build build, BuildResult before, BuildResult after) {
        return before.resolved() && after.resolved()
                ? Optional.of(new FigureBlame.Placed(build, after.placement().orElseThrow().parts().stream().map(Occurrence::part).toList()))
                : Optional.empty();
    }

    /** Where parts of a build are unknown on one side, it is their coming or going that moved its figures. */
    private List<Change> comings(Build build) {
        return build.parts().stream().flatMap(entry -> changes.whole(EntryName.part(entry.part())).stream()).distinct().sorted().toList();
    }

    private List<FigureShift> figures(Build build, BuildResult before, BuildResult after, Optional<FigureBlame.Placed> placed) {
        List<FigureShift> figures = new ArrayList<>();
        Set<String> attributes = new TreeSet<>(before.totals().keySet());
        attributes.addAll(after.totals().keySet());
        for (String attribute : attributes) {
            Optional<BigDecimal> from = Optional.ofNullable(before.totals().get(attribute));
            Optional<BigDecimal> to = Optional.ofNullable(after.totals().get(attribute));
            if (differ(from, to)) {
                figures.add(new FigureShift(attribute, from, to, placed.map(known -> figureBlame.total(known, attribute, from)).orElseGet(() -> comings(build))));
            }
        }
        if (differ(before.cost(), after.cost())) {
            List<Change> blame = placed.map(this::costBlame).orElseGet(() -> comings(build));
            figures.add(new FigureShift(FigureShift.COST, before.cost(), after.cost(), blame));
        }
        return figures;
    }

    /** Where only one side knows what the build may be bought from, it is the coming or going of its access profile that moved its cost. */
    private List<Change> costBlame(FigureBlame.Placed placed) {
        Optional<Prices> then = old.prices(placed.build());
        Optional<Prices> since = now.prices(placed.build());
        return then.isPresent() && since.isPresent() ? figureBlame.cost(placed, then.get(), since.get())
                : placed.build().access().map(profile -> changes.of(new EntryName("access", profile.id()))).orElse(List.of());
    }

    private static boolean differ(Optional<BigDecimal> one, Optional<BigDecimal> other) {
        return one.isPresent() != other.isPresent() || one.isPresent() && one.get().compareTo(other.get()) != 0;
    }

    private List<LimitCrossing> crossings(BuildResult before, BuildResult after, FigureBlame.Placed placed) {
        Map<String, LimitMargin> then = new HashMap<>();
        before.limits().forEach(margin -> then.put(margin.limit().id(), margin));
        List<LimitCrossing> crossings = new ArrayList<>();
        for (LimitMargin stands : after.limits()) {
            Optional<LimitMargin> stood = limits.formerly(stands.limit()).map(then::get);
            if (stood.map(LimitMargin::holds).orElse(true) != stands.holds()) {
                crossings.add(new LimitCrossing(stood, stands, blame(placed, stood, stands.limit())));
            }
        }
        return crossings;
    }

    /** What took a build across a limit. That a limit has another id moved nothing; and where there was none, it is by its coming that it isn't kept. */
    private List<Change> blame(FigureBlame.Placed placed, Optional<LimitMargin> stood, Limit limit) {
        List<Change> own = changes.of(new EntryName("limits", limit.id()));
        if (stood.isEmpty()) {
            return own;
        }
        boolean renamed = !stood.get().limit().id().equals(limit.id());
        return figureBlame.limit(placed, limit.id(), stood.get().holds(), renamed ? List.of() : own);
    }

    /** The ids in a build that one catalog has only by another name. */
    private List<RenamedUse> renamedUses(Build build) {
        SortedMap<String, List<String>> paths = new TreeMap<>();
        build.parts().forEach(entry -> {
            if (renamed.containsKey(entry.part()) || formerly.containsKey(entry.part())) {
                paths.computeIfAbsent(entry.part(), unused -> new ArrayList<>()).add(entry.path());
            }
        });
        List<RenamedUse> uses = new ArrayList<>();
        String platform = build.platform().id();
        if (renamed.containsKey(platform) || formerly.containsKey(platform)) {
            uses.add(use(platform, List.of()));
        }
        paths.forEach((part, where) -> uses.add(use(part, where)));
        return uses;
    }

    private RenamedUse use(String written, List<String> paths) {
        boolean former = renamed.containsKey(written);
        return new RenamedUse(written, former ? renamed.get(written) : formerly.get(written), former, paths);
    }
}

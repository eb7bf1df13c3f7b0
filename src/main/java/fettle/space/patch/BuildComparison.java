package fettle.space.patch;

import fettle.catalog.Build;
import fettle.catalog.Catalog;
import fettle.catalog.Limit;
import fettle.catalog.SlotId;
import fettle.relation.Relations;
import fettle.space.BuildCheck;
import fettle.space.BuildResult;
import fettle.space.Change;
import fettle.space.EntryName;
import fettle.space.LimitMargin;
import fettle.space.Occurrence;
import fettle.space.Placement;
import fettle.space.Prices;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;

/** Checks builds against both catalogs and tells what the patch did to each, and through which differences. Not for several threads at once. */
final class BuildComparison {

    /** How many arrangements may be looked at in search of one repair. */
    private static final int MOST_ARRANGEMENTS = 6_000;

    private final BuildCheck old;
    private final BuildCheck now;
    private final Map<String, String> renamed = new HashMap<>();
    private final FormerIds former;
    private final LimitPairs limits;
    private final Blames blames;
    private final Blames followed;
    private final Repairs repairs;
    private final List<SlotRename> slots;
    private final Predicate<Change> hidden;

    /** Where differences are looked for that did something to a build. */
    private record Blames(CatalogChanges changes, FigureBlame figures, ValidityBlame validity) {}

    /**
     * @param followed the differences that are left where builds name renamed entries by their new ids
     * @param hidden whether a difference may come of what could not be read
     */
    BuildComparison(Relations old, Relations now, CatalogChanges changes, CatalogChanges followed, Predicate<Change> hidden, Function<Catalog, Relations> derive) {
        this.hidden = hidden;
        this.old = new BuildCheck(old);
        this.now = new BuildCheck(now);
        changes.renames().forEach(rename -> renamed.put(rename.from().id(), rename.to().id()));
        this.former = new FormerIds(changes.renames());
        this.limits = new LimitPairs(old.catalog().limits(), now.catalog().limits());
        this.blames = new Blames(changes, new FigureBlame(changes, UnaryOperator.identity()), new ValidityBlame(changes, derive));
        this.followed = new Blames(followed, new FigureBlame(followed, former::of), new ValidityBlame(followed, derive));
        this.slots = changes.slotRenames();
        this.repairs = new Repairs(old.catalog(), now, this.now, renamed, slots, MOST_ARRANGEMENTS);
    }

    BuildShift of(Build build) {
        boolean migrated = former.in(build);
        Blames by = migrated ? followed : blames;
        BuildResult before = old.check(migrated ? former.build(build) : build);
        BuildResult after = now.check(build);
        Optional<FigureBlame.Placed> placed = placed(build, before, after);
        List<FigureShift> figures = figures(build, before, after, placed, by);
        // Of what could not all be placed it isn't known what it comes to.
        List<LimitCrossing> crossings = placed.map(known -> crossings(before, after, known, by)).orElse(List.of());
        Verdict verdict = verdict(before, after, !figures.isEmpty() || !crossings.isEmpty());
        boolean turned = verdict == Verdict.BROKEN || verdict == Verdict.MENDED;
        Optional<Placement> stood = before.placement().map(placement -> FormerIds.asWritten(build, placement));
        List<Change> blame = turned ? by.validity.of(build, before, after) : List.of();
        List<Change> unread = verdict == Verdict.UNCHANGED ? List.of() : Stream.concat(named(build, by), blame.stream()).filter(hidden).distinct().sorted().toList();
        Optional<RepairOutcome> repair = verdict == Verdict.BROKEN && unread.isEmpty() ? stood.map(placement -> repairs.nearest(build, placement)) : Optional.empty();
        return new BuildShift(
                build, before, after, verdict, figures, crossings, blame, renamedUses(build),
                stood.map(this::renamedSlots).orElse(List.of()), former.names(build), unread, repair, repair.flatMap(nearest -> keeping(build, stood.orElseThrow(), nearest)));
    }

    /** Which of all that a build names came or went. */
    private static Stream<Change> named(Build build, Blames by) {
        Stream<EntryName> beside = Stream.of(
                Stream.of(EntryName.platform(build.platform().id())), build.outfit().stream().map(worn -> new EntryName("outfits", worn.id())),
                build.access().stream().map(profile -> new EntryName("access", profile.id()))).flatMap(names -> names);
        return Stream.concat(beside, build.parts().stream().map(entry -> EntryName.part(entry.part()))).flatMap(name -> by.changes.whole(name).stream());
    }

    private static Verdict verdict(BuildResult before, BuildResult after, boolean moved) {
        if (before.valid() != after.valid()) {
            return before.valid() ? Verdict.BROKEN : Verdict.MENDED;
        }
        return moved ? Verdict.SHIFTED : Verdict.UNCHANGED;
    }

    private Optional<Repair> keeping(Build build, Placement stood, RepairOutcome nearest) {
        return nearest instanceof RepairOutcome.Found found ? repairs.keeping(build, stood, found.repair()) : Optional.empty();
    }

    /** The build's parts, where all are known on both sides. */
    private static Optional<FigureBlame.Placed> placed(Build build, BuildResult before, BuildResult after) {
        return before.resolved() && after.resolved()
                ? Optional.of(new FigureBlame.Placed(build, after.placement().orElseThrow().parts().stream().map(Occurrence::part).toList()))
                : Optional.empty();
    }

    /** Where parts of a build are unknown on one side, it is their coming or going that moved its figures. */
    private static List<Change> comings(Build build, Blames by) {
        return build.parts().stream().flatMap(entry -> by.changes.whole(EntryName.part(entry.part())).stream()).distinct().sorted().toList();
    }

    private List<FigureShift> figures(Build build, BuildResult before, BuildResult after, Optional<FigureBlame.Placed> placed, Blames by) {
        List<FigureShift> figures = new ArrayList<>();
        Set<String> attributes = new TreeSet<>(before.totals().keySet());
        attributes.addAll(after.totals().keySet());
        for (String attribute : attributes) {
            Optional<BigDecimal> from = Optional.ofNullable(before.totals().get(attribute));
            Optional<BigDecimal> to = Optional.ofNullable(after.totals().get(attribute));
            if (differ(from, to)) {
                figures.add(new FigureShift(attribute, from, to, placed.map(known -> by.figures.total(known, attribute, from)).orElseGet(() -> comings(build, by))));
            }
        }
        if (differ(before.cost(), after.cost())) {
            List<Change> blame = placed.map(known -> costBlame(known, by)).orElseGet(() -> comings(build, by));
            figures.add(new FigureShift(FigureShift.COST, before.cost(), after.cost(), blame));
        }
        return figures;
    }

    /** Where only one side knows what the build may be bought from, it is the coming or going of its access profile that moved its cost. */
    private List<Change> costBlame(FigureBlame.Placed placed, Blames by) {
        Optional<Prices> then = old.prices(placed.build());
        Optional<Prices> since = now.prices(placed.build());
        return then.isPresent() && since.isPresent() ? by.figures.cost(placed, then.get(), since.get())
                : placed.build().access().map(profile -> by.changes.of(new EntryName("access", profile.id()))).orElse(List.of());
    }

    private static boolean differ(Optional<BigDecimal> one, Optional<BigDecimal> other) {
        return one.isPresent() != other.isPresent() || one.isPresent() && one.get().compareTo(other.get()) != 0;
    }

    /** The limits that are crossed, as far as that can be told. */
    private List<LimitCrossing> crossings(BuildResult before, BuildResult after, FigureBlame.Placed placed, Blames by) {
        Map<String, LimitMargin> then = new HashMap<>();
        before.limits().forEach(margin -> then.put(margin.limit().id(), margin));
        List<LimitCrossing> crossings = new ArrayList<>();
        for (LimitMargin stands : after.limits()) {
            Optional<LimitMargin> stood = limits.formerly(stands.limit()).map(then::get);
            if (stands.told() && stood.map(LimitMargin::holds).orElse(true) != stands.holds()) {
                crossings.add(new LimitCrossing(stood, stands, blame(placed, stood, stands.limit(), by)));
            }
        }
        return crossings;
    }

    /** What took a build across a limit. That a limit has another id moved nothing; and where there was none, it is by its coming that it isn't kept. */
    private static List<Change> blame(FigureBlame.Placed placed, Optional<LimitMargin> stood, Limit limit, Blames by) {
        List<Change> own = by.changes.of(new EntryName("limits", limit.id()));
        if (stood.isEmpty()) {
            return own;
        }
        boolean renamed = !stood.get().limit().id().equals(limit.id());
        return by.figures.limit(placed, limit.id(), stood.get().holds(), renamed ? List.of() : own);
    }

    /** The ids in a build that one catalog has only by another name. */
    private List<RenamedUse> renamedUses(Build build) {
        SortedMap<String, List<String>> paths = new TreeMap<>();
        build.parts().forEach(entry -> {
            if (renamed.containsKey(entry.part()) || former.has(entry.part())) {
                paths.computeIfAbsent(entry.part(), unused -> new ArrayList<>()).add(entry.path());
            }
        });
        List<RenamedUse> uses = new ArrayList<>();
        String platform = build.platform().id();
        if (renamed.containsKey(platform) || former.has(platform)) {
            uses.add(use(platform, List.of()));
        }
        paths.forEach((part, where) -> uses.add(use(part, where)));
        return uses;
    }

    private List<SlotRename> renamedSlots(Placement stood) {
        Set<SlotId> used = new HashSet<>();
        stood.parts().forEach(part -> {
            int host = stood.hostOf(part);
            used.add(new SlotId(host == Placement.PLATFORM ? stood.platform() : stood.parts().get(host).part(), stood.slotOf(part).slot().slot()));
        });
        return slots.stream().filter(slot -> used.contains(new SlotId(slot.formerHost(), slot.from())) || used.contains(new SlotId(slot.host().id(), slot.from()))).toList();
    }

    private RenamedUse use(String written, List<String> paths) {
        boolean old = renamed.containsKey(written);
        return new RenamedUse(written, old ? renamed.get(written) : former.of(written), old, paths);
    }
}

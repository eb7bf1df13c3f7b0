package fettle.space.patch;

import fettle.catalog.Build;
import fettle.catalog.Catalog;
import fettle.catalog.Outfit;
import fettle.catalog.Part;
import fettle.catalog.SlotId;
import fettle.relation.Relations;
import fettle.space.BuildCheck;
import fettle.space.LimitMargin;
import fettle.space.Placement;
import fettle.space.Prices;
import fettle.space.Space;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.concurrent.ConcurrentHashMap;

/**
 * Chooses the nearest repair of a broken build: the fewest changed paths; of those the one that does most by following a rename, then the one most like
 * the build (see {@link Likeness}), then the one that breaks the fewest limits of severity error, then the one with which the fewest parts can't be had, then the one with which the others cost least, then the first
 * in the order of its paths and parts.
 */
final class Repairs {

    /** Nobody wants a repair that changes more than this: it would be another build. */
    static final int MOST_CHANGES = 8;

    /** The part of the work that may go into a second repair. */
    private static final int LITTLE = 12;

    private final Catalog old;
    private final Relations now;
    private final BuildCheck check;
    private final Map<String, String> renames;
    private final Collection<SlotRename> slots;
    private final int most;
    private final Map<String, Boolean> empty = new ConcurrentHashMap<>();

    /** One repair with what it is chosen by. */
    private record Weighed(Arrangement arrangement, Repair repair, int renamed, Likeness likeness, Outlay outlay, List<String> order) {}

    private static final Comparator<Weighed> LIKEST = Comparator.comparingInt(Weighed::renamed).reversed().thenComparing(Weighed::likeness);
    private static final Comparator<Weighed> CHEAPEST = Comparator.comparing(Weighed::outlay).thenComparing(weighed -> String.join("\n", weighed.order));

    /**
     * @param old the catalog in which builds were valid
     * @param renames the ids that probably changed, old to new, platforms among them
     * @param slots the slots that probably go by other ids now
     * @param most how many arrangements may be looked at for one build
     */
    Repairs(Catalog old, Relations now, BuildCheck check, Map<String, String> renames, Collection<SlotRename> slots, int most) {
        this.old = old;
        this.now = now;
        this.check = check;
        this.renames = renames;
        this.slots = List.copyOf(slots);
        this.most = most;
    }

    /** The nearest repair of a build that was valid as placed in the old catalog. */
    RepairOutcome nearest(Build build, Placement before) {
        return search(build, before, Map.of(), most, MOST_CHANGES);
    }

    /**
     * The nearest repair that has all parts of the build which there still are, by whatever id; empty where another one throws none of them out, or
     * where little work does not suffice to find one that is hardly larger.
     */
    Optional<Repair> keeping(Build build, Placement before, Repair other) {
        Map<String, Integer> out = new TreeMap<>();
        for (PathChange step : other.steps()) {
            step.from().map(this::current).ifPresent(id -> out.merge(id, 1, Integer::sum));
            step.to().ifPresent(id -> out.merge(id, -1, Integer::sum));
        }
        Map<String, Integer> kept = new TreeMap<>();
        Arrangement.of(before).seats().values().stream().map(this::current).filter(now.catalog().parts()::containsKey)
                .forEach(id -> kept.merge(id, 1, Integer::sum));
        if (kept.keySet().stream().noneMatch(id -> out.getOrDefault(id, 0) > 0)) {
            return Optional.empty();
        }
        RepairOutcome outcome = search(build, before, kept, most / LITTLE, other.steps().size() + 1);
        return outcome instanceof RepairOutcome.Found found ? Optional.of(found.repair()) : Optional.empty();
    }

    private String current(String id) {
        return now.catalog().host(id).isPresent() ? id : renames.getOrDefault(id, id);
    }

    private RepairOutcome search(Build build, Placement before, Map<String, Integer> kept, int work, int changes) {
        String platform = current(before.platform());
        if (!now.catalog().platforms().containsKey(platform)) {
            return new RepairOutcome.None(Optional.empty());
        }
        MovedSlots moved = MovedSlots.of(before, slots);
        RepairSearch.Outcome outcome = new RepairSearch(now, check, platform, moved.start(), kept, work, changes).search();
        if (!moved.paths().isEmpty() && outcome.changes() > 0) {
            // Other parts may have slots by the old ids, so that leaving what is on them where it is takes fewer changes.
            MovedSlots left = MovedSlots.of(before, List.of());
            RepairSearch.Outcome other = new RepairSearch(now, check, platform, left.start(), kept, work, changes).search();
            if (other.found() && (!outcome.found() || other.changes() < outcome.changes())) {
                moved = left;
                outcome = other;
            }
        }
        return of(build, before, platform, moved, outcome);
    }

    /** The best of what a search found. */
    private RepairOutcome of(Build build, Placement before, String platform, MovedSlots moved, RepairSearch.Outcome outcome) {
        int more = platform.equals(before.platform()) ? 0 : 1;
        if (!outcome.finished()) {
            return isVoid(platform) ? new RepairOutcome.None(Optional.of(platform)) : new RepairOutcome.CutShort(outcome.changes() + more);
        }
        if (outcome.arrangements().isEmpty()) {
            return new RepairOutcome.None(isVoid(platform) ? Optional.of(platform) : Optional.empty());
        }
        Set<String> different = new HashSet<>();
        outcome.arrangements().forEach(arrangement -> different.add(arrangement.canonical()));
        List<Weighed> all = outcome.arrangements().stream().map(arrangement -> weighed(build, before, platform, moved, arrangement, different.size() - 1)).toList();
        Weighed like = all.stream().min(LIKEST).orElseThrow();
        Weighed best = all.stream()
                .filter(each -> LIKEST.compare(each, like) == 0)
                .min(Comparator.<Weighed>comparingLong(each -> outside(build, platform, each.arrangement).stream().filter(margin -> margin.limit().grave()).count()).thenComparing(CHEAPEST))
                .orElseThrow();
        return new RepairOutcome.Found(withMoves(best, build, platform, moved));
    }

    /** Whether nothing can be built on it, which a search for repairs may take long to find out. */
    private boolean isVoid(String platform) {
        return empty.computeIfAbsent(platform, id -> Space.of(now).folded(id).isVoid());
    }

    /** The repair with a step for each part that stays but cannot keep the notch that the build gives it. */
    private Repair withMoves(Weighed best, Build build, String platform, MovedSlots moved) {
        RepairPaths paths = new RepairPaths(now, platform, moved, best.arrangement);
        Map<String, Integer> kept = new TreeMap<>();
        List<PathChange> steps = new ArrayList<>(best.repair.steps());
        moved.notches().forEach((seat, notch) -> {
            Optional<String> part = best.arrangement.at(seat);
            if (part.isPresent() && part.equals(moved.start().at(seat))) {
                Map<String, Integer> more = new TreeMap<>(kept);
                more.put(seat, notch);
                if (check.violations(Placement.of(now, platform, best.arrangement.entries(more))).isEmpty()) {
                    kept.put(seat, notch);
                } else {
                    steps.add(new PathChange(paths.of(seat), part, part, false));
                }
            }
        });
        steps.sort(Comparator.naturalOrder());
        return new Repair(steps, best.repair.cost(), outside(build, platform, best.arrangement).stream().map(margin -> margin.limit().id()).toList(),
                paths.rewritten(), paths.movedUp(), best.repair.others());
    }

    /** The limits that parts on a platform don't keep, with the build's outfit worn. */
    private List<LimitMargin> outside(Build build, String platform, Arrangement arrangement) {
        Catalog catalog = now.catalog();
        List<Part> parts = arrangement.seats().values().stream().map(catalog.parts()::get).toList();
        Optional<Outfit> outfit = build.outfit().flatMap(worn -> Optional.ofNullable(catalog.outfits().get(worn.id())));
        return check.limits(catalog.platforms().get(platform), parts, outfit).stream().filter(margin -> !margin.holds()).toList();
    }

    private Weighed weighed(Build build, Placement before, String platform, MovedSlots moved, Arrangement arrangement, int others) {
        Arrangement start = moved.start();
        RepairPaths paths = new RepairPaths(now, platform, moved, arrangement);
        List<PathChange> steps = new ArrayList<>();
        if (!platform.equals(before.platform())) {
            steps.add(new PathChange(PathChange.PLATFORM, Optional.of(before.platform()), Optional.of(platform), true));
        }
        Set<String> seats = new TreeSet<>(start.seats().keySet());
        seats.addAll(arrangement.seats().keySet());
        for (String seat : seats) {
            Optional<String> from = start.at(seat);
            Optional<String> to = arrangement.at(seat);
            if (!from.equals(to)) {
                boolean renamed = to.isPresent() && to.equals(from.map(renames::get));
                steps.add(new PathChange(paths.of(seat), from, to, renamed));
            }
        }
        steps.sort(Comparator.naturalOrder());
        List<String> order = arrangement.seats().entrySet().stream().map(seat -> seat.getKey() + "=" + seat.getValue()).sorted().toList();
        int renamed = (int) steps.stream().filter(PathChange::renamed).count();
        Optional<Prices> prices = check.prices(build);
        Set<String> owned = new HashSet<>();
        build.owned().forEach(part -> owned.add(current(part.id())));
        Optional<Outlay> outlay = prices.map(open -> Outlay.of(arrangement.seats().values(), owned, open));
        Likeness likeness = Likeness.of(start.seats().values(), old, arrangement.seats().values(), now.catalog(), this::current);
        return new Weighed(
                arrangement, new Repair(steps, outlay.flatMap(Outlay::whole), List.of(), List.of(), List.of(), others), renamed, likeness, outlay.orElse(Outlay.UNKNOWN), order);
    }
}

package fettle.space.patch;

import fettle.catalog.Fact;
import fettle.catalog.Part;
import fettle.catalog.SlotId;
import fettle.document.Origin;
import fettle.relation.Fit;
import fettle.relation.Relations;
import fettle.space.Change;
import fettle.space.EntryName;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * The fits that were lost and gained between two catalogs, and which differences caused each. Slots whose parts are the same on both sides are
 * compared once for all.
 */
public final class FitChanges {

    /** What groups share: the same thing done by the same words, whatever entry it was done to. */
    private record Cause(boolean entries, List<String> what, List<String> by) {}

    private record Lists(List<String> before, List<String> after) {}

    private static final class Gathering {
        private final SortedSet<Change> causes = new TreeSet<>();
        private final List<FitShift> fits = new ArrayList<>();
    }

    private final Relations before;
    private final Relations after;
    private final CatalogChanges changes;
    private final boolean lost;
    private final Map<Cause, Gathering> gathered = new HashMap<>();

    private FitChanges(Relations before, Relations after, CatalogChanges changes, boolean lost) {
        this.before = before;
        this.after = after;
        this.changes = changes;
        this.lost = lost;
    }

    /** The fits of the old catalog that the new one has not, by cause. */
    public static List<FitGroup> lost(Relations old, Relations now, CatalogChanges changes) {
        return new FitChanges(old, now, changes, true).groups();
    }

    /** The fits of the new catalog that the old one had not, by cause. */
    public static List<FitGroup> gained(Relations old, Relations now, CatalogChanges changes) {
        return new FitChanges(now, old, changes, false).groups();
    }

    private List<FitGroup> groups() {
        Map<Lists, List<String>> compared = new HashMap<>();
        for (Map<String, Part> hosts : List.of(before.catalog().platforms(), before.catalog().parts())) {
            for (String host : hosts.keySet()) {
                for (SlotId slot : before.slots(host)) {
                    List<String> parts = before.candidates(slot);
                    List<String> still = after.slot(slot).isPresent() ? after.candidates(slot) : List.of();
                    compared.computeIfAbsent(new Lists(parts, still), FitChanges::missing).forEach(part -> add(new FitShift(slot, part)));
                }
            }
        }
        return gathered.entrySet().stream()
                .map(entry -> new FitGroup(
                        lost, entry.getKey().entries, entry.getKey().by, List.copyOf(entry.getValue().causes), entry.getValue().fits.stream().sorted().toList()))
                .sorted(Comparator.comparing((FitGroup group) -> group.fits().size()).reversed().thenComparing(group -> group.fits().get(0)))
                .toList();
    }

    private static List<String> missing(Lists lists) {
        Set<String> still = Set.copyOf(lists.after);
        return lists.before.stream().filter(part -> !still.contains(part)).toList();
    }

    private void add(FitShift shift) {
        Set<Change> causes = new LinkedHashSet<>();
        SortedSet<String> by = new TreeSet<>();
        boolean entries = absent(shift, causes);
        if (!entries) {
            ways(shift, causes, by);
        }
        List<String> what = causes.stream().map(change -> entries ? change.entry().subject() + " " + change.what() : kind(change)).sorted().distinct().toList();
        Gathering gathering = gathered.computeIfAbsent(new Cause(entries, what, List.copyOf(by)), unused -> new Gathering());
        gathering.causes.addAll(causes);
        gathering.fits.add(shift);
    }

    /** The property, on any slot of any entry. */
    private static String kind(Change change) {
        List<String> path = new ArrayList<>(change.path());
        if (path.size() > 1 && path.get(0).equals("slots")) {
            path.set(1, "*");
        }
        return String.join(".", path);
    }

    /** Case: the part, or else the host or the slot, is not there at all on the other side. */
    private boolean absent(FitShift shift, Set<Change> causes) {
        changes.whole(EntryName.part(shift.part())).ifPresent(causes::add);
        if (!causes.isEmpty()) {
            return true;
        }
        for (EntryName host : hosts(shift.slot().host())) {
            changes.of(host).stream()
                    .filter(change -> change.whole() || change.path().equals(List.of("slots", shift.slot().slot())))
                    .forEach(causes::add);
        }
        return !causes.isEmpty();
    }

    private static List<EntryName> hosts(String id) {
        return List.of(EntryName.part(id), EntryName.platform(id));
    }

    /** Case: both are there on both sides, and something that they had in common went, or a name came that keeps them apart. */
    private void ways(FitShift shift, Set<Change> causes, SortedSet<String> by) {
        SlotId slot = shift.slot();
        String part = shift.part();
        for (Fit way : before.ways(slot, part)) {
            List<Fact> had = before.because(slot, part, way);
            List<Fact> has = after.because(slot, part, way);
            had.stream().filter(fact -> lacks(has, fact)).forEach(fact -> {
                by.add(way.by());
                causes.addAll(covering(shift, fact.origin(), true));
            });
        }
        for (String name : after.refusals(slot, part)) {
            if (!before.refusals(slot, part).contains(name)) {
                List<Fact> had = before.refusing(slot, part, name);
                after.refusing(slot, part, name).stream().filter(fact -> lacks(had, fact)).forEach(fact -> {
                    by.add(name);
                    causes.addAll(covering(shift, fact.origin(), false));
                });
            }
        }
        if (causes.isEmpty()) {
            touching(shift).forEach(causes::add);
        }
    }

    private static boolean lacks(List<Fact> facts, Fact fact) {
        return facts.stream().noneMatch(other -> other.getClass() == fact.getClass());
    }

    /** The differences of the part and the host that cover a statement made here. */
    private List<Change> covering(FitShift shift, Origin statement, boolean onThisSide) {
        return touching(shift).stream()
                .filter(change -> {
                    Optional<Origin> place = onThisSide == lost ? change.before() : change.after();
                    return place.isPresent() && place.get().file().equals(statement.file()) && inside(place.get().pointer(), statement.pointer());
                })
                .toList();
    }

    private static boolean inside(String outer, String inner) {
        return inner.equals(outer) || inner.startsWith(outer + "/");
    }

    private List<Change> touching(FitShift shift) {
        List<Change> touching = new ArrayList<>(changes.of(EntryName.part(shift.part())));
        hosts(shift.slot().host()).forEach(host -> changes.of(host).stream()
                .filter(change -> change.path().size() > 1 && change.path().subList(0, 2).equals(List.of("slots", shift.slot().slot())))
                .forEach(touching::add));
        return touching;
    }
}

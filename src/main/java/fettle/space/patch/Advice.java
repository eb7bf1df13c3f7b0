package fettle.space.patch;

import fettle.catalog.Build;
import fettle.catalog.BuildEntry;
import fettle.catalog.SlotId;
import fettle.relation.Relations;
import fettle.space.Assembly;
import fettle.space.Landscape;
import fettle.space.Space;
import fettle.space.Undecided;
import fettle.space.worth.Comparison;
import fettle.space.worth.PartWorth;
import fettle.space.worth.SlotWorth;
import fettle.space.worth.Verdict;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.concurrent.CompletableFuture;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Which parts have become, or are no longer, dominated in slots that take them before and after, whatever they cost or for their price, all offers open.
 *
 * @param shifts in order
 * @param open by platform and part, what could not be decided on one side or the other
 */
public record Advice(List<AdviceShift> shifts, SortedMap<String, SortedMap<String, Undecided>> open) {

    /** How many platforms the builds may use before their advice takes longer than a run should that was not asked for it. */
    private static final int MOST_PLATFORMS = 24;

    /** For which parts it is looked into. */
    public enum Scope {
        /** None. */
        NONE,
        /** Those that builds use, on the platforms of these builds. */
        BUILDS,
        /** All, on all platforms. */
        ALL
    }

    private record Seat(String platform, SlotId slot, String part) implements Comparable<Seat> {

        @Override
        public int compareTo(Seat other) {
            return toString().compareTo(other.toString());
        }
    }

    public Advice {
        shifts = List.copyOf(shifts);
    }

    /** What changed between two catalogs; empty where it was not looked into, which is another thing than that nothing changed. */
    public static Optional<Advice> between(Relations old, Relations now, List<Build> builds, Scope scope) {
        SortedSet<String> platforms = new TreeSet<>(old.catalog().platforms().keySet());
        SortedSet<String> parts = new TreeSet<>(old.catalog().parts().keySet());
        if (scope == Scope.BUILDS) {
            platforms.retainAll(builds.stream().map(build -> build.platform().id()).collect(Collectors.toSet()));
            parts.retainAll(builds.stream().flatMap(build -> build.parts().stream()).map(BuildEntry::part).collect(Collectors.toSet()));
        }
        platforms.retainAll(now.catalog().platforms().keySet());
        parts.retainAll(now.catalog().parts().keySet());
        if (scope == Scope.NONE || scope == Scope.BUILDS && (builds.isEmpty() || platforms.size() > MOST_PLATFORMS)) {
            return Optional.empty();
        }
        CompletableFuture<SortedMap<Seat, PartWorth>> before = CompletableFuture.supplyAsync(() -> standing(old, platforms, parts));
        SortedMap<Seat, PartWorth> since = standing(now, platforms, parts);
        return Optional.of(of(before.join(), since));
    }

    private static SortedMap<Seat, PartWorth> standing(Relations relations, Collection<String> platforms, Set<String> parts) {
        Landscape landscape = Space.of(relations).landscape(platforms);
        Comparison comparison = new Comparison(landscape, Optional.empty());
        SortedMap<Seat, PartWorth> standing = new TreeMap<>();
        for (String platform : landscape.platforms()) {
            for (SlotWorth slot : comparison.holding(platform, parts)) {
                slot.parts().forEach((part, worth) -> {
                    if (parts.contains(part)) {
                        standing.put(new Seat(platform, slot.slot(), part), worth);
                    }
                });
            }
        }
        return standing;
    }

    private static Advice of(SortedMap<Seat, PartWorth> before, SortedMap<Seat, PartWorth> since) {
        List<AdviceShift> shifts = new ArrayList<>();
        SortedMap<String, SortedMap<String, Undecided>> open = new TreeMap<>();
        before.forEach((seat, then) -> Optional.ofNullable(since.get(seat)).ifPresent(now -> {
            Optional<Undecided> undecided = undecided(then).or(() -> undecided(now));
            if (undecided.isPresent()) {
                open.computeIfAbsent(seat.platform, unused -> new TreeMap<>()).putIfAbsent(seat.part, undecided.get());
            } else if (then.dominated().isPresent() != now.dominated().isPresent()) {
                boolean newly = now.dominated().isPresent();
                Optional<Assembly> standing = newly ? standing(now, then) : standing(then, now);
                shifts.add(new AdviceShift(
                        seat.platform, seat.slot.host(), seat.slot.slot(), seat.part, newly, now.dominated().or(then::dominated).orElseThrow(), standing));
            }
        }));
        shifts.sort(null);
        return new Advice(shifts, open);
    }

    /** What stood its ground on one side in the way in which it is dominated on the other. */
    private static Optional<Assembly> standing(PartWorth dominated, PartWorth standing) {
        Verdict verdict = dominated.ignoringCost() instanceof Verdict.Dominated ? standing.ignoringCost() : standing.withCost();
        return verdict instanceof Verdict.Undominated found ? Optional.of(found.best()) : Optional.empty();
    }

    /** Why it is not known whether a part is dominated in either way; nothing where one way shows that it is. */
    private static Optional<Undecided> undecided(PartWorth worth) {
        if (worth.dominated().isPresent()) {
            return Optional.empty();
        }
        return Stream.of(worth.ignoringCost(), worth.withCost()).filter(Verdict.Open.class::isInstance).map(verdict -> ((Verdict.Open) verdict).undecided()).findFirst();
    }
}

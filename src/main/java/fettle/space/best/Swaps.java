package fettle.space.best;

import fettle.catalog.Build;
import fettle.catalog.BuildEntry;
import fettle.document.DeepStack;
import fettle.relation.Relations;
import fettle.space.BuildCheck;
import fettle.space.BuildResult;
import fettle.space.Fraction;
import fettle.space.Occurrence;
import fettle.space.Placement;
import java.math.BigDecimal;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeSet;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Finds the swaps at each place of a build that give a valid build: nothing, each part that fits, and chains of parts, with what hung on the old
 * assembly hung on the new one where it fits, and what the new parts require filled with the cheapest that fits.
 */
public final class Swaps {

    /**
     * What may be swapped.
     *
     * @param prospects the most gain first, then the lowest price
     * @param bounded places at which not every chain was thought of, since there are too many
     */
    public record Thought(List<Prospect> prospects, List<String> bounded) {
        public Thought {
            prospects = List.copyOf(prospects);
            bounded = List.copyOf(bounded);
        }

        /** Those that give a valid build, of those that are worth trying. They know next to nothing of each other, so that each can be tried beside the others. */
        Found tried(Predicate<Prospect> worthIt) {
            List<Optional<Swap>> tried = DeepStack.each(prospects.stream().filter(worthIt).toList(), Prospect::tried);
            return new Found(tried.stream().flatMap(Optional::stream).toList(), bounded);
        }
    }

    /**
     * The swaps found.
     *
     * @param swaps the most gain first, then the lowest price
     * @param bounded places at which not every chain was tried, since there are too many
     */
    public record Found(List<Swap> swaps, List<String> bounded) {
        public Found {
            swaps = List.copyOf(swaps);
            bounded = List.copyOf(bounded);
        }
    }

    private final Relations relations;
    private final BuildCheck check;
    private final Weighing weighing;
    private final Shopping shopping;
    private final BuildResult result;
    private final List<BuildEntry> unplaced;
    private final Build build;
    private final Placement placement;
    private final List<String> was;
    private final Set<String> rolesBefore;
    private final BigDecimal before;

    private Swaps(Relations relations, BuildCheck check, Weighing weighing, Shopping shopping, BuildResult result) {
        this.relations = relations;
        this.check = check;
        this.weighing = weighing;
        this.shopping = shopping;
        this.result = result;
        this.placement = result.placement().orElseThrow();
        this.unplaced = unplaced(result);
        this.build = rebuilt(result.build(), Stream.concat(placement.entries().stream(), unplaced.stream()).toList());
        this.was = placement.parts().stream().map(Occurrence::part).toList();
        this.rolesBefore = roles(was);
        this.before = weighing.benefit(result.totals());
    }

    /** The swaps of a build, before any is tried. */
    public static Thought thought(Relations relations, BuildCheck check, Weighing weighing, Shopping shopping, BuildResult result) {
        return new Swaps(relations, check, weighing, shopping, result).thought(Optional.empty());
    }

    /**
     * The swaps of a build.
     *
     * @param other the part at each path of a valid build, what it has at some place being thought of too
     */
    static Found of(Relations relations, BuildCheck check, Weighing weighing, Shopping shopping, BuildResult result, Optional<SortedMap<String, String>> other) {
        return new Swaps(relations, check, weighing, shopping, result).thought(other).tried(prospect -> true);
    }

    /** The same without those that gain less than so much, which is far less work where few gain as much. */
    static Found gaining(BigDecimal least, Relations relations, BuildCheck check, Weighing weighing, Shopping shopping, BuildResult result,
            Optional<SortedMap<String, String>> other) {
        return new Swaps(relations, check, weighing, shopping, result).thought(other).tried(prospect -> prospect.gain().compareTo(least) >= 0);
    }

    private Thought thought(Optional<SortedMap<String, String>> other) {
        List<SwapPlace> places = SwapPlace.of(relations, shopping, build, placement);
        List<SwapTrial> chains = DeepStack.each(places, SwapPlace::enumerate).stream().flatMap(List::stream).toList();
        Map<SwapTrial, Optional<Prospect>> hoped = new LinkedHashMap<>();
        hope(chains, hoped);
        hope(places.stream().flatMap(place -> place.combined(hoped).stream()).toList(), hoped);
        // What falls off may be worth less than it costs, or be what stands in the way.
        hope(places.stream().flatMap(place -> place.bare().stream()).toList(), hoped);
        hope(places.stream().flatMap(place -> other.stream().flatMap(parts -> place.asIn(parts).stream())).toList(), hoped);
        List<Prospect> prospects = hoped.values().stream().flatMap(Optional::stream).sorted(Prospect.BEST_FIRST).toList();
        return new Thought(prospects, places.stream().filter(SwapPlace::bounded).map(SwapPlace::path).toList());
    }

    private void hope(List<SwapTrial> trials, Map<SwapTrial, Optional<Prospect>> hoped) {
        List<Optional<Prospect>> found = DeepStack.each(trials, this::prospect);
        for (int i = 0; i < trials.size(); i++) {
            hoped.put(trials.get(i), found.get(i));
        }
    }

    /** What a trial would come to; empty where some of it is unobtainable, or something stays in the build that can't be placed. */
    private Optional<Prospect> prospect(SwapTrial trial) {
        Build after = rebuilt(build, trial.place().with(trial.assembly()));
        if (after.parts().stream().anyMatch(unplaced::contains)) {
            return Optional.empty();
        }
        SortedMap<String, BigDecimal> totals = check.totals(after);
        BigDecimal benefit = weighing.benefit(totals);
        List<String> is = after.parts().stream().map(BuildEntry::part).toList();
        return shopping.between(was, is).map(buy -> new Prospect(trial.place().path(), trial.place().from(), trial.to(), totals, benefit, benefit.subtract(before), buy,
                trial.carried().paths(), trial.lost(), rolesLost(is), rolesElsewhere(trial, is), prospect -> tried(prospect, trial, after)));
    }

    /** Builds that differ in nothing but notches are the same, so that notches are left out where a swap needs that. */
    private Optional<Swap> tried(Prospect prospect, SwapTrial trial, Build asStated) {
        SwapPlace place = trial.place();
        List<String> stated = place.stated(trial);
        if (stated.isEmpty()) {
            return swap(prospect, asStated, List.of());
        }
        Optional<Swap> free = swap(prospect, rebuilt(build, place.without(true, trial)), stated);
        return free.isEmpty() ? free : swap(prospect, asStated, List.of())
                .or(() -> place.own(trial).isEmpty() ? Optional.empty() : swap(prospect, rebuilt(build, place.without(false, trial)), place.own(trial)))
                .or(() -> free);
    }

    private Optional<Swap> swap(Prospect prospect, Build after, List<String> notchesDropped) {
        return check.checkValid(after).map(result -> new Swap(prospect, result, broken(result), notchesDropped));
    }

    private List<String> rolesLost(List<String> after) {
        if (rolesBefore.isEmpty()) {
            return List.of();
        }
        Set<String> lost = new TreeSet<>(rolesBefore);
        after.forEach(part -> role(part).ifPresent(lost::remove));
        return List.copyOf(lost);
    }

    private List<String> rolesElsewhere(SwapTrial trial, List<String> after) {
        if (rolesBefore.isEmpty()) {
            return List.of();
        }
        Set<String> elsewhere = roles(trial.place().from().values());
        elsewhere.removeAll(roles(trial.to().values()));
        if (!elsewhere.isEmpty()) {
            elsewhere.retainAll(roles(after));
        }
        return List.copyOf(elsewhere);
    }

    private Set<String> roles(Collection<String> parts) {
        Set<String> roles = new TreeSet<>();
        parts.forEach(part -> role(part).ifPresent(roles::add));
        return roles;
    }

    private Optional<String> role(String part) {
        return Optional.ofNullable(relations.catalog().parts().get(part)).flatMap(relations.catalog()::roleOf);
    }

    /** The limits that are exceeded then, and by less or not at all now. */
    private List<String> broken(BuildResult after) {
        Map<String, Fraction> excess = new HashMap<>();
        result.limits().stream().filter(limit -> !limit.holds()).forEach(limit -> excess.put(limit.limit().id(), limit.excess()));
        return after.limits().stream().filter(limit -> !limit.holds())
                .filter(limit -> !excess.containsKey(limit.limit().id()) || limit.excess().compareTo(excess.get(limit.limit().id())) > 0)
                .map(limit -> limit.limit().id()).toList();
    }

    /** The entries of a build that could not be placed, and those on them. */
    static List<BuildEntry> unplaced(BuildResult result) {
        Set<BuildEntry> placed = result.placement().orElseThrow().parts().stream().map(Occurrence::entry).collect(Collectors.toSet());
        return result.build().parts().stream().filter(entry -> !placed.contains(entry)).toList();
    }

    /** A build with other parts. */
    static Build rebuilt(Build build, List<BuildEntry> parts) {
        return new Build(build.id(), build.label(), build.platform(), build.patch(), List.copyOf(parts), build.loaded(), build.outfit(), build.access(),
                build.owned(), build.budget(), build.lens(), build.origin());
    }
}

package fettle.space.best;

import fettle.catalog.Build;
import fettle.catalog.Catalog;
import fettle.catalog.Lens;
import fettle.catalog.Outfit;
import fettle.catalog.Part;
import fettle.relation.Relations;
import fettle.space.BuildCheck;
import fettle.space.BuildResult;
import fettle.space.LimitMargin;
import fettle.space.Occurrence;
import fettle.space.Placement;
import fettle.space.Space;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Looks builds over: what single swaps would do, and what the best build is. */
public final class Improving {

    private static final Pattern SLOT = Pattern.compile(":\\d{1,9}$");

    private final Relations relations;
    private final Catalog catalog;
    private final BuildCheck check;

    public Improving(Relations relations) {
        this.relations = relations;
        this.catalog = relations.catalog();
        this.check = new BuildCheck(relations);
    }

    /**
     * Looks one build over, whose platform and access profile the catalog has, for what it asks: its budget, access profile, outfit and owned parts.
     *
     * @param keep paths whose part stays in the best build
     * @param steps how many swaps to make one after the other
     * @param forBest how long to seek the best build
     * @param forSteps how long to try sequences of swaps
     * @throws NothingKept where a path to keep holds nothing
     */
    public Improvement of(Build build, Lens lens, Set<String> keep, int steps, Effort forBest, Effort forSteps) {
        BuildResult before = check.check(build);
        Weighing weighing = new Weighing(catalog, lens, outfit(build));
        Outcome sought = new Optimum(relations, Space.of(relations).folded(build.platform().id())).seek(demands(before, lens, keep), forBest);
        Optional<Arrangement> goal = sought instanceof Outcome.Found found ? Optional.of(found.build()) : Optional.empty();
        Swaps.Found swaps = swaps(before, weighing, goal);
        Steps made = new Upgrading(before, (after, least) -> least.map(enough -> swaps(after, weighing, goal, enough)).orElseGet(() -> swaps(after, weighing, goal)))
                .steps(swaps, steps, forSteps);
        Stream<BuildResult> met = Stream.of(Stream.of(before), swaps.swaps().stream().map(Swap::after), made.swaps().stream().map(Swap::after)).flatMap(some -> some);
        Outcome outcome = orMet(sought, weighing, before, met.filter(each -> allAsked(each, before, keep)).toList());
        Optional<Change> best = outcome instanceof Outcome.Found found ? Optional.of(change(before, weighing, found)) : Optional.empty();
        return new Improvement(before, weighing, weighing.benefit(before.totals()), swaps, outcome, best, made, forBest.allowed(), worn(before, best));
    }

    /** Where the time was over, the build as it is, or one that swaps make of it, may be the best met that does all that is asked. */
    private Outcome orMet(Outcome sought, Weighing weighing, BuildResult before, List<BuildResult> met) {
        Optional<BigDecimal> bound = sought instanceof Outcome.CutShort cut ? cut.bound()
                : sought instanceof Outcome.Found found && !found.proved() ? Optional.of(found.bound()) : Optional.empty();
        Optional<BuildResult> best = met.stream().min(Comparator.comparing((BuildResult each) -> weighing.benefit(each.totals())).reversed().thenComparing(each -> each.cost().orElseThrow()));
        if (bound.isEmpty() || best.isEmpty()) {
            return sought;
        }
        BigDecimal benefit = weighing.benefit(best.get().totals());
        if (sought instanceof Outcome.Found found && found.benefit().compareTo(benefit) >= 0) {
            return sought;
        }
        SortedMap<String, String> was = parts(before);
        SortedMap<String, String> is = parts(best.get());
        long changed = Stream.concat(was.keySet().stream(), is.keySet().stream()).distinct().filter(path -> !Objects.equals(was.get(path), is.get(path))).count();
        return new Outcome.Found(Arrangement.of(relations, best.get().placement().orElseThrow()), benefit, best.get().cost().orElseThrow(), changed, false, bound.get().max(benefit));
    }

    /** Whether a build does all that is asked of the best. */
    private static boolean allAsked(BuildResult build, BuildResult before, Set<String> keep) {
        SortedMap<String, String> was = parts(before);
        SortedMap<String, String> is = parts(build);
        return build.valid() && build.limits().stream().allMatch(LimitMargin::holds)
                && build.cost().filter(cost -> build.build().budget().map(budget -> cost.compareTo(budget) <= 0).orElse(true)).isPresent()
                && keep.stream().allMatch(path -> was.get(path).equals(is.get(path)));
    }

    private static SortedMap<String, String> parts(BuildResult build) {
        return build.placement().orElseThrow().partsByPath();
    }

    /**
     * The single swaps of a build whose platform and access profile the catalog has.
     *
     * @param best a build of which what it has at some place is thought of too
     */
    Swaps.Found swaps(BuildResult before, Weighing weighing, Optional<Arrangement> best) {
        return Swaps.of(relations, check, weighing, shopping(before.build()), before, parts(before, best));
    }

    private Swaps.Found swaps(BuildResult after, Weighing weighing, Optional<Arrangement> best, BigDecimal least) {
        return Swaps.gaining(least, relations, check, weighing, shopping(after.build()), after, parts(after, best));
    }

    private Optional<SortedMap<String, String>> parts(BuildResult build, Optional<Arrangement> best) {
        return best.map(other -> other.pathsBeside(Arrangement.of(relations, build.placement().orElseThrow())));
    }

    private Optional<Outfit> outfit(Build build) {
        return build.outfit().map(worn -> catalog.outfits().get(worn.id()));
    }

    private Shopping shopping(Build build) {
        Set<String> owned = new HashSet<>();
        build.owned().forEach(part -> owned.add(part.id()));
        return new Shopping(check.prices(build).orElseThrow(), owned);
    }

    private Demands demands(BuildResult before, Lens lens, Set<String> keep) {
        Build build = before.build();
        Shopping shopping = shopping(build);
        return new Demands(Optional.of(lens), Optional.of(shopping.prices()), build.budget(), outfit(build), shopping.owned(), build.loaded(),
                before.placement(), keep, List.copyOf(catalog.limits().values()));
    }

    private Change change(BuildResult before, Weighing weighing, Outcome.Found found) {
        Build build = before.build();
        BuildResult after = check.check(Swaps.rebuilt(build, found.build().entries(build.origin())));
        Placement placement = before.placement().orElseThrow();
        Part platform = catalog.platforms().get(placement.platform());
        Arrangement now = Arrangement.of(relations, placement);
        SortedMap<String, String> then = found.build().pathsBeside(now);
        List<Share> shares = Shares.of(Shares.of(weighing, platform, build.loaded(), now.pathsBeside(now), then), Swaps.unplaced(before));
        Optional<List<Purchase>> buy = shopping(build).between(placement.parts().stream().map(Occurrence::part).toList(), found.build().placed());
        return new Change(after, shares, buy, Shopping.price(buy.orElse(List.of())), notchesDropped(build, placement, shares, then));
    }

    /** The stated notches that must be left out to make a build into another: none, those in the slots that change, or all of those that are still stated. */
    private List<String> notchesDropped(Build build, Placement placement, List<Share> shares, SortedMap<String, String> then) {
        SortedMap<String, Occurrence> stated = new TreeMap<>();
        placement.parts().stream().filter(part -> part.at().isPresent() && then.containsKey(part.path())).forEach(part -> stated.put(part.path(), part));
        Set<String> slots = shares.stream().map(share -> SLOT.matcher(share.path()).replaceFirst("")).collect(Collectors.toSet());
        List<String> touched = stated.values().stream().filter(part -> slots.contains(placement.slotOf(part).path())
                || shares.stream().anyMatch(share -> part.path().startsWith(share.path() + "/"))).map(Occurrence::path).toList();
        return Stream.of(List.<String>of(), touched).filter(dropped -> check.checkValid(Swaps.rebuilt(build, Arrangement.entries(then,
                path -> dropped.contains(path) || !stated.containsKey(path) ? OptionalInt.empty() : stated.get(path).at(), build.origin()))).isPresent())
                .findFirst().orElseGet(() -> List.copyOf(stated.keySet()));
    }

    private List<Improvement.Worn> worn(BuildResult before, Optional<Change> best) {
        List<Improvement.Worn> worn = new ArrayList<>();
        worn.add(worn("", Optional.empty(), before, best));
        catalog.outfits().values().forEach(outfit -> worn.add(worn(outfit.id(), Optional.of(outfit), before, best)));
        return worn;
    }

    private Improvement.Worn worn(String name, Optional<Outfit> outfit, BuildResult before, Optional<Change> best) {
        return new Improvement.Worn(name, margins(before, outfit), best.map(change -> margins(change.after(), outfit)));
    }

    private List<LimitMargin> margins(BuildResult result, Optional<Outfit> outfit) {
        Placement placement = result.placement().orElseThrow();
        return check.limits(catalog.platforms().get(placement.platform()),
                placement.parts().stream().map(part -> catalog.parts().get(part.part())).toList(), outfit);
    }
}

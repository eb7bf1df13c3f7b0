package fettle.space.best;

import fettle.catalog.Build;
import fettle.catalog.BuildEntry;
import fettle.catalog.SlotId;
import fettle.document.DeepStack;
import fettle.relation.Relations;
import fettle.space.BuildCheck;
import fettle.space.BuildResult;
import fettle.space.LimitMargin;
import fettle.space.Occurrence;
import fettle.space.Placement;
import fettle.space.Prices;
import fettle.space.SlotUse;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Predicate;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * Finds the swaps at each place of a build that give a valid build: nothing, each part that fits, and chains of up to three parts, with what hung on the old
 * assembly hung on the new one where it fits, and what the new parts require filled with the cheapest that fits.
 */
public final class Swaps {

    /** Parts in a chain at most: an adapter, a part on it, and a third on top. */
    public static final int LONGEST = 3;

    /** The most assemblies tried at one place. */
    public static final int MOST_TRIED = 3_000;

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

    private static final Comparator<Swap> BEST_FIRST = Comparator.comparing(Swap::gain).reversed()
            .thenComparing(Swap::price).thenComparing(Swap::path).thenComparing(swap -> swap.to().toString());

    private final Relations relations;
    private final BuildCheck check;
    private final Weighing weighing;
    private final Shopping shopping;
    private final BuildResult result;
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
        this.build = result.build();
        this.placement = result.placement().orElseThrow();
        this.was = placement.parts().stream().map(Occurrence::part).toList();
        this.rolesBefore = roles(was);
        this.before = weighing.benefit(result.totals());
    }

    /** The swaps of a build whose parts could all be placed. */
    public static Found of(Relations relations, BuildCheck check, Weighing weighing, Shopping shopping, BuildResult result) {
        return new Swaps(relations, check, weighing, shopping, result).found(trial -> true);
    }

    /** The same without those that gain less than so much, which is far less work where few gain as much; some that gain less may be among them. */
    static Found gaining(BigDecimal least, Relations relations, BuildCheck check, Weighing weighing, Shopping shopping, BuildResult result) {
        return new Swaps(relations, check, weighing, shopping, result).found(trial -> trial.place.hoped(trial).compareTo(least) >= 0);
    }

    private Found found(Predicate<Trial> worthIt) {
        List<Place> places = placement.slots().stream().flatMap(use -> places(use).stream()).toList();
        List<Trial> all = DeepStack.each(places, Place::enumerate).stream().flatMap(List::stream).toList();
        List<Boolean> worth = DeepStack.each(all, worthIt::test);
        List<Trial> first = IntStream.range(0, all.size()).filter(worth::get).mapToObj(all::get).toList();
        List<Optional<Swap>> found = tried(first);
        // What can't be had with all that hung there is tried with nothing carried over.
        List<Trial> second = new ArrayList<>();
        for (int i = 0; i < first.size(); i++) {
            if (found.get(i).isEmpty()) {
                first.get(i).place.bare(first.get(i)).ifPresent(second::add);
            }
        }
        List<Swap> sound = Stream.concat(found.stream(), tried(second).stream()).flatMap(Optional::stream).sorted(BEST_FIRST).toList();
        return new Found(sound, places.stream().filter(place -> place.tried > MOST_TRIED).map(place -> place.path).toList());
    }

    /** The swaps that trials come to, empty for those that give no valid build. Trials know nothing of each other, so that each can be made beside the others. */
    private static List<Optional<Swap>> tried(List<Trial> trials) {
        return DeepStack.each(trials, trial -> trial.place.swap(trial));
    }

    private List<Place> places(SlotUse use) {
        List<Place> places = new ArrayList<>();
        int most = relations.room(use.slot()).most();
        for (int occupant : use.occupants()) {
            Occurrence there = placement.parts().get(occupant);
            places.add(new Place(use.slot(), there.path(), use.path(), there.entry().position(), Optional.of(there)));
        }
        if (use.occupants().size() < most) {
            int position = use.occupants().stream().mapToInt(each -> placement.parts().get(each).entry().position() + 1).max().orElse(0);
            places.add(new Place(use.slot(), most > 1 ? use.path() + ":" + position : use.path(), use.path(), position, Optional.empty()));
        }
        return places;
    }

    /** A part of the assembly being tried, with the path at which it stands. */
    private record Link(String part, String path) {}

    /** What is carried over from what hung on the old assembly: entries, their old paths, and the old paths of what is lost. */
    private record Carried(List<BuildEntry> entries, List<String> paths, List<String> lost) {}

    /** A chain to be tried in a place, and the whole assembly that it comes to. */
    private record Trial(Place place, List<Link> links, List<BuildEntry> chain, Carried carried, List<BuildEntry> assembly, SortedMap<String, String> to) {}

    /** One place, where one thing may be put instead of another. */
    private final class Place {

        private final SlotId slot;
        private final String path;
        private final String slotPath;
        private final int position;
        private final Optional<Occurrence> there;
        private final SortedMap<String, String> from;
        private final List<Trial> trials = new ArrayList<>();
        private final Set<SortedMap<String, String>> seen = new HashSet<>();
        private int tried;

        Place(SlotId slot, String path, String slotPath, int position, Optional<Occurrence> there) {
            this.slot = slot;
            this.path = path;
            this.slotPath = slotPath;
            this.position = position;
            this.there = there;
            this.from = relative(build.parts().stream().filter(entry -> !stays(entry)).toList());
        }

        List<Trial> enumerate() {
            if (there.isPresent()) {
                attempt(List.of(), List.of(), new Carried(List.of(), List.of(), below()));
            }
            chain(slot, slotPath, position, path, new ArrayList<>(), new ArrayList<>());
            return trials;
        }

        private void chain(SlotId into, String intoPath, int at, String here, List<Link> links, List<BuildEntry> entries) {
            for (String part : relations.candidates(into)) {
                if (tried > MOST_TRIED) {
                    return;
                }
                boolean same = links.isEmpty() && there.map(old -> old.part().equals(part)).orElse(false);
                if (same || !usable(part) || links.stream().anyMatch(link -> link.part.equals(part))) {
                    continue;
                }
                links.add(new Link(part, here));
                entries.add(entry(intoPath, at, part));
                attempt(links, entries, carried(links, entries));
                if (links.size() < LONGEST) {
                    for (SlotId next : relations.slots(part)) {
                        String nextPath = here + "/" + next.slot();
                        chain(next, nextPath, 0, relations.room(next).most() > 1 ? nextPath + ":0" : nextPath, links, entries);
                    }
                }
                links.remove(links.size() - 1);
                entries.remove(entries.size() - 1);
            }
        }

        private boolean usable(String part) {
            return shopping.obtainable(part) || placement.parts().stream().anyMatch(old -> old.part().equals(part));
        }

        private void attempt(List<Link> links, List<BuildEntry> entries, Carried carried) {
            tried++;
            fresh(List.copyOf(links), List.copyOf(entries), carried).ifPresent(trials::add);
        }

        /** A trial's chain with nothing carried over; empty where nothing was, or where it was tried already. */
        Optional<Trial> bare(Trial trial) {
            return trial.carried.paths.isEmpty() ? Optional.empty() : fresh(trial.links, trial.chain, new Carried(List.of(), List.of(), below()));
        }

        private List<BuildEntry> assembly(List<Link> links, List<BuildEntry> entries, Carried carried) {
            List<BuildEntry> assembly = new ArrayList<>(entries);
            assembly.addAll(carried.entries);
            assembly.addAll(required(links, assembly));
            return assembly;
        }

        private Optional<Trial> fresh(List<Link> links, List<BuildEntry> entries, Carried carried) {
            List<BuildEntry> assembly = assembly(links, entries, carried);
            SortedMap<String, String> to = relative(assembly);
            return seen.add(to) ? Optional.of(new Trial(this, links, entries, carried, assembly, to)) : Optional.empty();
        }

        /** The paths of what hangs directly on what is there. */
        private List<String> below() {
            return there.map(old -> placement.parts().stream().filter(part -> placement.hostOf(part) == old.index()).map(Occurrence::path).toList())
                    .orElse(List.of());
        }

        private Carried carried(List<Link> links, List<BuildEntry> entries) {
            List<BuildEntry> hung = new ArrayList<>();
            List<String> paths = new ArrayList<>();
            List<String> lost = new ArrayList<>();
            Map<String, Integer> used = new LinkedHashMap<>();
            entries.forEach(entry -> used.merge(entry.path(), 1, Integer::sum));
            for (String old : below()) {
                Occurrence part = placement.parts().stream().filter(each -> each.path().equals(old)).findFirst().orElseThrow();
                Optional<String> home = home(links, used, part);
                if (home.isEmpty()) {
                    lost.add(old);
                    continue;
                }
                int at = used.merge(home.get(), 1, Integer::sum) - 1;
                String prefix = several(links, home.get()) ? home.get() + ":" + at : home.get();
                hung.add(entry(home.get(), at, part.part()));
                for (BuildEntry entry : build.parts()) {
                    if (entry.path().startsWith(old + "/")) {
                        hung.add(new BuildEntry(prefix + entry.path().substring(old.length()), entry.position(), entry.part(), entry.at(), entry.pathOrigin(),
                                entry.origin()));
                    }
                }
                paths.add(old);
            }
            return new Carried(hung, paths, lost);
        }

        private Optional<SlotId> slotAt(List<Link> links, String where) {
            return links.stream().flatMap(link -> relations.slots(link.part).stream().filter(each -> (link.path + "/" + each.slot()).equals(where))).findFirst();
        }

        private boolean several(List<Link> links, String where) {
            return slotAt(links, where).map(found -> relations.room(found).most() > 1).orElse(false);
        }

        /** Where on the new assembly an old part can hang: in a slot of the same name before any other, further out before nearer. */
        private Optional<String> home(List<Link> links, Map<String, Integer> used, Occurrence part) {
            String name = placement.slotOf(part).slot().slot();
            List<String> homes = new ArrayList<>();
            for (int i = links.size() - 1; i >= 0; i--) {
                for (SlotId each : relations.slots(links.get(i).part)) {
                    String where = links.get(i).path + "/" + each.slot();
                    if (relations.fits(each, part.part()) && used.getOrDefault(where, 0) < relations.room(each).most()) {
                        homes.add(each.slot().equals(name) ? 0 : homes.size(), where);
                    }
                }
            }
            return homes.stream().findFirst();
        }

        /** What a trial would gain if it came to a valid build, with what is carried over or without. */
        BigDecimal hoped(Trial trial) {
            BigDecimal gain = gain(trial.assembly);
            return trial.carried.paths.isEmpty() ? gain : gain.max(gain(assembly(trial.links, trial.chain, new Carried(List.of(), List.of(), List.of()))));
        }

        private BigDecimal gain(List<BuildEntry> assembly) {
            return weighing.benefit(check.totals(with(parts(assembly)))).subtract(before);
        }

        private List<BuildEntry> parts(List<BuildEntry> assembly) {
            List<BuildEntry> parts = new ArrayList<>(build.parts().stream().filter(this::stays).toList());
            parts.addAll(assembly);
            return parts;
        }

        Optional<Swap> swap(Trial trial) {
            return check.checkValid(with(parts(trial.assembly))).flatMap(after -> swap(trial, after));
        }

        private Optional<Swap> swap(Trial trial, BuildResult after) {
            List<String> is = after.placement().orElseThrow().parts().stream().map(Occurrence::part).toList();
            BigDecimal benefit = weighing.benefit(after.totals());
            return shopping.between(was, is).map(buy -> new Swap(
                    path, from, trial.to, after, benefit, benefit.subtract(before), buy,
                    Shopping.price(buy), trial.carried.paths, trial.carried.lost, rolesLost(is), broken(after)));
        }

        private List<BuildEntry> required(List<Link> links, List<BuildEntry> assembly) {
            Set<String> filled = new HashSet<>();
            assembly.forEach(entry -> filled.add(entry.path()));
            List<BuildEntry> more = new ArrayList<>();
            for (Link link : links) {
                for (SlotId each : relations.slots(link.part)) {
                    String where = link.path + "/" + each.slot();
                    if (relations.room(each).filled() && !filled.contains(where)) {
                        relations.candidates(each).stream().filter(shopping::obtainable)
                                .min(Comparator.comparing((String part) -> price(part)).thenComparing(Comparator.naturalOrder()))
                                .ifPresent(part -> more.add(entry(where, 0, part)));
                    }
                }
            }
            return more;
        }

        private BigDecimal price(String part) {
            return shopping.owned().contains(part) ? BigDecimal.ZERO : shopping.prices().cheapest(part).map(Prices.Priced::cost).orElse(BigDecimal.ZERO);
        }

        /** Whether an entry of the build is neither at the place nor below it. */
        private boolean stays(BuildEntry entry) {
            return !(entry.path().equals(slotPath) && entry.position() == position && there.isPresent()) && !entry.path().startsWith(path + "/");
        }

        /** What entries put in the place, by path within it. */
        private SortedMap<String, String> relative(List<BuildEntry> entries) {
            SortedMap<String, String> relative = new TreeMap<>();
            for (BuildEntry entry : entries) {
                if (entry.path().equals(slotPath)) {
                    relative.put("", entry.part());
                } else {
                    String inner = entry.path().substring(path.length() + 1);
                    long beside = entries.stream().filter(other -> other.path().equals(entry.path())).count();
                    relative.put(beside > 1 || entry.position() > 0 ? inner + ":" + entry.position() : inner, entry.part());
                }
            }
            return relative;
        }

        private BuildEntry entry(String where, int at, String part) {
            return new BuildEntry(where, at, part, OptionalInt.empty(), build.origin(), build.origin());
        }
    }

    private List<String> rolesLost(List<String> after) {
        Set<String> lost = new TreeSet<>(rolesBefore);
        lost.removeAll(roles(after));
        return List.copyOf(lost);
    }

    private Set<String> roles(List<String> parts) {
        Set<String> roles = new TreeSet<>();
        for (String part : parts) {
            relations.catalog().roleOf(relations.catalog().parts().get(part)).ifPresent(roles::add);
        }
        return roles;
    }

    private List<String> broken(BuildResult after) {
        Set<String> held = new HashSet<>();
        result.limits().stream().filter(LimitMargin::holds).forEach(limit -> held.add(limit.limit().id()));
        return after.limits().stream().filter(limit -> !limit.holds() && held.contains(limit.limit().id())).map(limit -> limit.limit().id()).toList();
    }

    private Build with(List<BuildEntry> parts) {
        return rebuilt(build, parts);
    }

    /** A build with other parts. */
    static Build rebuilt(Build build, List<BuildEntry> parts) {
        return new Build(build.id(), build.label(), build.platform(), build.patch(), List.copyOf(parts), build.loaded(), build.outfit(), build.access(),
                build.owned(), build.budget(), build.lens(), build.origin());
    }
}

package fettle.space.best;

import fettle.catalog.Build;
import fettle.catalog.BuildEntry;
import fettle.catalog.SlotId;
import fettle.document.DeepStack;
import fettle.relation.Relations;
import fettle.relation.SlotRoom;
import fettle.space.BuildCheck;
import fettle.space.BuildResult;
import fettle.space.Fraction;
import fettle.space.Occurrence;
import fettle.space.Placement;
import fettle.space.Prices;
import fettle.space.SlotUse;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
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
import java.util.stream.Stream;

/**
 * Finds the swaps at each place of a build that give a valid build: nothing, each part that fits, and chains of up to three parts, with what hung on the old
 * assembly hung on the new one where it fits, and what the new parts require filled with the cheapest that fits.
 */
public final class Swaps {

    /** Parts in a chain at most: an adapter, a part on it, and a third on top. */
    public static final int LONGEST = 3;

    /** The most parts put into one slot of a new head at once. */
    private static final int MOST_ADDED = 12;

    /** The most assemblies thought of at one place. */
    public static final int MOST_TRIED = 3_000;

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

    /** The swaps of a build whose parts could all be placed, before any is tried. */
    public static Thought thought(Relations relations, BuildCheck check, Weighing weighing, Shopping shopping, BuildResult result) {
        return new Swaps(relations, check, weighing, shopping, result).thought();
    }

    /** The swaps of a build whose parts could all be placed. */
    public static Found of(Relations relations, BuildCheck check, Weighing weighing, Shopping shopping, BuildResult result) {
        return thought(relations, check, weighing, shopping, result).tried(prospect -> true);
    }

    /** The same without those that gain less than so much, which is far less work where few gain as much. */
    static Found gaining(BigDecimal least, Relations relations, BuildCheck check, Weighing weighing, Shopping shopping, BuildResult result) {
        return thought(relations, check, weighing, shopping, result).tried(prospect -> prospect.gain().compareTo(least) >= 0);
    }

    private Thought thought() {
        List<Place> places = placement.slots().stream().flatMap(use -> places(use).stream()).toList();
        List<Trial> chains = DeepStack.each(places, Place::enumerate).stream().flatMap(List::stream).toList();
        Map<Trial, Optional<Prospect>> hoped = new LinkedHashMap<>();
        hope(chains, hoped);
        hope(places.stream().flatMap(place -> place.combined(hoped).stream()).toList(), hoped);
        // What can't be had with all that hung there, or gains more without, is tried with nothing carried over.
        Map<Trial, List<Optional<Prospect>>> second = new LinkedHashMap<>();
        hoped.forEach((trial, whole) -> {
            for (Trial same : trial.sameWithAll) {
                same.place.bare(same).ifPresent(bare -> second.computeIfAbsent(bare, unused -> new ArrayList<>()).add(whole));
            }
        });
        List<Optional<Prospect>> bare = DeepStack.each(List.copyOf(second.entrySet()), trial -> trial.getKey().place.prospect(trial.getKey(), trial.getValue()));
        List<Prospect> prospects = Stream.concat(hoped.values().stream(), bare.stream()).flatMap(Optional::stream).sorted(Prospect.BEST_FIRST).toList();
        return new Thought(prospects, places.stream().filter(place -> place.tried > MOST_TRIED).map(place -> place.path).toList());
    }

    private static void hope(List<Trial> trials, Map<Trial, Optional<Prospect>> hoped) {
        List<Optional<Prospect>> found = DeepStack.each(trials, trial -> trial.place.prospect(trial, List.of()));
        for (int i = 0; i < trials.size(); i++) {
            hoped.put(trials.get(i), found.get(i));
        }
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

    /** A chain to be tried in a place, and the whole assembly that it comes to. Each is itself alone. */
    private static final class Trial {
        private final Place place;
        private final List<Link> links;
        private final List<BuildEntry> chain;
        private final Carried carried;
        private final List<BuildEntry> assembly;
        private final SortedMap<String, String> to;
        /** This, and others that come to the same with all that hung there, though not without. */
        private final List<Trial> sameWithAll = new ArrayList<>(List.of(this));

        Trial(Place place, List<Link> links, List<BuildEntry> chain, Carried carried, List<BuildEntry> assembly, SortedMap<String, String> to) {
            this.place = place;
            this.links = links;
            this.chain = chain;
            this.carried = carried;
            this.assembly = assembly;
            this.to = to;
        }
    }

    /** One place, where one thing may be put instead of another. */
    private final class Place {

        private final SlotId slot;
        private final String path;
        private final String slotPath;
        private final int position;
        private final Optional<Occurrence> there;
        private final SortedMap<String, String> from;
        private final List<Trial> trials = new ArrayList<>();
        private final Map<Object, Trial> seen = new HashMap<>();
        private final Map<Object, Trial> bare = new HashMap<>();
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
            Trial trial = trial(List.copyOf(links), List.copyOf(entries), carried);
            Trial same = seen.putIfAbsent(AssemblyKey.of(trial.to), trial);
            if (same == null) {
                trials.add(trial);
            } else {
                same.sameWithAll.add(trial);
            }
        }

        /** A trial's chain with nothing carried over, the same for all chains that come to the same; empty where nothing was, or where another trial comes to that. */
        Optional<Trial> bare(Trial trial) {
            if (trial.carried.paths.isEmpty()) {
                return Optional.empty();
            }
            Trial without = trial(trial.links, trial.chain, uncarried(trial.links));
            Object key = AssemblyKey.of(without.to);
            return seen.containsKey(key) ? Optional.empty() : Optional.of(bare.computeIfAbsent(key, unused -> without));
        }

        /** Nothing hung on what is new but what it is made of, which may be what hung there. */
        private Carried uncarried(List<Link> links) {
            List<String> made = new ArrayList<>(links.stream().skip(1).map(Link::part).toList());
            List<String> kept = new ArrayList<>();
            List<String> lost = new ArrayList<>();
            for (String old : below()) {
                (made.remove(at(old).part()) ? kept : lost).add(old);
            }
            return new Carried(List.of(), kept, lost);
        }

        private Occurrence at(String where) {
            return placement.parts().stream().filter(each -> each.path().equals(where)).findFirst().orElseThrow();
        }

        /** By new head, what gains the most in each of its slots together: where one slot after the other would have to be filled, no single chain shows what that comes to. */
        List<Trial> combined(Map<Trial, Optional<Prospect>> hoped) {
            Map<String, Trial> alone = new LinkedHashMap<>();
            Map<String, Map<String, List<Trial>>> gaining = new TreeMap<>();
            for (Trial trial : trials) {
                if (trial.links.size() == 1 && gain(trial, hoped).isPresent()) {
                    alone.put(trial.links.get(0).part, trial);
                }
            }
            for (Trial trial : trials) {
                Trial head = trial.links.size() < 2 ? null : alone.get(trial.links.get(0).part);
                if (head != null && gain(trial, hoped).filter(gain -> gain.compareTo(gain(head, hoped).orElseThrow()) > 0).isPresent()) {
                    gaining.computeIfAbsent(trial.links.get(0).part, unused -> new TreeMap<>()).computeIfAbsent(trial.chain.get(1).path(), unused -> new ArrayList<>()).add(trial);
                }
            }
            List<Trial> combined = new ArrayList<>();
            gaining.forEach((head, bySlot) -> {
                List<Link> links = new ArrayList<>(alone.get(head).links);
                List<BuildEntry> entries = new ArrayList<>(alone.get(head).chain);
                bySlot.forEach((into, some) -> {
                    some.sort(Comparator.comparing((Trial trial) -> gain(trial, hoped).orElseThrow()).reversed());
                    slotAt(alone.get(head).links, into).ifPresent(slot -> add(some, relations.room(slot), links, entries));
                });
                Trial trial = trial(List.copyOf(links), List.copyOf(entries), carried(links, entries));
                if (seen.putIfAbsent(AssemblyKey.of(trial.to), trial) == null) {
                    combined.add(trial);
                }
            });
            return combined;
        }

        private static Optional<BigDecimal> gain(Trial trial, Map<Trial, Optional<Prospect>> hoped) {
            return hoped.getOrDefault(trial, Optional.empty()).map(Prospect::gain);
        }

        /** Adds what stands in one slot in some trials of a head, as many of them as there is room for; where a part may come twice, the first again and again. */
        private void add(List<Trial> some, SlotRoom room, List<Link> links, List<BuildEntry> entries) {
            Set<String> added = new HashSet<>();
            int left = room.notches().orElse(Integer.MAX_VALUE);
            int next = 0;
            for (int at = 0; at < Math.min(room.most(), MOST_ADDED) && next < some.size();) {
                Trial trial = some.get(next);
                String part = trial.links.get(1).part;
                boolean fits = relations.span(part) <= left && (!room.distinct() || added.add(part));
                if (fits) {
                    String before = trial.links.get(1).path;
                    String after = room.most() > 1 ? before.substring(0, before.length() - 1) + at : before;
                    trial.links.stream().skip(1).forEach(link -> links.add(new Link(link.part, after + link.path.substring(before.length()))));
                    entries.add(entry(trial.chain.get(1).path(), at, part));
                    trial.chain.stream().skip(2).forEach(entry -> entries.add(entry(after + entry.path().substring(before.length()), entry.position(), entry.part())));
                    left -= relations.span(part);
                    at++;
                }
                next += fits && !room.distinct() ? 0 : 1;
            }
        }

        private List<BuildEntry> assembly(List<Link> links, List<BuildEntry> entries, Carried carried) {
            List<BuildEntry> assembly = new ArrayList<>(entries);
            assembly.addAll(carried.entries);
            assembly.addAll(required(links, assembly));
            return assembly;
        }

        private Trial trial(List<Link> links, List<BuildEntry> entries, Carried carried) {
            List<BuildEntry> assembly = assembly(links, entries, carried);
            return new Trial(this, links, entries, carried, assembly, relative(assembly));
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
                Occurrence part = at(old);
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

        /**
         * What a trial would come to; empty where some of it is unobtainable.
         *
         * @param before what must come to nothing first; where nothing is named, nothing must
         */
        Optional<Prospect> prospect(Trial trial, List<Optional<Prospect>> before) {
            Build after = with(parts(trial.assembly));
            SortedMap<String, BigDecimal> totals = check.totals(after);
            BigDecimal benefit = weighing.benefit(totals);
            List<String> is = after.parts().stream().map(BuildEntry::part).toList();
            return shopping.between(was, is).map(buy -> new Prospect(path, from, trial.to, totals, benefit, benefit.subtract(Swaps.this.before), buy,
                    trial.carried.paths, trial.carried.lost, rolesLost(is), prospect -> {
                boolean due = before.isEmpty()
                        || before.stream().anyMatch(whole -> whole.map(each -> each.gain().compareTo(prospect.gain()) < 0 || each.tried().isEmpty()).orElse(true));
                return due ? check.checkValid(after).map(result -> new Swap(prospect, result, broken(result))) : Optional.empty();
            }));
        }

        private List<BuildEntry> parts(List<BuildEntry> assembly) {
            List<BuildEntry> parts = new ArrayList<>(build.parts().stream().filter(this::stays).toList());
            parts.addAll(assembly);
            return parts;
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
        if (rolesBefore.isEmpty()) {
            return List.of();
        }
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

    /** The limits that are exceeded then, and by less or not at all now. */
    private List<String> broken(BuildResult after) {
        Map<String, Fraction> excess = new HashMap<>();
        result.limits().stream().filter(limit -> !limit.holds()).forEach(limit -> excess.put(limit.limit().id(), limit.excess()));
        return after.limits().stream().filter(limit -> !limit.holds())
                .filter(limit -> !excess.containsKey(limit.limit().id()) || limit.excess().compareTo(excess.get(limit.limit().id())) > 0)
                .map(limit -> limit.limit().id()).toList();
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

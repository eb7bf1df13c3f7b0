package fettle.space.best;

import fettle.catalog.Build;
import fettle.catalog.BuildEntry;
import fettle.catalog.SlotId;
import fettle.relation.Relations;
import fettle.relation.SlotRoom;
import fettle.space.Occurrence;
import fettle.space.Placement;
import fettle.space.Prices;
import fettle.space.SlotUse;
import fettle.space.Unresolved;
import fettle.space.best.SwapTrial.Carried;
import fettle.space.best.SwapTrial.Link;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * A place of a build, where one thing may be put instead of another: thinks of the chains of parts that could stand there, with what hung on the old assembly hung on the new
 * one where it fits, and what the new parts require filled with the cheapest that fits.
 */
final class SwapPlace {

    /** The most parts put into one slot of a new head at once. */
    private static final int MOST_ADDED = 12;

    private final Relations relations;
    private final Shopping shopping;
    private final Build build;
    private final Placement placement;
    private final SlotId slot;
    private final String path;
    private final String slotPath;
    private final int position;
    private final Optional<Occurrence> there;
    private final boolean filled;
    private final SortedMap<String, String> from;
    private final List<SwapTrial> trials = new ArrayList<>();
    private final List<SwapTrial> attempted = new ArrayList<>();
    private final Set<Object> seen = new HashSet<>();
    private boolean bounded;

    private SwapPlace(Relations relations, Shopping shopping, Build build, Placement placement, SlotUse use, String path, int position, Optional<Occurrence> there,
            boolean filled) {
        this.relations = relations;
        this.shopping = shopping;
        this.build = build;
        this.placement = placement;
        this.slot = use.slot();
        this.path = path;
        this.slotPath = use.path();
        this.position = position;
        this.there = there;
        this.filled = filled;
        this.from = relative(build.parts().stream().filter(entry -> !stays(entry)).toList());
    }

    /**
     * The places of a build: each part, what it names that the catalog doesn't have, and what is left in each slot.
     *
     * @param build with paths that tell positions where the placement does
     */
    static List<SwapPlace> of(Relations relations, Shopping shopping, Build build, Placement placement) {
        List<SwapPlace> places = new ArrayList<>();
        for (SlotUse use : placement.slots()) {
            int most = relations.room(use.slot()).most();
            List<BuildEntry> unknown = placement.unresolved().stream().filter(Unresolved.NoSuchPart.class::isInstance).map(Unresolved::entry).filter(entry -> entry.path().equals(use.path())).toList();
            int held = use.occupants().size() + unknown.size();
            for (int occupant : use.occupants()) {
                Occurrence there = placement.parts().get(occupant);
                places.add(new SwapPlace(relations, shopping, build, placement, use, there.path(), there.entry().position(), Optional.of(there), true));
            }
            for (BuildEntry entry : unknown) {
                String path = most > 1 || held > 1 ? use.path() + ":" + entry.position() : use.path();
                places.add(new SwapPlace(relations, shopping, build, placement, use, path, entry.position(), Optional.empty(), true));
            }
            if (held < most) {
                int position = Stream.concat(use.occupants().stream().map(each -> placement.parts().get(each).entry()), unknown.stream()).mapToInt(entry -> entry.position() + 1).max().orElse(0);
                places.add(new SwapPlace(relations, shopping, build, placement, use, most > 1 ? use.path() + ":" + position : use.path(), position, Optional.empty(), false));
            }
        }
        return places;
    }

    /** The path, with the position in a slot that holds several. */
    String path() {
        return path;
    }

    /** What is there, by path within the place. */
    SortedMap<String, String> from() {
        return from;
    }

    /** Whether not every chain was thought of, since there are too many. */
    boolean bounded() {
        return bounded;
    }

    /** The chains that may stand there, those that come to the same once. */
    List<SwapTrial> enumerate() {
        if (filled) {
            attempt(List.of(), List.of(), new Carried(List.of(), List.of()));
        }
        SwapChains chains = new SwapChains(relations, build.origin(), this::usable);
        chains.from(slot, slotPath, position, path, there).forEach(chain -> attempt(chain.links(), chain.entries(), carried(chain.links(), chain.entries())));
        bounded = chains.bounded();
        return trials;
    }

    private boolean usable(String part) {
        return shopping.obtainable(part) || placement.parts().stream().anyMatch(old -> old.part().equals(part));
    }

    private void attempt(List<Link> links, List<BuildEntry> entries, Carried carried) {
        SwapTrial trial = trial(links, entries, carried);
        attempted.add(trial);
        if (seen.add(AssemblyKey.of(trial.to()))) {
            trials.add(trial);
        }
    }

    /** The chains that stood with what is carried over, by themselves, where that comes to something else: what falls off may cost more than it is worth, or stand in the way. */
    List<SwapTrial> bare() {
        return attempted.stream().filter(trial -> !trial.carried().paths().isEmpty())
                .map(trial -> trial(trial.links(), trial.chain(), uncarried(trial.links())))
                .filter(bare -> seen.add(AssemblyKey.of(bare.to()))).toList();
    }

    /**
     * What another build has there, where that isn't a swap farther down: no chain shows what comes of several parts in several slots.
     *
     * @param other the part at each path of a valid build
     */
    Optional<SwapTrial> asIn(SortedMap<String, String> other) {
        if (!other.containsKey(path)) {
            return Optional.empty();
        }
        SortedMap<String, String> here = new TreeMap<>(Map.of(path, other.get(path)));
        here.putAll(other.subMap(path + "/", path + "0"));
        List<Link> links = here.entrySet().stream().map(placed -> new Link(placed.getValue(), placed.getKey())).toList();
        SwapTrial trial = trial(links, Arrangement.entries(here, each -> OptionalInt.empty(), build.origin()), uncarried(links));
        Set<String> slots = Stream.concat(from.keySet().stream(), trial.to().keySet().stream()).filter(each -> !Objects.equals(from.get(each), trial.to().get(each)))
                .map(each -> each.split("[:/]", 2)[0]).collect(Collectors.toSet());
        return slots.contains("") || slots.size() > 1 ? Optional.of(trial).filter(unused -> seen.add(AssemblyKey.of(trial.to()))) : Optional.empty();
    }

    /** Nothing hung on what is new but what it is made of, which may be what hung there. */
    private Carried uncarried(List<Link> links) {
        List<String> made = new ArrayList<>(links.stream().skip(1).map(Link::part).toList());
        return new Carried(List.of(), below().stream().filter(old -> made.remove(old.part())).map(Occurrence::path).toList());
    }

    /** By new head, what gains the most in each of its slots together: where one slot after the other would have to be filled, no single chain shows what that comes to. */
    List<SwapTrial> combined(Map<SwapTrial, Optional<Prospect>> hoped) {
        Map<String, SwapTrial> alone = new LinkedHashMap<>();
        Map<String, Map<String, List<SwapTrial>>> gaining = new TreeMap<>();
        for (SwapTrial trial : trials) {
            if (trial.links().size() == 1 && gain(trial, hoped).isPresent()) {
                alone.put(trial.links().get(0).part(), trial);
            }
        }
        for (SwapTrial trial : trials) {
            SwapTrial head = trial.links().size() < 2 ? null : alone.get(trial.links().get(0).part());
            if (head != null && gain(trial, hoped).filter(gain -> gain.compareTo(gain(head, hoped).orElseThrow()) > 0).isPresent()) {
                gaining.computeIfAbsent(trial.links().get(0).part(), unused -> new TreeMap<>()).computeIfAbsent(trial.chain().get(1).path(), unused -> new ArrayList<>()).add(trial);
            }
        }
        List<SwapTrial> combined = new ArrayList<>();
        gaining.forEach((head, bySlot) -> {
            List<Link> links = new ArrayList<>(alone.get(head).links());
            List<BuildEntry> entries = new ArrayList<>(alone.get(head).chain());
            bySlot.forEach((into, some) -> {
                some.sort(Comparator.comparing((SwapTrial trial) -> gain(trial, hoped).orElseThrow()).reversed());
                slotAt(alone.get(head).links(), into).ifPresent(slot -> add(some, relations.room(slot), links, entries));
            });
            SwapTrial trial = trial(List.copyOf(links), List.copyOf(entries), carried(links, entries));
            attempted.add(trial);
            if (seen.add(AssemblyKey.of(trial.to()))) {
                combined.add(trial);
            }
        });
        return combined;
    }

    private static Optional<BigDecimal> gain(SwapTrial trial, Map<SwapTrial, Optional<Prospect>> hoped) {
        return hoped.getOrDefault(trial, Optional.empty()).map(Prospect::gain);
    }

    /** Adds what stands in one slot in some trials of a head, as many of them as there is room for; where a part may come twice, the first again and again. */
    private void add(List<SwapTrial> some, SlotRoom room, List<Link> links, List<BuildEntry> entries) {
        Set<String> added = new HashSet<>();
        int left = room.notches().orElse(Integer.MAX_VALUE);
        int next = 0;
        for (int at = 0; at < Math.min(room.most(), MOST_ADDED) && next < some.size();) {
            SwapTrial trial = some.get(next);
            String part = trial.links().get(1).part();
            boolean fits = relations.span(part) <= left && (!room.distinct() || added.add(part));
            if (fits) {
                String before = trial.links().get(1).path();
                String after = room.most() > 1 ? before.substring(0, before.length() - 1) + at : before;
                trial.links().stream().skip(1).forEach(link -> links.add(new Link(link.part(), after + link.path().substring(before.length()))));
                entries.add(entry(trial.chain().get(1).path(), at, part));
                trial.chain().stream().skip(2).forEach(entry -> entries.add(entry(after + entry.path().substring(before.length()), entry.position(), entry.part())));
                left -= relations.span(part);
                at++;
            }
            next += fits && !room.distinct() ? 0 : 1;
        }
    }

    private List<BuildEntry> assembly(List<Link> links, List<BuildEntry> entries, Carried carried) {
        List<BuildEntry> assembly = new ArrayList<>(entries);
        assembly.addAll(carried.entries());
        assembly.addAll(required(links, assembly));
        return assembly;
    }

    private SwapTrial trial(List<Link> links, List<BuildEntry> entries, Carried carried) {
        List<BuildEntry> assembly = assembly(links, entries, carried);
        List<BuildEntry> made = assembly.stream().filter(entry -> !carried.entries().contains(entry)).toList();
        List<String> lost = new FallenOff(placement).of(below(), carried.entries().isEmpty() ? Set.of() : Set.copyOf(carried.paths()), made);
        return new SwapTrial(this, links, entries, carried, lost, assembly, relative(assembly));
    }

    /** What hangs directly on what is there. */
    private List<Occurrence> below() {
        return there.map(old -> placement.parts().stream().filter(part -> placement.hostOf(part) == old.index()).toList()).orElse(List.of());
    }

    private Carried carried(List<Link> links, List<BuildEntry> entries) {
        List<BuildEntry> hung = new ArrayList<>();
        List<String> paths = new ArrayList<>();
        Map<String, Integer> used = new LinkedHashMap<>();
        entries.forEach(entry -> used.merge(entry.path(), 1, Integer::sum));
        for (Occurrence part : below()) {
            String old = part.path();
            Optional<String> home = home(links, used, part);
            if (home.isEmpty()) {
                continue;
            }
            int at = used.merge(home.get(), 1, Integer::sum) - 1;
            String prefix = several(links, home.get()) ? home.get() + ":" + at : home.get();
            hung.add(entry(home.get(), at, part.part(), part.at()));
            for (BuildEntry entry : build.parts()) {
                if (entry.path().startsWith(old + "/")) {
                    hung.add(new BuildEntry(prefix + entry.path().substring(old.length()), entry.position(), entry.part(), entry.at(), entry.pathOrigin(),
                            entry.origin()));
                }
            }
            paths.add(old);
        }
        return new Carried(hung, paths);
    }

    private Optional<SlotId> slotAt(List<Link> links, String where) {
        return links.stream().flatMap(link -> relations.slots(link.part()).stream().filter(each -> (link.path() + "/" + each.slot()).equals(where))).findFirst();
    }

    private boolean several(List<Link> links, String where) {
        return slotAt(links, where).map(found -> relations.room(found).most() > 1).orElse(false);
    }

    /** Where on the new assembly an old part can hang: in a slot of the same name before any other, further out before nearer, and never on another of itself. */
    private Optional<String> home(List<Link> links, Map<String, Integer> used, Occurrence part) {
        String name = placement.slotOf(part).slot().slot();
        List<String> homes = new ArrayList<>();
        int own = 0;
        while (own < links.size() && !links.get(own).part().equals(part.part())) {
            own++;
        }
        for (int i = own - 1; i >= 0; i--) {
            for (SlotId each : relations.slots(links.get(i).part())) {
                String where = links.get(i).path() + "/" + each.slot();
                if (relations.fits(each, part.part()) && used.getOrDefault(where, 0) < relations.room(each).most()) {
                    homes.add(each.slot().equals(name) ? 0 : homes.size(), where);
                }
            }
        }
        return homes.stream().findFirst();
    }

    /** The entries of the build with an assembly in the place. */
    List<BuildEntry> with(List<BuildEntry> assembly) {
        List<BuildEntry> parts = new ArrayList<>(build.parts().stream().filter(this::stays).toList());
        parts.addAll(assembly);
        return parts;
    }

    /** The paths of the parts at which the build states a notch that a trial may have to do without: of what is there, what stays beside it, and what is carried over. */
    List<String> stated(SwapTrial trial) {
        List<String> stated = new ArrayList<>(own(trial));
        placement.parts().stream().filter(part -> part.at().isPresent() && !part.path().equals(path)
                && (placement.slotOf(part).path().equals(slotPath) || trial.carried().paths().contains(part.path()))).forEach(part -> stated.add(part.path()));
        return stated.stream().sorted().toList();
    }

    /** The path of the place where the build states a notch there that something else is to take. */
    List<String> own(SwapTrial trial) {
        return trial.links().isEmpty() || there.filter(old -> old.at().isPresent()).isEmpty() ? List.of() : List.of(path);
    }

    /** The entries of the build with an assembly in the place, without the notch that is stated there, or without any of those stated. */
    List<BuildEntry> without(boolean all, SwapTrial trial) {
        Set<String> links = trial.links().stream().map(Link::path).collect(Collectors.toSet());
        return with(trial.assembly()).stream().map(entry -> {
            boolean here = entry.path().equals(slotPath) && (all || entry.position() == position);
            int cut = entry.path().lastIndexOf('/');
            return here || all && cut >= 0 && links.contains(entry.path().substring(0, cut))
                    ? new BuildEntry(entry.path(), entry.position(), entry.part(), OptionalInt.empty(), entry.pathOrigin(), entry.origin()) : entry;
        }).toList();
    }

    private List<BuildEntry> required(List<Link> links, List<BuildEntry> assembly) {
        Set<String> filled = new HashSet<>();
        assembly.forEach(entry -> filled.add(entry.path()));
        List<BuildEntry> more = new ArrayList<>();
        for (Link link : links) {
            for (SlotId each : relations.slots(link.part())) {
                String where = link.path() + "/" + each.slot();
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
        return !(entry.path().equals(slotPath) && entry.position() == position && filled) && !entry.path().startsWith(path + "/");
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
        return entry(where, at, part, OptionalInt.empty());
    }

    private BuildEntry entry(String where, int at, String part, OptionalInt notch) {
        return new BuildEntry(where, at, part, notch, build.origin(), build.origin());
    }
}

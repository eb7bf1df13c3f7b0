package fettle.space.worth;

import fettle.catalog.Access;
import fettle.catalog.Catalog;
import fettle.catalog.Lens;
import fettle.catalog.Part;
import fettle.catalog.SlotId;
import fettle.relation.Relations;
import fettle.space.Circuit;
import fettle.space.Evaluation;
import fettle.space.Folded;
import fettle.space.Fraction;
import fettle.space.Landscape;
import fettle.space.Prices;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Stream;

/** Makes the value ladders of one platform's slots for one lens and one purse. */
public final class Climb {

    private final Relations relations;
    private final Folded folded;
    private final Circuit circuit;
    private final Lens lens;
    private final Prices prices;
    private final Assemblies assemblies;
    private final BitSet nodes;
    private final Map<Integer, Bargains> known = new HashMap<>();
    private long left = Long.MAX_VALUE;

    /** Ladders on one platform of a landscape, whose valid builds must have been decided. */
    public Climb(Landscape landscape, String platform, Lens lens, Optional<Access> access) {
        this.folded = landscape.folded().get(platform);
        if (folded.undecided().isPresent()) {
            throw new IllegalArgumentException("the builds of " + folded.platform() + " are not known");
        }
        this.relations = landscape.relations();
        this.circuit = folded.circuit();
        this.lens = lens;
        this.prices = new Prices(relations.catalog(), access);
        this.assemblies = new Assemblies(landscape.terrain());
        this.nodes = Evaluation.below(circuit, folded.root());
    }

    /** The ladder of a slot; empty where comparing its assemblies would take more than so many steps beyond those already taken. */
    public Optional<Ladder> within(SlotId slot, long steps) {
        left = steps;
        try {
            return Optional.of(of(slot));
        } catch (Meter.Spent tooMany) {
            return Optional.empty();
        } finally {
            left = Long.MAX_VALUE;
        }
    }

    /** The ladder of a slot. */
    public Ladder of(SlotId slot) {
        SortedMap<SortedSet<String>, List<Bargain>> groups = new TreeMap<>(Bargains.BY_ROLES);
        if (!relations.room(slot).filled()) {
            add(Bargains.of(new TreeSet<>(), Bargain.NOTHING), groups);
        }
        byHead(slot).values().forEach(bargains -> add(bargains, groups));
        SortedMap<String, Standing> standings = new TreeMap<>();
        List<Ladder.Group> told = new ArrayList<>();
        groups.forEach((roles, bargains) -> told.add(group(roles, bargains, standings)));
        return new Ladder(folded.platform(), slot, lens, told, standings);
    }

    private static void add(Bargains bargains, SortedMap<SortedSet<String>, List<Bargain>> groups) {
        bargains.byRoles().forEach((roles, some) -> groups.computeIfAbsent(roles, unused -> new ArrayList<>()).addAll(some));
    }

    /** The assemblies worth their price by the part that heads them. */
    private SortedMap<String, Bargains> byHead(SlotId slot) {
        BitSet heads = new BitSet();
        for (int node = nodes.nextSetBit(0); node >= 0; node = nodes.nextSetBit(node + 1)) {
            if (circuit.kind(node) == Circuit.Kind.SLOT && folded.slots().get(circuit.first(node)).equals(slot)) {
                gather(circuit.second(node), heads, new HashSet<>());
            }
        }
        BitSet wanted = Evaluation.below(circuit, heads.stream().toArray());
        for (int node = wanted.nextSetBit(0); node >= 0; node = wanted.nextSetBit(node + 1)) {
            known.computeIfAbsent(node, this::bargains);
        }
        SortedMap<String, Bargains> byHead = new TreeMap<>();
        heads.stream().forEach(node -> byHead.merge(folded.hosts().get(circuit.first(node)), known.get(node), Bargains::or));
        return byHead;
    }

    private void gather(int node, BitSet heads, Set<Integer> seen) {
        if (!seen.add(node)) {
            return;
        }
        switch (circuit.kind(node)) {
            case ONE, SLOT -> { }
            case PART -> heads.set(node);
            case SEVERAL -> gather(circuit.first(node), heads, seen);
            case BOTH -> {
                gather(circuit.first(node), heads, seen);
                gather(circuit.second(node), heads, seen);
            }
            case EITHER -> {
                for (int i = 0; i < circuit.width(node); i++) {
                    gather(circuit.alternative(node, i), heads, seen);
                }
            }
        }
    }

    private Bargains bargains(int node) {
        int first = circuit.first(node);
        int second = circuit.second(node);
        return switch (circuit.kind(node)) {
            case ONE -> Bargains.of(new TreeSet<>(), Bargain.NOTHING);
            case PART -> {
                spend(known.get(second).size());
                yield known.get(second).upon(part(first));
            }
            case SLOT -> known.get(second).in(first);
            case BOTH -> and(known.get(first), known.get(second));
            case SEVERAL -> {
                // Of the same several times in no order the best are the best of so many in order.
                Bargains all = known.get(first);
                for (int i = 1; i < second; i++) {
                    all = and(all, known.get(first));
                }
                yield all;
            }
            case EITHER -> {
                Bargains all = Bargains.NONE;
                for (int i = 0; i < circuit.width(node); i++) {
                    Bargains some = known.get(circuit.alternative(node, i));
                    spend((long) all.size() + some.size());
                    all = all.or(some);
                }
                yield all;
            }
        };
    }

    private Bargains and(Bargains one, Bargains other) {
        spend((long) one.size() * other.size());
        return one.and(other);
    }

    private void spend(long steps) {
        left -= steps;
        if (left < 0) {
            throw new Meter.Spent();
        }
    }

    /** A part by itself; none where it can't be bought. */
    private Bargains part(int number) {
        Catalog catalog = relations.catalog();
        Part part = catalog.parts().get(folded.hosts().get(number));
        SortedSet<String> roles = new TreeSet<>();
        catalog.roleOf(part).ifPresent(roles::add);
        return prices.cheapest(part.id())
                .map(priced -> Bargains.of(roles, new Bargain(new Pick.Headed(number, Pick.NOTHING), 1, priced.cost(), Worths.benefit(catalog, lens, part))))
                .orElse(Bargains.NONE);
    }

    private Ladder.Group group(SortedSet<String> roles, List<Bargain> bargains, SortedMap<String, Standing> standings) {
        Hull<Bargain> hull = new Hull<>(bargains);
        List<Ladder.Rung> rungs = new ArrayList<>();
        Bargain below = null;
        Set<String> climbed = new HashSet<>();
        for (Bargain rung : hull.rungs()) {
            Optional<Fraction> step = Optional.ofNullable(below).map(lower ->
                    Fraction.of(rung.cost().subtract(lower.cost())).over(Fraction.of(rung.benefit().subtract(lower.benefit()))));
            List<Bargain> alike = hull.alike(rung);
            rungs.add(new Ladder.Rung(offer(rung), alike.stream().map(this::offer).toList(), step));
            Stream.concat(Stream.of(rung), alike.stream()).forEach(there -> head(there).ifPresent(climbed::add));
            below = rung;
        }
        SortedMap<String, Bargain> best = new TreeMap<>();
        for (Bargain bargain : bargains) {
            head(bargain).ifPresent(head -> {
                standings.merge(head, hull.standing(bargain), (one, other) -> one.compareTo(other) <= 0 ? one : other);
                best.merge(head, bargain, (one, other) -> hull.standing(other).compareTo(hull.standing(one)) < 0 ? other : one);
            });
        }
        List<Ladder.Other> others = new ArrayList<>();
        best.forEach((head, bargain) -> {
            if (!climbed.contains(head)) {
                others.add(new Ladder.Other(offer(bargain), hull.standing(bargain)));
            }
        });
        others.sort(Comparator.comparing((Ladder.Other other) -> other.offer().cost()).thenComparing(other -> other.offer().benefit()));
        return new Ladder.Group(roles, rungs, others);
    }

    private Optional<String> head(Bargain bargain) {
        return bargain.pick() instanceof Pick.Headed headed ? Optional.of(folded.hosts().get(headed.part())) : Optional.empty();
    }

    private Ladder.Offer offer(Bargain bargain) {
        Optional<Pick.Headed> headed = bargain.pick() instanceof Pick.Headed found ? Optional.of(found) : Optional.empty();
        return new Ladder.Offer(headed.map(assemblies::of), bargain.cost(), bargain.benefit());
    }
}

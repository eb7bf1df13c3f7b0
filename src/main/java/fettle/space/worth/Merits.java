package fettle.space.worth;

import fettle.catalog.Catalog;
import fettle.space.Assembly;
import fettle.space.Contents;
import fettle.space.Stand;
import fettle.space.Terrain;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.SortedSet;
import java.util.TreeSet;

/** Finds what speaks for an assembly that nothing dominates, by one way of comparing. */
final class Merits {

    private static final long STEPS = 20_000;

    private final Contents contents;
    private final Catalog catalog;
    private final Arena arena;
    private final Measure measure;
    private final Terrain terrain;
    private final Assemblies assemblies;

    Merits(Catalog catalog, Contents contents, Arena arena) {
        this.catalog = catalog;
        this.contents = contents;
        this.arena = arena;
        this.measure = arena.measure();
        this.terrain = arena.terrain();
        this.assemblies = new Assemblies(terrain);
    }

    /** What speaks for an assembly that stands there. */
    Merit of(Assembly assembly) {
        Yield yield = assembly.parts().stream().map(part -> measure.ofPart(terrain.number(part))).reduce(measure.ofNothing(), measure::both);
        int head = terrain.number(assembly.part());
        List<Stand> others = contents.stands().stream().filter(stand -> stand.head() != head && arena.ideal(stand.node()) != null).toList();
        boolean nothing = !contents.several() && !contents.room().filled();
        Optional<Yield> ideal = others.stream().map(stand -> arena.ideal(stand.node())).reduce(measure::best);
        Optional<Yield> all = nothing ? Optional.of(ideal.map(best -> measure.best(best, measure.ofNothing())).orElse(measure.ofNothing())) : ideal;
        if (all.isEmpty()) {
            return new Merit.Alone();
        }
        List<Column> most = measure.leads(yield, all.get());
        if (!most.isEmpty()) {
            return new Merit.Most(most);
        }
        return better(others, yield).<Merit>map(Merit.Bound::new).orElseGet(() -> trade(assembly, others, yield, nothing));
    }

    private Optional<Assembly> better(List<Stand> others, Yield yield) {
        for (Stand stand : others) {
            try {
                Optional<Pick> found = arena.search(arena.meter(STEPS)).find(stand.node(), measure.ofNothing(), yield, Search.Asked.BETTER, Integer.MAX_VALUE, any -> true);
                if (found.isPresent()) {
                    return found.map(pick -> assemblies.of((Pick.Headed) pick));
                }
            } catch (Meter.Spent spent) {
                // Another may be found with less work, and a rival is told in any case.
            }
        }
        return Optional.empty();
    }

    private record Rival(Optional<Assembly> assembly, int parts, int lost) {}

    private Merit trade(Assembly assembly, List<Stand> others, Yield yield, boolean nothing) {
        List<Rival> rivals = new ArrayList<>();
        if (nothing) {
            rivals.add(new Rival(Optional.empty(), 0, measure.leads(yield, measure.ofNothing()).size()));
        }
        for (Stand stand : others) {
            Pick pick = arena.smallest(stand.node());
            Assembly other = assemblies.of((Pick.Headed) pick);
            if (measure.compare(arena.broughtBy(pick), yield) == Measure.Order.EVEN) {
                return new Merit.Even(other);
            }
            rivals.add(new Rival(Optional.of(other), other.parts().size(), measure.leads(yield, arena.broughtBy(pick)).size()));
        }
        return rivals.stream().filter(rival -> rival.lost > 0)
                .min(Comparator.comparing((Rival rival) -> rival.assembly.isEmpty()).thenComparingInt(Rival::lost).thenComparingInt(Rival::parts).thenComparing(rival -> rival.assembly.map(Assembly::toString).orElse("")))
                .<Merit>map(rival -> new Merit.Trade(rival.assembly)).orElseGet(() -> new Merit.Role(roles(assembly)));
    }

    private SortedSet<String> roles(Assembly assembly) {
        SortedSet<String> roles = new TreeSet<>();
        assembly.parts().forEach(part -> catalog.roleOf(catalog.parts().get(part)).ifPresent(roles::add));
        return roles;
    }
}

package fettle.judgement;

import fettle.catalog.Access;
import fettle.relation.Relations;
import fettle.space.Landscape;
import fettle.space.Space;
import fettle.space.Undecided;
import fettle.space.worth.Placing;
import fettle.space.worth.Placings;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;

/** Compares parts, each with all others in every slot of every platform that can hold it; what was compared once is kept. */
public final class Standings {

    private final Relations relations;
    private final Space space;
    private final Map<Asked, Placings> known = new HashMap<>();
    private Optional<Landscape> landscape = Optional.empty();

    private record Asked(String part, Optional<String> access) {}

    public Standings(Relations relations) {
        this.relations = relations;
        this.space = Space.of(relations);
    }

    /** How a part stands. Costs are those under an access profile, of all offers where none is named. */
    public Placings of(String part, Optional<Access> access) {
        return known.computeIfAbsent(new Asked(part, access.map(Access::id)), unused -> placings(part, access));
    }

    /** The builds of all platforms. */
    Landscape landscape() {
        if (landscape.isEmpty()) {
            landscape = Optional.of(space.landscape(relations.catalog().platforms().keySet()));
        }
        return landscape.get();
    }

    private Placings placings(String part, Optional<Access> access) {
        fettle.space.worth.Comparison comparison = new fettle.space.worth.Comparison(landscape(), access);
        List<String> leading = relations.catalog().platforms().keySet().stream().filter(platform -> space.leadsTo(platform, List.of(part))).toList();
        List<Placing> placings = leading.stream().filter(landscape().platforms()::contains).flatMap(platform -> comparison.placings(platform, part).stream()).toList();
        SortedMap<String, Undecided> open = new TreeMap<>();
        leading.forEach(platform -> landscape().folded().get(platform).undecided().ifPresent(why -> open.put(platform, why)));
        return new Placings(placings, open);
    }
}

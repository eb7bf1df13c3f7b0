package fettle.judgement;

import fettle.catalog.Access;
import fettle.relation.Relations;
import fettle.space.Landscape;
import fettle.space.Space;
import fettle.space.Undecided;
import fettle.space.worth.Placing;
import fettle.space.worth.Placings;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;

/** Compares one part with all others, in every slot of every platform that can hold it. */
public final class Standings {

    private Standings() {}

    /** Costs are those under an access profile, of all offers where none is named. */
    public static Placings of(Relations relations, String part, Optional<Access> access) {
        Space space = Space.of(relations);
        List<String> leading = relations.catalog().platforms().keySet().stream().filter(platform -> space.leadsTo(platform, List.of(part))).toList();
        Landscape landscape = space.landscape(leading);
        fettle.space.worth.Comparison comparison = new fettle.space.worth.Comparison(landscape, access);
        List<Placing> known = landscape.platforms().stream().flatMap(platform -> comparison.placings(platform, part).stream()).toList();
        SortedMap<String, Undecided> open = new TreeMap<>();
        landscape.folded().forEach((platform, folded) -> folded.undecided().ifPresent(why -> open.put(platform, why)));
        return new Placings(known, open);
    }
}

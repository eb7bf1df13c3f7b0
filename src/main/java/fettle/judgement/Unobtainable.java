package fettle.judgement;

import fettle.catalog.Access;
import fettle.catalog.Build;
import fettle.catalog.Catalog;
import fettle.catalog.Fact;
import fettle.catalog.Offer;
import fettle.catalog.Part;
import fettle.document.Origin;
import fettle.space.BuildResult;
import fettle.space.Occurrence;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A part of a build that no offer open to the player sells.
 *
 * @param placed its occurrences in the build
 * @param closed the offers that sell it to others
 */
public record Unobtainable(Build build, Part part, List<Occurrence> placed, Optional<Access> access, List<Offer> closed) {

    private static final int OFFERS_TOLD = 4;

    static List<Unobtainable> of(Catalog catalog, BuildResult result) {
        Optional<Access> access = result.build().access().flatMap(named -> Optional.ofNullable(catalog.access().get(named.id())));
        return result.unobtainable().stream()
                .map(part -> new Unobtainable(
                        result.build(), part,
                        result.placement().stream().flatMap(placement -> placement.parts().stream()).filter(each -> each.part().equals(part.id())).toList(),
                        access,
                        catalog.offers().stream().filter(offer -> offer.part().equals(part.id())).toList()))
                .toList();
    }

    /** Who can't buy it. */
    public String buyer() {
        return access.map(Access::id).orElse("anyone");
    }

    /** Where the part sits. */
    public List<String> paths() {
        return placed.stream().map(Occurrence::path).toList();
    }

    /** Where the build says so. */
    public List<Origin> origins() {
        return placed.stream().map(each -> each.entry().origin()).toList();
    }

    /** The vendors, with their tiers, that sell it to others. */
    public List<String> sources() {
        return closed.stream().map(Offer::place).distinct().toList();
    }

    /** The entries that show it. */
    public List<Fact> because() {
        List<Fact> facts = new ArrayList<>();
        placed.forEach(each -> facts.add(each.entry()));
        access.ifPresent(facts::add);
        closed.stream().limit(OFFERS_TOLD).forEach(facts::add);
        return facts;
    }
}

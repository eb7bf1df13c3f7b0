package fettle.space;

import fettle.catalog.Catalog;
import fettle.catalog.Outfit;
import fettle.catalog.Part;
import fettle.relation.Relations;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * How a build stands to every limit with one outfit worn.
 *
 * @param outfit empty for nothing worn
 * @param limits in the order of the catalog's limits
 */
public record Worn(Optional<Outfit> outfit, List<LimitMargin> limits) {

    public Worn {
        limits = List.copyOf(limits);
    }

    /** Nothing worn, then each outfit of the catalog in order; none where the build's platform is unknown. */
    public static List<Worn> of(Relations relations, BuildResult result) {
        Catalog catalog = relations.catalog();
        if (result.placement().isEmpty()) {
            return List.of();
        }
        Placement placement = result.placement().get();
        Part platform = catalog.platforms().get(placement.platform());
        List<Part> placed = placement.parts().stream().map(part -> catalog.parts().get(part.part())).toList();
        BuildCheck check = new BuildCheck(relations);
        List<Optional<Outfit>> outfits = new ArrayList<>(List.of(Optional.empty()));
        catalog.outfits().values().forEach(outfit -> outfits.add(Optional.of(outfit)));
        return outfits.stream().map(outfit -> new Worn(outfit, check.limits(platform, placed, outfit))).toList();
    }
}

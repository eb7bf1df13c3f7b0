package fettle.space;

import fettle.catalog.Catalog;
import fettle.catalog.Outfit;
import fettle.catalog.Part;
import java.util.List;
import java.util.Optional;

/**
 * A limit that a build keeps with little to spare.
 *
 * @param breaking the outfits of the catalog with which the build would no longer keep it, in order
 */
public record CloseLimit(LimitMargin margin, List<Outfit> breaking) {

    public CloseLimit {
        breaking = List.copyOf(breaking);
    }

    /** The close limits of a build. */
    public static List<CloseLimit> of(Catalog catalog, BuildResult result) {
        List<LimitMargin> close = result.limits().stream().filter(LimitMargin::close).toList();
        if (close.isEmpty()) {
            return List.of();
        }
        Placement placement = result.placement().orElseThrow();
        Part platform = catalog.platforms().get(placement.platform());
        List<Part> placed = placement.parts().stream().map(each -> catalog.parts().get(each.part())).toList();
        return close.stream()
                .map(margin -> new CloseLimit(margin, catalog.outfits().values().stream()
                        .filter(outfit -> !LimitMargin.of(margin.limit(), Totals.of(catalog, platform, placed, margin.limit().loaded(), Optional.of(outfit))).holds())
                        .toList()))
                .toList();
    }

    /** The names of these outfits. */
    public List<String> outfits() {
        return breaking.stream().map(Outfit::id).toList();
    }
}

package fettle.space;

import fettle.catalog.Catalog;
import fettle.catalog.Outfit;
import java.util.List;

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
        Wardrobe wardrobe = Wardrobe.of(catalog, result.placement().orElseThrow());
        return close.stream().map(margin -> new CloseLimit(margin, wardrobe.breaking(margin.limit()))).toList();
    }

    /** The names of these outfits. */
    public List<String> outfits() {
        return breaking.stream().map(Outfit::id).toList();
    }
}

package fettle.space;

import fettle.catalog.Catalog;
import fettle.catalog.Outfit;
import java.util.List;
import java.util.Optional;

/**
 * A limit that a build doesn't keep, and the other outfits with which it would.
 *
 * @param burden what is worn, where the build would keep it with nothing worn
 * @param relief the outfits of the catalog with which it would keep it, in order
 */
public record ExceededLimit(LimitMargin margin, Optional<Outfit> burden, List<Outfit> relief) {

    public ExceededLimit {
        relief = List.copyOf(relief);
    }

    /** The limits that a build doesn't keep. */
    public static List<ExceededLimit> of(Catalog catalog, BuildResult result) {
        List<LimitMargin> exceeded = result.limits().stream().filter(margin -> !margin.holds()).toList();
        if (exceeded.isEmpty()) {
            return List.of();
        }
        Wardrobe wardrobe = Wardrobe.of(catalog, result.placement().orElseThrow());
        Optional<Outfit> worn = result.build().outfit().flatMap(outfit -> Optional.ofNullable(catalog.outfits().get(outfit.id())));
        return exceeded.stream()
                .map(margin -> new ExceededLimit(
                        margin, worn.filter(outfit -> wardrobe.keeps(margin.limit(), Optional.empty())), wardrobe.keeping(margin.limit())))
                .toList();
    }

    /** The id of the burden. */
    public Optional<String> worn() {
        return burden.map(Outfit::id);
    }

    /** The ids of the relief. */
    public List<String> outfits() {
        return relief.stream().map(Outfit::id).toList();
    }
}

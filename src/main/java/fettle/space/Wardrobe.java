package fettle.space;

import fettle.catalog.Catalog;
import fettle.catalog.Limit;
import fettle.catalog.Outfit;
import fettle.catalog.Part;
import java.util.List;
import java.util.Optional;

/** Which outfits of a catalog leave a build within a limit. */
record Wardrobe(Catalog catalog, Part platform, List<Part> placed) {

    static Wardrobe of(Catalog catalog, Placement placement) {
        return new Wardrobe(
                catalog, catalog.platforms().get(placement.platform()), placement.parts().stream().map(each -> catalog.parts().get(each.part())).toList());
    }

    /** The outfits with which the limit holds, in order. */
    List<Outfit> keeping(Limit limit) {
        return catalog.outfits().values().stream().filter(outfit -> keeps(limit, Optional.of(outfit))).toList();
    }

    /** The outfits with which it doesn't, in order. */
    List<Outfit> breaking(Limit limit) {
        return catalog.outfits().values().stream().filter(outfit -> !keeps(limit, Optional.of(outfit))).toList();
    }

    /** Whether it holds with an outfit worn, or with none. */
    boolean keeps(Limit limit, Optional<Outfit> worn) {
        return LimitMargin.of(limit, Totals.of(catalog, platform, placed, limit.loaded(), worn)).holds();
    }
}

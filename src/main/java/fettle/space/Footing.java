package fettle.space;

import fettle.catalog.BuildEntry;
import fettle.catalog.Catalog;
import fettle.catalog.Part;
import fettle.relation.Relations;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;

/**
 * What a build is measured against: the platform as it comes.
 *
 * @param factory whether the platform says what it comes with; else it is taken bare
 * @param totals what it comes to, loaded as the build says, without outfit
 */
public record Footing(boolean factory, SortedMap<String, BigDecimal> totals) {

    /** The footing of a build; empty where its platform is unknown. */
    public static Optional<Footing> of(Relations relations, BuildResult result) {
        return result.placement().map(placement -> {
            Catalog catalog = relations.catalog();
            Part platform = catalog.platforms().get(placement.platform());
            List<BuildEntry> comesWith = platform.factory();
            List<Part> placed = Placement.of(relations, platform.id(), comesWith).parts().stream().map(part -> catalog.parts().get(part.part())).toList();
            return new Footing(!comesWith.isEmpty(), Totals.of(catalog, platform, placed, result.build().loaded(), Optional.empty()));
        });
    }
}

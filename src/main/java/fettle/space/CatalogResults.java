package fettle.space;

import fettle.catalog.Catalog;
import fettle.relation.Relations;
import java.util.ArrayList;
import java.util.List;

/** All that is computed about a catalog by itself, as facts for the rules that judge it. */
public final class CatalogResults {

    private CatalogResults() {}

    /** The results, in a fixed order. */
    public static List<Object> of(Relations relations) {
        Catalog catalog = relations.catalog();
        Terrain terrain = Terrain.of(relations);
        List<Reach> reaches = catalog.platforms().keySet().stream().map(platform -> Reach.of(terrain, terrain.number(platform))).toList();
        List<Object> results = new ArrayList<>();
        results.addAll(Homes.of(relations, terrain, reaches));
        for (int slot = 0; slot < terrain.slots().size(); slot++) {
            results.add(new SlotChoice(relations.slot(terrain.slots().get(slot)).orElseThrow(), terrain.candidates()[slot].length));
        }
        results.addAll(Circle.of(relations, terrain));
        results.addAll(ReachedStat.of(relations, reaches));
        results.addAll(SelfConflict.of(relations, terrain));
        results.addAll(FactoryCheck.of(relations));
        results.addAll(Outlier.of(catalog));
        results.addAll(Lacking.of(catalog));
        results.addAll(PricedOffer.of(catalog));
        results.addAll(Sighting.of(catalog));
        return results;
    }
}

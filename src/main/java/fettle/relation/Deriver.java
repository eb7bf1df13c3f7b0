package fettle.relation;

import fettle.catalog.Catalog;
import fettle.engine.RuleBase;
import fettle.engine.Unit;
import java.util.Map;

/** Runs the relation rules over a catalog. */
public final class Deriver {

    private Deriver() {}

    /** All relations that the rules derive from the catalog. */
    public static Relations derive(RuleBase rules, Catalog catalog) {
        Shapes shapes = new Shapes(catalog);
        RelationCollector collector = new RelationCollector(catalog, shapes);
        rules.run(Unit.RELATION, Map.of("relations", collector), RelationFacts.of(catalog, shapes));
        return new Relations(catalog, shapes, collector);
    }
}

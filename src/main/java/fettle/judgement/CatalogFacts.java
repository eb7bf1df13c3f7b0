package fettle.judgement;

import fettle.catalog.Catalog;
import java.util.ArrayList;
import java.util.List;

/** Lays a catalog and what was computed from it out as the facts that judgement rules match. */
final class CatalogFacts {

    private CatalogFacts() {}

    static List<Object> of(CatalogReading reading) {
        Catalog catalog = reading.catalog();
        List<Object> facts = new ArrayList<>(catalog.heads());
        facts.addAll(catalog.entries());
        facts.addAll(catalog.references());
        return facts;
    }
}

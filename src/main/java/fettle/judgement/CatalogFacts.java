package fettle.judgement;

import fettle.catalog.Catalog;
import fettle.catalog.Part;
import fettle.document.DeepStack;
import fettle.engine.RuleIndex;
import fettle.space.CatalogResults;
import fettle.space.Landscape;
import fettle.space.Sounding;
import fettle.space.Space;
import fettle.space.worth.Middles;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;

/** Lays a catalog and what was computed from it out as the facts that judgement rules match. */
final class CatalogFacts {

    private CatalogFacts() {}

    static List<Object> of(CatalogReading reading, RuleIndex rules) {
        List<Object> facts = written(reading, rules);
        Space space = Space.of(reading.relations());
        if (WorthFacts.comparable(reading.catalog())) {
            Landscape landscape = space.landscape(reading.catalog().platforms().keySet());
            // Before the rest, which looks things up in the landscape too.
            Middles middles = new Middles(landscape);
            List<Supplier<List<Object>>> beside = List.of(
                    () -> SpaceFacts.of(reading.relations(), Space.of(reading.relations()), Sounding.of(reading.relations(), landscape)),
                    () -> WorthFacts.of(reading.catalog(), landscape),
                    () -> MiddleFacts.of(reading.catalog(), landscape, middles));
            DeepStack.each(beside, Supplier::get).forEach(facts::addAll);
        } else {
            facts.addAll(SpaceFacts.of(reading.relations(), space, Sounding.of(reading.relations())));
        }
        return facts;
    }

    /** What is written and what follows at once, without what holds of all builds. */
    static List<Object> written(CatalogReading reading, RuleIndex rules) {
        Catalog catalog = reading.catalog();
        List<Object> facts = new ArrayList<>();
        facts.add(Reading.of(reading.documents()));
        facts.addAll(catalog.heads());
        facts.addAll(catalog.entries());
        facts.addAll(catalog.references());
        facts.addAll(new Names(catalog, rules).facts(catalog.references()));
        facts.addAll(catalog.attributes().values());
        facts.addAll(catalog.currencies().values());
        facts.addAll(catalog.vendors().values());
        facts.addAll(catalog.offers());
        facts.addAll(AccessTier.of(catalog));
        for (Map<String, Part> hosts : List.of(catalog.platforms(), catalog.parts())) {
            for (Part host : hosts.values()) {
                facts.add(host);
                facts.addAll(host.stats().values());
                facts.addAll(host.loaded().values());
            }
        }
        facts.addAll(CatalogResults.of(reading.relations()));
        return facts;
    }
}

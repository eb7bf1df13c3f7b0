package fettle.judgement;

import fettle.catalog.Catalog;
import fettle.catalog.Lens;
import fettle.catalog.Part;
import fettle.catalog.Stat;
import fettle.document.DeepStack;
import fettle.document.Origin;
import fettle.document.Places;
import fettle.engine.RuleIndex;
import fettle.relation.Relations;
import fettle.space.CatalogResults;
import fettle.space.Lacking;
import fettle.space.Landscape;
import fettle.space.Sounding;
import fettle.space.Space;
import fettle.space.worth.Middles;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import java.util.stream.Collectors;

/** Lays a catalog and what was computed from it out as the facts that judgement rules match. */
final class CatalogFacts {

    private CatalogFacts() {}

    static List<Object> of(CatalogReading reading, RuleIndex rules) {
        List<Object> facts = new ArrayList<>();
        List<Supplier<List<Object>>> beside = List.of(() -> written(reading, rules), () -> computed(reading));
        DeepStack.each(beside, Supplier::get).forEach(facts::addAll);
        return facts;
    }

    /** What holds of all builds. */
    private static List<Object> computed(CatalogReading reading) {
        Relations relations = reading.relations();
        Space space = Space.of(relations);
        if (!WorthFacts.comparable(reading.catalog())) {
            return SpaceFacts.of(relations, space, Sounding.of(relations), Scope.ALL);
        }
        HalfRead halfRead = reading.halfRead();
        Landscape landscape = space.landscape(reading.catalog().platforms().keySet());
        // Before the rest, which looks things up in the landscape too.
        Middles middles = new Middles(landscape, Optional.empty());
        // What mostly takes longest comes first.
        List<Supplier<List<Object>>> beside = List.of(
                () -> MiddleFacts.of(reading.catalog(), halfRead, reading.catalog().lenses().values(), landscape, middles),
                () -> WorthFacts.of(reading.catalog(), halfRead, landscape),
                () -> SpaceFacts.of(relations, Space.of(relations), Sounding.of(relations, landscape), Scope.ALL));
        return DeepStack.each(beside, Supplier::get).stream().flatMap(List::stream).toList();
    }

    /** All that bears on some things, and whatever else is found on the way. */
    static List<Object> on(Scope scope, CatalogReading reading, RuleIndex rules, Standings standings) {
        Catalog catalog = reading.catalog();
        List<Object> facts = written(reading, rules);
        Space space = Space.of(reading.relations());
        Sounding sounding = WorthFacts.comparable(catalog) ? Sounding.of(reading.relations(), standings.landscape()) : Sounding.of(reading.relations());
        facts.addAll(SpaceFacts.of(reading.relations(), space, sounding, scope));
        if (WorthFacts.comparable(catalog)) {
            Landscape landscape = standings.landscape();
            HalfRead halfRead = reading.halfRead();
            Collection<Lens> lenses = catalog.lenses().values();
            Set<String> platforms = catalog.platforms().values().stream().filter(platform -> scope.takes(platform.subject())).map(Part::id).collect(Collectors.toSet());
            if (!platforms.isEmpty()) {
                facts.addAll(WorthFacts.of(catalog, halfRead, space.landscape(platforms)));
            }
            for (Part part : catalog.parts().values()) {
                if (scope.takes(part.subject())) {
                    facts.addAll(WorthFacts.of(catalog, halfRead, landscape, part.id(), standings.of(part.id(), Optional.empty()).known()));
                    facts.addAll(MiddleFacts.of(catalog, halfRead, lenses, landscape, new Middles(landscape, Optional.of(Set.of(part.id())))));
                }
            }
            List<Lens> wanted = lenses.stream().filter(lens -> scope.takes("lens:" + lens.id())).toList();
            if (!wanted.isEmpty()) {
                facts.addAll(MiddleFacts.of(catalog, halfRead, wanted, landscape, new Middles(landscape, Optional.empty())));
            }
        }
        return facts;
    }

    /** What is written and what follows at once, without what holds of all builds. */
    static List<Object> written(CatalogReading reading, RuleIndex rules) {
        Catalog catalog = reading.catalog();
        List<Object> facts = new ArrayList<>();
        facts.add(Reading.of(reading));
        facts.addAll(catalog.heads());
        facts.addAll(catalog.entries());
        facts.addAll(SharedId.of(catalog.entries()));
        facts.addAll(catalog.references());
        facts.addAll(new Names(catalog, rules).facts(catalog.references()));
        facts.addAll(RepeatedName.of(catalog.references()));
        facts.addAll(OddName.of(catalog));
        facts.addAll(catalog.attributes().values());
        facts.addAll(catalog.currencies().values());
        facts.addAll(catalog.vendors().values());
        facts.addAll(catalog.lenses().values());
        facts.addAll(catalog.offers());
        facts.addAll(catalog.constraints().values());
        facts.addAll(AccessTier.of(catalog));
        for (Map<String, Part> hosts : List.of(catalog.platforms(), catalog.parts())) {
            for (Part host : hosts.values()) {
                facts.add(host);
                facts.addAll(host.stats().values());
                facts.addAll(host.loaded().values());
            }
        }
        Places places = reading.places();
        CatalogResults.of(reading.relations()).stream().filter(result -> !(result instanceof Lacking lacking && (unread(places, lacking) || misnamed(catalog, lacking)))).forEach(facts::add);
        return facts;
    }

    /** Whether a figure that seems to be missing is written, only not so that it could be read. */
    private static boolean unread(Places places, Lacking lacking) {
        Origin part = lacking.part().origin();
        return !places.inside(part, lacking.property() + "/" + lacking.attribute()).equals(part);
    }

    /** Whether it may be written under another name: the part has a figure of no attribute that there is. */
    private static boolean misnamed(Catalog catalog, Lacking lacking) {
        Map<String, Stat> figures = lacking.loaded() ? lacking.part().loaded() : lacking.part().stats();
        return !catalog.attributes().keySet().containsAll(figures.keySet());
    }
}

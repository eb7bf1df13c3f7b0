package fettle.relation;

import fettle.catalog.Catalog;
import fettle.catalog.Part;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;

/** Lays a catalog out as the facts that relation rules match: parts, slots and what each states, one fact a statement. */
final class RelationFacts {

    private RelationFacts() {}

    static List<Object> of(Catalog catalog, Shapes shapes) {
        List<Object> facts = new ArrayList<>(shapes.facts());
        Set<String> zones = new TreeSet<>();
        for (Map<String, Part> hosts : List.of(catalog.platforms(), catalog.parts())) {
            for (Part part : hosts.values()) {
                facts.add(part);
                facts.addAll(part.names());
                facts.addAll(part.traits());
                facts.addAll(part.claims());
                part.claims().forEach(claim -> zones.add(claim.zone()));
                facts.addAll(part.blocks());
                facts.addAll(part.excludes());
                facts.addAll(part.needs());
                part.slots().forEach(slot -> {
                    facts.add(slot);
                    facts.addAll(slot.tags());
                });
            }
        }
        facts.addAll(catalog.constraints().values());
        zones.forEach(zone -> facts.add(new Zone(zone)));
        return facts;
    }
}

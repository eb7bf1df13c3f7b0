package fettle.space;

import fettle.catalog.Catalog;
import fettle.catalog.CatalogReader;
import fettle.document.Documents;
import fettle.engine.RuleBase;
import fettle.relation.Deriver;
import fettle.relation.Relations;
import java.nio.charset.StandardCharsets;
import java.util.List;

/** Catalogs written down in tests, and the relations that the rules derive from them. */
public final class Catalogs {

    private Catalogs() {}

    /** Reads JSON in which single quotes may stand for double ones. */
    static Catalog read(String json) {
        byte[] bytes = json.replace('\'', '"').getBytes(StandardCharsets.UTF_8);
        return CatalogReader.read(List.of(Documents.content("catalog.json", bytes)));
    }

    public static Relations relations(String json) {
        return Deriver.derive(RuleBase.builtIn(), read(json));
    }

    static Survey.Known survey(String json, String platform) {
        return (Survey.Known) Space.of(relations(json)).survey().get(platform);
    }
}

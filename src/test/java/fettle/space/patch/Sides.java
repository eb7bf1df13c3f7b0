package fettle.space.patch;

import fettle.catalog.Build;
import fettle.catalog.BuildReader;
import fettle.catalog.Catalog;
import fettle.catalog.CatalogReader;
import fettle.document.Document;
import fettle.document.DocumentSet;
import fettle.document.Documents;
import fettle.engine.RuleBase;
import fettle.relation.Deriver;
import fettle.relation.Relations;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ObjectNode;

/** Two catalogs read and compared. */
record Sides(Relations old, Relations now, CatalogChanges changes) {

    private static final JsonMapper JSON = new JsonMapper();

    static Sides of(JsonNode old, JsonNode now) {
        return of(old.toString(), now.toString());
    }

    /** Of two texts in YAML or JSON. */
    static Sides of(String old, String now) {
        DocumentSet before = documents("old.yaml", old);
        DocumentSet after = documents("new.yaml", now);
        return new Sides(derive(CatalogReader.read(before.documents())), derive(CatalogReader.read(after.documents())), CatalogChanges.between(before, after));
    }

    static Relations derive(Catalog catalog) {
        return Deriver.derive(RuleBase.builtIn(), catalog);
    }

    private static DocumentSet documents(String name, String text) {
        return new DocumentSet(List.of(document(name, text)));
    }

    private static Document document(String name, String text) {
        Document document = Documents.content(name, text.getBytes(StandardCharsets.UTF_8));
        if (!document.problems().isEmpty()) {
            throw new IllegalArgumentException(document.problems().toString());
        }
        return document;
    }

    List<FitGroup> lost() {
        return FitChanges.lost(old, now, changes);
    }

    List<FitGroup> gained() {
        return FitChanges.gained(old, now, changes);
    }

    List<BuildShift> shifts(List<JsonNode> builds) {
        return BuildShifts.of(builds(builds), old, now, changes, change -> false, Sides::derive);
    }

    BuildShift shift(String build) {
        return BuildShifts.of(BuildReader.read(document("build.yaml", "build: " + build)), old, now, changes, change -> false, Sides::derive).get(0);
    }

    static List<Build> builds(List<JsonNode> builds) {
        List<Build> read = new ArrayList<>();
        for (JsonNode build : builds) {
            ObjectNode root = JSON.createObjectNode();
            root.set("build", build);
            read.addAll(BuildReader.read(document("build.json", root.toString())));
        }
        return read;
    }

    /** The differences, one a line: subject, property, and what became of it. */
    List<String> lines() {
        return changes.all().stream().map(Sides::line).toList();
    }

    static String line(fettle.space.Change change) {
        return change.entry().subject() + (change.whole() ? "" : " " + change.what()) + ": " + change.from().map(value -> side(change, value)).orElse("-") + " -> "
                + change.to().map(value -> side(change, value)).orElse("-");
    }

    private static String side(fettle.space.Change change, fettle.space.Value value) {
        return change.whole() ? "there" : value.text();
    }
}

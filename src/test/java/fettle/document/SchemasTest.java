package fettle.document;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.networknt.schema.Schema;
import com.networknt.schema.SchemaLocation;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** Tests the published schemas themselves, and how what they find is placed and told. */
class SchemasTest {
    private static final List<String> FILES = List.of("catalog.schema.json", "build.schema.json");
    private static final Set<String> SILENT = Set.of("$schema", "$id", "$defs", "title", "description", "default", "format", "then", "else");

    private final Schemas schemas = new Schemas();

    private static JsonNode schema(String file) throws IOException {
        try (InputStream stream = SchemasTest.class.getResourceAsStream("/schema/" + file)) {
            return new JsonMapper().readTree(stream);
        }
    }

    private static List<String> told(List<SchemaProblem> problems) {
        return problems.stream().map(problem -> problem.origin().line() + ":" + problem.origin().column() + " expected "
                + problem.expected() + ", found " + problem.found() + problem.meant().map(name -> "; meant " + name).orElse("")).toList();
    }

    @Test
    void the_schemas_are_schemas_by_the_metaschema_of_2020_12() throws IOException {
        Schema metaschema = SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
                .getSchema(SchemaLocation.of("https://json-schema.org/draft/2020-12/schema"));
        for (String file : FILES) {
            assertEquals(List.of(), metaschema.validate(schema(file)), file);
        }
        assertEquals(1, metaschema.validate(new JsonMapper().readTree("{\"type\": \"objekt\"}")).stream()
                .filter(error -> error.getKeyword().equals("enum")).count());
    }

    /** Visits every subschema; keyword positions only, not the names of properties. */
    private static void visit(JsonNode schema, String path, Map<String, JsonNode> found) {
        if (!schema.isObject()) {
            return;
        }
        found.put(path, schema);
        for (Map.Entry<String, JsonNode> keyword : schema.properties()) {
            String place = path + "/" + keyword.getKey();
            switch (keyword.getKey()) {
                case "properties", "$defs" -> keyword.getValue().properties()
                        .forEach(named -> visit(named.getValue(), place + "/" + named.getKey(), found));
                case "items", "additionalProperties", "propertyNames", "if", "then", "else" -> visit(keyword.getValue(), place, found);
                default -> { }
            }
        }
    }

    private static Map<String, JsonNode> subschemas(String file) throws IOException {
        Map<String, JsonNode> found = new TreeMap<>();
        visit(schema(file), "", found);
        assertTrue(found.size() > 30, file);
        return found;
    }

    @Test
    void every_keyword_in_the_schemas_is_one_that_we_check() throws IOException {
        Set<String> known = new TreeSet<>(SILENT);
        for (SchemaKeyword keyword : SchemaKeyword.values()) {
            known.add(keyword.getValue());
        }
        for (String file : FILES) {
            subschemas(file).forEach((path, schema) -> schema.propertyNames().forEach(name -> assertTrue(known.contains(name), file + path + "/" + name)));
        }
    }

    @Test
    void every_property_has_a_description_to_show_in_an_editor() throws IOException {
        for (String file : FILES) {
            JsonNode root = schema(file);
            List<String> bare = new ArrayList<>();
            subschemas(file).forEach((path, schema) -> {
                if (path.matches(".*/properties/[^/]+") && !path.contains("/then/") && description(root, schema).length() < 15) {
                    bare.add(path);
                }
            });
            assertEquals(List.of(), bare, file);
        }
    }

    private static String description(JsonNode root, JsonNode schema) {
        if (schema.has("description")) {
            return schema.get("description").asString();
        }
        return schema.has("$ref") ? description(root, root.at(schema.get("$ref").asString().substring(1))) : "";
    }

    @Test
    void every_object_but_maps_takes_label_and_note_and_no_unknown_property() throws IOException {
        for (String file : FILES) {
            List<String> lacking = new ArrayList<>();
            subschemas(file).forEach((path, schema) -> {
                boolean isEntry = schema.has("properties") && !path.endsWith("/then");
                if (isEntry && !(schema.get("properties").has("label") && schema.get("properties").has("note")
                        && schema.path("additionalProperties").isBoolean())) {
                    lacking.add(path);
                }
            });
            assertEquals(List.of(), lacking, file);
        }
    }

    @Test
    void what_both_schemas_define_they_define_alike() throws IOException {
        JsonNode catalog = schema("catalog.schema.json").get("$defs");
        JsonNode build = schema("build.schema.json").get("$defs");
        Set<String> shared = new TreeSet<>(catalog.propertyNames());
        shared.retainAll(build.propertyNames());
        assertEquals(Set.of("id", "label", "note", "occupant", "occupants", "path", "placing"), shared);
        shared.forEach(name -> assertEquals(catalog.get(name), build.get(name), name));
    }

    @Test
    void problems_stand_at_their_lines_in_json_and_in_yaml() {
        assertEquals(List.of("2:3 expected a property of a catalog document, found \"prats\"; meant parts"),
                told(schemas.checkCatalog(Trees.read("a.json", "{\n  \"prats\": []\n}"))));
        String yaml = """
                parts:
                  - id: p
                    kind: k
                    stats:
                      grip: high
                  - id: q
                    kynd: k
                limits:
                  - {id: l, attribute: a, atLeast: 1, atMost: 2}
                """;
        assertEquals(List.of("5:13 expected a number, found the text \"high\"", "7:5 expected a property of a part, found \"kynd\"; meant kind",
                "9:39 expected either atLeast or atMost, not both, found \"atMost\" too"), told(schemas.checkCatalog(Trees.read("a.yaml", yaml))));
    }

    @Test
    void what_stands_too_deep_is_told_where_it_belongs() {
        String yaml = """
                parts:
                  - id: p
                    kind: k
                    stats:
                      grip: [1]
                      slots: [{ id: s }]
                    slots:
                      - { id: t, mounts: [m], claims: [z] }
                """;
        assertEquals(List.of("5:13 expected a number, found a list of one", "6:14 expected a number, found a list of one as \"slots\", which belongs to the part around it",
                "8:31 expected a property of a slot: id, label, note, mounts, accepts, rejects, required, tags, units, most or repeats, found \"claims\","
                        + " which belongs to the part around it"), told(schemas.checkCatalog(Trees.read("a.yaml", yaml))));
    }

    @Test
    void a_newline_behind_an_id_is_no_part_of_it() {
        // Not among the cases for two validators: the other one reads $ in patterns as Java does, so that it lets this pass.
        assertEquals(1, schemas.checkCatalog(Trees.read("a.json", "{\"zones\": [{\"id\": \"z\\n\"}]}")).size());
    }

    @Test
    void points_must_rise() {
        String yaml = "limits: [{id: l, attribute: a, atMost: {by: b, points: [[1, 5], [1.0, 6], [2, 7], [1.5, 8]]}}]";
        assertEquals(List.of("1:66 expected an x above 1, as x rises from point to point, found the number 1.0",
                "1:84 expected an x above 2, as x rises from point to point, found the number 1.5"),
                told(schemas.checkCatalog(Trees.read("a.yaml", yaml))));
    }

    @Test
    void what_could_not_be_read_is_not_told_again() {
        assertEquals(List.of(), schemas.checkCatalog(Trees.read("a.json", "{\"goods\": [{\"id\": \"g\", \"value\": 1e999}]}")));
        assertEquals(List.of(), schemas.checkCatalog(Trees.read("a.json", "{\"goods\": [{\"id\": \"g\", \"val")));
        assertEquals(List.of(), schemas.checkBuild(Trees.read("a.json", "{\"label\": \"x\", \"build\": {\"id\": \"g\", \"pla")));
        assertEquals(List.of(), schemas.checkBuild(Trees.read("a.json", "")));
        assertEquals(List.of("1:33 expected a number of at least 0, found null"),
                told(schemas.checkCatalog(Trees.read("a.json", "{\"goods\": [{\"id\": \"g\", \"value\": null}]}"))));
    }

    @Test
    void one_slip_is_told_once() {
        assertEquals(List.of("1:1 expected a property of a build document: $schema, label, note, build or builds, found \"parts\""),
                told(schemas.checkBuild(Trees.read("b.yaml", "parts: []"))));
        assertEquals(List.of("1:1 expected a build, or a list of builds in this build document, found neither"), told(schemas.checkBuild(Trees.read("b.yaml", "label: x"))));
        assertEquals(List.of(), told(schemas.checkBuild(Trees.read("b.yaml", "1: 2\nbuild: {id: b, platform: p}"))));
        assertEquals(List.of("3:6 expected a property of a good: id, label, note or value, found \"<<\""),
                told(schemas.checkCatalog(Trees.read("a.yaml", "goods:\n  - &g {id: g, value: 1}\n  - {<<: *g, id: h}"))));
    }

    @Test
    void one_instance_checks_many_documents_of_both_sorts() {
        for (int i = 0; i < 3; i++) {
            assertEquals(List.of(), schemas.checkBuild(Trees.read("b.yaml", "build: {id: b, platform: p}")));
            assertEquals(List.of(), schemas.checkCatalog(Trees.read("a.yaml", "kinds: [{id: k}]")));
            assertEquals(1, schemas.checkCatalog(Trees.read("a.yaml", "build: {id: b, platform: p}")).size());
        }
    }
}

package fettle.document;

import static org.junit.jupiter.api.Assertions.assertNotNull;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import tools.jackson.core.JsonPointer;
import tools.jackson.databind.DeserializationFeature;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;
import tools.jackson.dataformat.yaml.YAMLMapper;

/** Right documents, and wrong ones that differ from a right one in a single place, as JSON. */
final class SchemaCases {
    /** A wrong document, and what is to be said of it: its pointer, a colon, then what was expected and found. */
    record Wrong(String from, String at, String json, String says) {
        @Override
        public String toString() {
            return from + " changed at " + at;
        }
    }

    private static final JsonMapper JSON = new JsonMapper();
    private static final YAMLMapper YAML = YAMLMapper.builder().enable(DeserializationFeature.USE_BIG_DECIMAL_FOR_FLOATS).build();

    private SchemaCases() {}

    static Map<String, String> right(String file) {
        Map<String, String> documents = new LinkedHashMap<>();
        read(file).properties().forEach(named -> documents.put(named.getKey(), JSON.writeValueAsString(named.getValue())));
        return documents;
    }

    static List<Wrong> wrong(String rightFile, String wrongFile) {
        JsonNode right = read(rightFile);
        List<Wrong> cases = new ArrayList<>();
        for (JsonNode change : read(wrongFile)) {
            String from = change.get("from").asString();
            String at = change.get("at").asString();
            assertNotNull(right.get(from), from);
            JsonNode changed = changed(right.get(from).deepCopy(), JsonPointer.compile(at), change);
            cases.add(new Wrong(from, at, JSON.writeValueAsString(changed), change.get("says").asString()));
        }
        return cases;
    }

    private static JsonNode changed(JsonNode document, JsonPointer place, JsonNode change) {
        if (place.matches()) {
            return change.get("set");
        }
        JsonNode parent = document.at(place.head());
        String name = place.last().getMatchingProperty();
        if (parent instanceof ArrayNode list) {
            list.set(place.last().getMatchingIndex(), change.get("set"));
        } else if (change.has("drop")) {
            assertNotNull(((ObjectNode) parent).remove(name), place.toString());
        } else {
            ((ObjectNode) parent).set(name, change.get("set"));
        }
        return document;
    }

    private static JsonNode read(String file) {
        try (InputStream stream = SchemaCases.class.getResourceAsStream(file)) {
            return YAML.readTree(stream);
        } catch (IOException broken) {
            throw new UncheckedIOException(broken);
        }
    }
}

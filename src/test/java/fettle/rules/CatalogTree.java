package fettle.rules;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Random;
import tools.jackson.databind.DeserializationFeature;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;
import tools.jackson.dataformat.yaml.YAMLMapper;

/** A catalog as one document in memory, to be changed as a whole and written out again. */
record CatalogTree(ObjectNode root) {

    private static final YAMLMapper YAML = YAMLMapper.builder().enable(DeserializationFeature.USE_BIG_DECIMAL_FOR_FLOATS).build();

    private static final JsonMapper JSON = new JsonMapper();

    /** Reads a YAML document. */
    static CatalogTree read(Path document) throws IOException {
        return new CatalogTree((ObjectNode) YAML.readTree(Files.readString(document)));
    }

    CatalogTree copy() {
        return new CatalogTree(root.deepCopy());
    }

    ArrayNode section(String name) {
        return root.withArray(name);
    }

    /** Writes it as one document into a new folder. */
    Path write(Path scratch) throws IOException {
        Path folder = Files.createTempDirectory(scratch, "catalog");
        Files.writeString(folder.resolve("catalog.json"), JSON.writeValueAsString(root));
        return folder;
    }

    /** Writes it into a new folder as several documents, with every entry of a section in any of them and in any order. */
    Path scatter(Path scratch, Random chance) throws IOException {
        Path folder = Files.createTempDirectory(scratch, "catalog");
        List<ObjectNode> documents = new ArrayList<>();
        for (int i = 0; i <= chance.nextInt(4); i++) {
            documents.add(JSON.createObjectNode());
        }
        List<Map.Entry<String, JsonNode>> sections = new ArrayList<>(root.properties());
        Collections.shuffle(sections, chance);
        for (Map.Entry<String, JsonNode> section : sections) {
            if (section.getValue() instanceof ArrayNode entries) {
                List<JsonNode> shuffled = new ArrayList<>();
                entries.forEach(shuffled::add);
                Collections.shuffle(shuffled, chance);
                shuffled.forEach(entry -> documents.get(chance.nextInt(documents.size())).withArray(section.getKey()).add(entry));
            } else {
                documents.get(chance.nextInt(documents.size())).set(section.getKey(), section.getValue());
            }
        }
        for (int i = 0; i < documents.size(); i++) {
            Files.writeString(folder.resolve("document-" + i + ".json"), JSON.writeValueAsString(documents.get(i)));
        }
        return folder;
    }
}

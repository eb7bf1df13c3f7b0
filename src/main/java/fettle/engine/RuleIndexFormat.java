package fettle.engine;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tools.jackson.core.JacksonException;
import tools.jackson.core.JsonGenerator;
import tools.jackson.core.JsonParser;
import tools.jackson.core.JsonToken;
import tools.jackson.core.ObjectReadContext;
import tools.jackson.core.ObjectWriteContext;
import tools.jackson.core.json.JsonFactory;

/**
 * Writes and reads the index of rules as JSON, as a stream: data binding would cost more than all the rest.
 *
 * <p>{@code {"digest":…,"models":{unit:[class…]},"rules":[{…}…]}}.
 */
final class RuleIndexFormat {
    private static final JsonFactory FACTORY = new JsonFactory();

    private RuleIndexFormat() {
    }

    static void write(RuleIndex index, OutputStream out) {
        try (JsonGenerator json = FACTORY.createGenerator(ObjectWriteContext.empty(), out)) {
            json.writeStartObject();
            json.writeStringProperty("digest", index.digest());
            json.writeName("models");
            units(json, index.models());
            json.writeArrayPropertyStart("rules");
            for (RuleInfo rule : index.rules()) {
                json.writeStartObject();
                json.writeStringProperty("name", rule.name());
                json.writeStringProperty("topic", rule.topic());
                if (rule.severity().isPresent()) {
                    json.writeStringProperty("severity", rule.severity().get().word());
                }
                json.writeStringProperty("law", rule.law());
                json.writeStringProperty("message", rule.message());
                if (rule.alike().isPresent()) {
                    json.writeStringProperty("alike", rule.alike().get());
                }
                json.writeName("remedies");
                texts(json, rule.remedies());
                json.writeStringProperty("page", rule.page());
                json.writeName("drl");
                units(json, rule.drl());
                json.writeEndObject();
            }
            json.writeEndArray();
            json.writeEndObject();
        }
    }

    private static void units(JsonGenerator json, Map<Unit, List<String>> units) {
        json.writeStartObject();
        units.forEach((unit, names) -> {
            json.writeName(unit.name());
            texts(json, names);
        });
        json.writeEndObject();
    }

    private static void texts(JsonGenerator json, List<String> texts) {
        json.writeStartArray();
        texts.forEach(json::writeString);
        json.writeEndArray();
    }

    /** Reads what {@link #write} wrote; anything else is an {@link IOException}. */
    static RuleIndex read(InputStream in) throws IOException {
        try (JsonParser json = FACTORY.createParser(ObjectReadContext.empty(), in)) {
            String digest = "";
            Map<Unit, List<String>> models = Map.of();
            List<RuleInfo> rules = new ArrayList<>();
            expect(json, json.nextToken(), JsonToken.START_OBJECT);
            while (json.nextToken() == JsonToken.PROPERTY_NAME) {
                String name = json.currentName();
                json.nextToken();
                switch (name) {
                    case "digest" -> digest = json.getString();
                    case "models" -> models = units(json);
                    case "rules" -> {
                        while (json.nextToken() == JsonToken.START_OBJECT) {
                            rules.add(rule(json));
                        }
                    }
                    default -> throw new IOException("unknown key " + name);
                }
            }
            return new RuleIndex(digest, models, rules);
        } catch (JacksonException | IllegalArgumentException broken) {
            throw new IOException(broken.getMessage(), broken);
        }
    }

    private static RuleInfo rule(JsonParser json) throws IOException {
        Map<String, String> texts = new HashMap<>();
        List<String> remedies = List.of();
        Map<Unit, List<String>> drl = Map.of();
        while (json.nextToken() == JsonToken.PROPERTY_NAME) {
            String name = json.currentName();
            json.nextToken();
            switch (name) {
                case "remedies" -> remedies = texts(json);
                case "drl" -> drl = units(json);
                default -> texts.put(name, json.getString());
            }
        }
        return new RuleInfo(text(texts, "name"), text(texts, "topic"),
                Optional.ofNullable(texts.get("severity")).flatMap(Severity::ofWord), text(texts, "law"),
                text(texts, "message"), Optional.ofNullable(texts.get("alike")), remedies, text(texts, "page"), drl);
    }

    private static String text(Map<String, String> texts, String key) throws IOException {
        String text = texts.get(key);
        if (text == null) {
            throw new IOException("a rule has no " + key);
        }
        return text;
    }

    private static Map<Unit, List<String>> units(JsonParser json) throws IOException {
        Map<Unit, List<String>> units = new EnumMap<>(Unit.class);
        while (json.nextToken() == JsonToken.PROPERTY_NAME) {
            Unit unit = Unit.valueOf(json.currentName());
            json.nextToken();
            units.put(unit, texts(json));
        }
        return units;
    }

    private static List<String> texts(JsonParser json) throws IOException {
        List<String> texts = new ArrayList<>();
        expect(json, json.currentToken(), JsonToken.START_ARRAY);
        while (json.nextToken() == JsonToken.VALUE_STRING) {
            texts.add(json.getString());
        }
        return texts;
    }

    private static void expect(JsonParser json, JsonToken found, JsonToken wanted) throws IOException {
        if (found != wanted) {
            throw new IOException("expected " + wanted + " at " + json.currentLocation().offsetDescription());
        }
    }
}

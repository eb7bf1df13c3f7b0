package fettle.rules;

import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.UnaryOperator;
import java.util.regex.Pattern;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;
import tools.jackson.databind.node.StringNode;

/**
 * Gives every id, tag and trait value of a catalog another name: each letter becomes the one after it. So names keep their order, their length and
 * how near they are to each other.
 */
final class Renaming {

    private static final Pattern WORD = Pattern.compile("[a-z0-9](?:[a-z0-9._-]*[a-z0-9])?");

    /** Properties that hold one id, or a list of ids. */
    private static final Set<String> IDS = Set.of(
            "id", "kind", "part", "vendor", "currency", "good", "attribute", "by", "mounts", "claims", "tags", "blocks", "traits", "owned", "outfit", "access", "lens");

    /** Properties that hold lists of selectors, perhaps in groups. */
    private static final Set<String> SELECTORS = Set.of("accepts", "rejects", "excludes", "when", "need", "needs");

    /** Properties that hold an object with ids as names. */
    private static final Set<String> MAPS = Set.of("stats", "loaded", "effects", "weights", "vendors", "traits");

    private final Set<String> renamed = new TreeSet<>();

    /** The catalog with new names; the old ones are remembered. */
    CatalogTree of(CatalogTree catalog) {
        CatalogTree copy = catalog.copy();
        copy.root().properties().forEach(section -> {
            if (section.getValue() instanceof ArrayNode entries) {
                entries.forEach(this::rename);
            } else {
                rename(section.getValue());
            }
        });
        return copy;
    }

    /** A text with every old name in it replaced. */
    String of(String text) {
        return WORD.matcher(text).replaceAll(found -> renamed.contains(found.group()) ? shifted(found.group()) : found.group());
    }

    private void rename(JsonNode node) {
        if (node instanceof ObjectNode entry) {
            for (Map.Entry<String, JsonNode> property : Set.copyOf(entry.properties())) {
                entry.set(property.getKey(), value(property.getKey(), property.getValue()));
            }
        }
    }

    private JsonNode value(String name, JsonNode value) {
        if (MAPS.contains(name) && value instanceof ObjectNode map) {
            ObjectNode renamedMap = map.objectNode();
            map.properties().forEach(entry -> renamedMap.set(id(entry.getKey()), strings(entry.getValue(), this::id)));
            return renamedMap;
        }
        if (name.equals("factory") && value instanceof ObjectNode map) {
            ObjectNode renamedMap = map.objectNode();
            map.properties().forEach(entry -> renamedMap.set(words(entry.getKey()), strings(entry.getValue(), this::id)));
            return renamedMap;
        }
        if (IDS.contains(name)) {
            return strings(value, this::id);
        }
        if (SELECTORS.contains(name)) {
            return strings(value, this::selector);
        }
        if (name.equals("subject")) {
            return strings(value, this::selector);
        }
        if (value instanceof ArrayNode list) {
            list.forEach(this::rename);
        } else {
            rename(value);
        }
        return value;
    }

    private JsonNode strings(JsonNode value, UnaryOperator<String> change) {
        if (value.isString()) {
            return StringNode.valueOf(change.apply(value.asString()));
        }
        if (value instanceof ArrayNode list) {
            ArrayNode changed = list.arrayNode();
            list.forEach(item -> changed.add(strings(item, change)));
            return changed;
        }
        return value;
    }

    private String id(String id) {
        renamed.add(id);
        return shifted(id);
    }

    private String selector(String text) {
        int colon = text.indexOf(':');
        return text.substring(0, colon + 1) + words(text.substring(colon + 1));
    }

    private String words(String text) {
        return WORD.matcher(text).replaceAll(found -> id(found.group()));
    }

    private static String shifted(String id) {
        StringBuilder shifted = new StringBuilder();
        for (char letter : id.toCharArray()) {
            if (letter == 'z') {
                throw new IllegalArgumentException("there is no letter after the z of " + id);
            }
            shifted.append(letter >= 'a' ? (char) (letter + 1) : letter);
        }
        return shifted.toString();
    }
}

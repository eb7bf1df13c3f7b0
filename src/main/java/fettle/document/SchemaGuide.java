package fettle.document;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;

/** Tells someone who writes a document what its schema says of each place: which properties there may be, what they mean, which values there are. */
public final class SchemaGuide {

    private static final String LOCAL = "#/";
    private static final List<String> BRANCHES = List.of("anyOf", "oneOf", "allOf");

    private final Node.Obj schema;

    private SchemaGuide(Node.Obj schema) {
        this.schema = schema;
    }

    /** What the schema of catalog documents says. */
    public static SchemaGuide catalog() {
        return load("catalog.schema.json");
    }

    /** What the schema of build documents says. */
    public static SchemaGuide build() {
        return load("build.schema.json");
    }

    private static SchemaGuide load(String name) {
        try (InputStream stream = SchemaGuide.class.getResourceAsStream("/schema/" + name)) {
            if (stream != null && DocumentFile.read(name, stream).root().orElse(null) instanceof Node.Obj root) {
                return new SchemaGuide(root);
            }
            throw new IllegalStateException("the program lacks its schema " + name);
        } catch (IOException broken) {
            throw new UncheckedIOException(broken);
        }
    }

    /** The properties that an object at a pointer (RFC 6901) may have, with what they mean, in the schema's order. */
    public Map<String, String> properties(String pointer) {
        Map<String, String> properties = new LinkedHashMap<>();
        for (Node.Obj place : at(pointer)) {
            object(place, "properties").ifPresent(all -> all.members().forEach((name, member) -> {
                if (member.value() instanceof Node.Obj property) {
                    properties.putIfAbsent(name, description(List.of(property)).or(() -> description(resolved(property))).orElse(""));
                }
            }));
        }
        return properties;
    }

    /** The words that may stand at a pointer, where they are listed; {@code true} and {@code false} where a truth value is expected. */
    public List<String> choices(String pointer) {
        List<String> choices = new ArrayList<>();
        for (Node.Obj place : at(pointer)) {
            if (member(place, "enum").orElse(null) instanceof Node.Arr listed) {
                listed.items().forEach(item -> word(item).ifPresent(choices::add));
            }
            if (member(place, "type").flatMap(SchemaGuide::word).filter("boolean"::equals).isPresent()) {
                choices.addAll(List.of("true", "false"));
            }
        }
        return choices.stream().distinct().toList();
    }

    /** The types, by their names in JSON Schema, that a value at a pointer may have; empty where the schema doesn't say. */
    public Set<String> types(String pointer) {
        Set<String> types = new TreeSet<>();
        for (Node.Obj place : at(pointer)) {
            member(place, "type").stream().flatMap(type -> type instanceof Node.Arr several ? several.items().stream() : Stream.of(type))
                    .flatMap(type -> word(type).stream()).forEach(types::add);
            if (member(place, "enum").isPresent()) {
                types.add("string");
            }
        }
        return types;
    }

    /** What a pointer's value means; empty where the schema doesn't say. */
    public Optional<String> meaning(String pointer) {
        return description(at(pointer));
    }

    /** The schemas of a place, the one that is nearest to it first. */
    private List<Node.Obj> at(String pointer) {
        List<Node.Obj> places = resolved(schema);
        for (String step : pointer.isEmpty() ? new String[0] : pointer.substring(1).split("/", -1)) {
            String name = step.replace("~1", "/").replace("~0", "~");
            List<Node.Obj> next = new ArrayList<>();
            places.forEach(place -> inner(place, name).ifPresent(found -> next.addAll(resolved(found))));
            places = next;
        }
        return places;
    }

    private static Optional<Node.Obj> inner(Node.Obj place, String name) {
        return object(place, "properties").flatMap(all -> object(all, name))
                .or(() -> object(place, "items").filter(items -> name.chars().allMatch(Character::isDigit)))
                .or(() -> object(place, "additionalProperties"));
    }

    /** A schema, what it refers to, and the branches of either. */
    private List<Node.Obj> resolved(Node.Obj place) {
        List<Node.Obj> all = new ArrayList<>(List.of(place));
        for (int i = 0; i < all.size(); i++) {
            Node.Obj each = all.get(i);
            member(each, "$ref").flatMap(SchemaGuide::word).filter(word -> word.startsWith(LOCAL))
                    .flatMap(word -> referred(word.substring(LOCAL.length())))
                    .filter(found -> !all.contains(found))
                    .ifPresent(all::add);
            for (String branch : BRANCHES) {
                if (member(each, branch).orElse(null) instanceof Node.Arr several) {
                    several.items().forEach(item -> {
                        if (item instanceof Node.Obj found && !all.contains(found)) {
                            all.add(found);
                        }
                    });
                }
            }
        }
        return all;
    }

    /** What a JSON pointer leads to from the schema's root, by the names of properties alone. */
    private Optional<Node.Obj> referred(String pointer) {
        Optional<Node.Obj> found = Optional.of(schema);
        for (String piece : pointer.split("/")) {
            found = found.flatMap(outer -> object(outer, piece));
        }
        return found;
    }

    private static Optional<String> description(List<Node.Obj> places) {
        return places.stream().flatMap(place -> member(place, "description").flatMap(SchemaGuide::word).stream()).findFirst();
    }

    private static Optional<Node> member(Node.Obj place, String name) {
        return Optional.ofNullable(place.members().get(name)).map(Node.Member::value);
    }

    private static Optional<Node.Obj> object(Node.Obj place, String name) {
        return member(place, name).filter(Node.Obj.class::isInstance).map(Node.Obj.class::cast);
    }

    private static Optional<String> word(Node node) {
        return node instanceof Node.Text text ? Optional.of(text.value()) : Optional.empty();
    }
}

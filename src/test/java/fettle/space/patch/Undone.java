package fettle.space.patch;

import fettle.space.Change;
import java.util.List;
import java.util.Optional;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/** Undoes differences in the JSON of a catalog, as a maintainer would by hand. */
final class Undone {

    private Undone() {}

    /** The catalog with what the differences speak of as the other catalog has it. */
    static JsonNode in(JsonNode catalog, JsonNode other, List<Change> changes) {
        JsonNode copy = catalog.deepCopy();
        for (Change change : changes) {
            undo(copy, other, change);
        }
        return copy;
    }

    private static void undo(JsonNode catalog, JsonNode other, Change change) {
        ArrayNode section = ((ObjectNode) catalog).withArray(change.entry().section());
        Optional<JsonNode> here = byId(section, change.entry().id());
        Optional<JsonNode> there = byId(other.path(change.entry().section()), change.entry().id());
        if (change.whole()) {
            here.ifPresentOrElse(entry -> section.removeIf(entry::equals), () -> section.add(there.orElseThrow()));
        } else {
            take((ObjectNode) here.orElseThrow(), there.orElseThrow(), change.path());
        }
    }

    private static void take(ObjectNode target, JsonNode source, List<String> path) {
        String name = path.get(0);
        if (path.size() == 1) {
            if (source.has(name)) {
                target.set(name, source.get(name));
            } else {
                target.remove(name);
            }
        } else if (name.equals("slots")) {
            slot(target.withArray("slots"), source.path("slots"), path);
        } else {
            take(target.has(name) ? (ObjectNode) target.get(name) : target.putObject(name), source.path(name), path.subList(1, path.size()));
        }
    }

    private static void slot(ArrayNode slots, JsonNode others, List<String> path) {
        Optional<JsonNode> here = byId(slots, path.get(1));
        Optional<JsonNode> there = byId(others, path.get(1));
        if (path.size() > 2) {
            take((ObjectNode) here.orElseThrow(), there.orElseThrow(), path.subList(2, path.size()));
        } else if (here.isPresent()) {
            slots.removeIf(here.get()::equals);
        } else {
            slots.add(there.orElseThrow());
        }
    }

    private static Optional<JsonNode> byId(JsonNode list, String id) {
        for (JsonNode entry : list) {
            if (entry.path("id").asString("").equals(id)) {
                return Optional.of(entry);
            }
        }
        return Optional.empty();
    }
}

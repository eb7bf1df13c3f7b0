package fettle.view;

import fettle.judgement.Coexistence;
import fettle.space.Cause;
import fettle.space.Together;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import tools.jackson.core.JsonGenerator;

/** Writes as JSON whether things can be together on a platform. */
final class CoexistenceJson {

    private final JsonGenerator json;
    private final Wording wording;

    CoexistenceJson(JsonGenerator json, Wording wording) {
        this.json = json;
        this.wording = wording;
    }

    void write(Coexistence coexistence) {
        json.writeStartObject();
        json.writeStringProperty("platform", coexistence.platform().id());
        Together answer = coexistence.answer();
        if (answer instanceof Together.Possible possible) {
            json.writeBooleanProperty("possible", true);
            json.writeName("build");
            JsonView.value(json, written(possible.parts()));
        } else if (answer instanceof Together.Impossible impossible) {
            json.writeBooleanProperty("possible", false);
            json.writeArrayPropertyStart("because");
            impossible.because().forEach(this::cause);
            json.writeEndArray();
        } else if (answer instanceof Together.Open open) {
            json.writeNullProperty("possible");
            json.writeStringProperty("undecided", open.undecided().why());
        }
        json.writeEndObject();
    }

    /** One entry a cause, so that none can be left out. */
    private void cause(Cause cause) {
        Told told = wording.told(cause);
        json.writeStartObject();
        json.writeStringProperty("fact", told.fact());
        if (!told.premises().isEmpty()) {
            JsonView.where(json, told.premises().stream().flatMap(premise -> premise.where().stream()).distinct().toList());
        }
        cause.rule().ifPresent(rule -> json.writeStringProperty("rule", rule));
        if (!told.premises().isEmpty()) {
            json.writeArrayPropertyStart("facts");
            told.premises().forEach(premise -> {
                json.writeStartObject();
                json.writeStringProperty("fact", premise.fact());
                premise.where().ifPresent(origin -> JsonView.where(json, List.of(origin)));
                json.writeEndObject();
            });
            json.writeEndArray();
        }
        json.writeEndObject();
    }

    /** Parts by path as a build file has them: those of a slot of several in a list. */
    static Map<String, Object> written(SortedMap<String, String> parts) {
        Map<String, Object> written = new TreeMap<>();
        Map<String, SortedMap<Integer, String>> several = new TreeMap<>();
        parts.forEach((path, part) -> {
            int colon = path.lastIndexOf(':');
            if (colon > path.lastIndexOf('/')) {
                several.computeIfAbsent(path.substring(0, colon), unused -> new TreeMap<>()).put(Integer.valueOf(path.substring(colon + 1)), part);
            } else {
                written.put(path, part);
            }
        });
        several.forEach((path, held) -> written.put(path, new ArrayList<>(held.values())));
        return written;
    }
}

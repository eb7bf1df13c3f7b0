package fettle.view;

import fettle.judgement.PlatformSurvey;
import fettle.space.Exact;
import fettle.space.Survey;
import java.util.Collection;
import java.util.List;
import tools.jackson.core.JsonGenerator;

/** Writes surveys of platforms as JSON. What could not be decided is null, and {@code undecided} says why. */
final class SurveyJson {

    private final JsonGenerator json;

    SurveyJson(JsonGenerator json) {
        this.json = json;
    }

    void platform(PlatformSurvey platform) {
        json.writeStartObject();
        json.writeStringProperty("platform", platform.platform().id());
        if (platform.survey() instanceof Survey.Known known) {
            known(known);
        } else {
            open(platform.survey());
        }
        json.writeEndObject();
    }

    private void known(Survey.Known survey) {
        json.writeStringProperty("count", survey.count().toString());
        list("dead", survey.dead());
        list("essential", survey.essential());
        json.writeNumberProperty("reachable", survey.reachable().size());
        list("deadSlots", survey.deadSlots().stream().map(Object::toString).toList());
        json.writeObjectPropertyStart("ranges");
        survey.ranges().forEach((attribute, range) -> {
            json.writeObjectPropertyStart(attribute);
            json.writeStringProperty("least", Exact.text(range.least()));
            json.writeStringProperty("most", Exact.text(range.greatest()));
            json.writeEndObject();
        });
        json.writeEndObject();
        list("dominated", List.of());
        list("undecided", List.of());
    }

    private void open(Survey survey) {
        json.writeNullProperty("count");
        json.writeNullProperty("dead");
        json.writeNullProperty("essential");
        json.writeNumberProperty("reachable", survey.reachable().size());
        json.writeNullProperty("deadSlots");
        json.writeNullProperty("ranges");
        json.writeNullProperty("dominated");
        json.writeArrayPropertyStart("undecided");
        if (survey instanceof Survey.Open open) {
            json.writeStartObject();
            json.writeStringProperty("host", survey.platform());
            json.writeNullProperty("slot");
            json.writeNullProperty("part");
            json.writeStringProperty("what", open.undecided().why());
            json.writeEndObject();
        }
        json.writeEndArray();
    }

    private void list(String name, Collection<String> ids) {
        json.writeArrayPropertyStart(name);
        ids.forEach(json::writeString);
        json.writeEndArray();
    }
}

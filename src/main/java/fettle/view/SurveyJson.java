package fettle.view;

import fettle.judgement.PlatformSurvey;
import fettle.space.Assembly;
import fettle.space.Exact;
import fettle.space.Survey;
import fettle.space.worth.Gains;
import fettle.space.worth.PartWorth;
import fettle.space.worth.SlotWorth;
import fettle.space.worth.Verdict;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import tools.jackson.core.JsonGenerator;

/** Writes surveys of platforms as JSON. What could not be decided is null, and {@code undecided} says why. */
final class SurveyJson {

    private final JsonGenerator json;
    private final Gains gains;

    SurveyJson(JsonGenerator json, Gains gains) {
        this.json = json;
        this.gains = gains;
    }

    void platform(PlatformSurvey platform) {
        json.writeStartObject();
        json.writeStringProperty("platform", platform.platform().id());
        if (platform.survey() instanceof Survey.Known known) {
            known(known);
            slots(platform.slots());
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
    }

    private void slots(List<SlotWorth> slots) {
        json.writeArrayPropertyStart("dominated");
        slots.forEach(slot -> slot.parts().forEach((part, worth) -> dominated(slot, part, worth)));
        json.writeEndArray();
        json.writeArrayPropertyStart("undecided");
        slots.forEach(slot -> slot.parts().forEach((part, worth) -> {
            undecided(slot, part, "dominated, cost ignored: ", worth.ignoringCost());
            undecided(slot, part, "dominated, cost counted: ", worth.withCost());
        }));
        json.writeEndArray();
    }

    private void dominated(SlotWorth slot, String part, PartWorth worth) {
        Outdone.of(worth, gains).ifPresent(outdone -> dominated(slot, part, worth, outdone));
    }

    private void dominated(SlotWorth slot, String part, PartWorth worth, Outdone outdone) {
        json.writeStartObject();
        place(slot, part);
        json.writeBooleanProperty("ignoringCost", worth.ignoringCost() instanceof Verdict.Dominated);
        json.writeBooleanProperty("withCost", worth.withCost() instanceof Verdict.Dominated);
        witness(outdone.by());
        outdone.forItsPrice().ifPresent(priced -> {
            json.writeObjectPropertyStart("forItsPrice");
            witness(priced);
            json.writeEndObject();
        });
        json.writeEndObject();
    }

    private void witness(Verdict.Dominated dominated) {
        parts("by", dominated.by());
        parts("shown", Optional.of(dominated.shown()));
        GainJson.write(json, "gains", gains.of(dominated));
    }

    private void undecided(SlotWorth slot, String part, String asked, Verdict verdict) {
        if (verdict instanceof Verdict.Open open) {
            json.writeStartObject();
            place(slot, part);
            json.writeStringProperty("what", asked + open.undecided().why());
            json.writeEndObject();
        }
    }

    private void place(SlotWorth slot, String part) {
        json.writeStringProperty("host", slot.slot().host());
        json.writeStringProperty("slot", slot.slot().slot());
        json.writeStringProperty("part", part);
    }

    private void parts(String name, Optional<Assembly> choice) {
        json.writeName(name);
        JsonView.value(json, choice.map(Assembly::paths).orElse(new TreeMap<>()));
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

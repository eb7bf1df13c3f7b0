package fettle.view;

import fettle.catalog.Attribute;
import fettle.space.Assembly;
import fettle.space.worth.Gains;
import fettle.space.worth.Merit;
import fettle.space.worth.Placings;
import fettle.space.worth.Verdict;
import java.util.Optional;
import java.util.TreeMap;
import tools.jackson.core.JsonGenerator;

/** Writes as JSON how a part stands to the others, slot by slot. */
final class StandingJson {

    private final JsonGenerator json;
    private final Gains gains;

    StandingJson(JsonGenerator json, Gains gains) {
        this.json = json;
        this.gains = gains;
    }

    void write(Placings placings) {
        json.writeArrayPropertyStart("standing");
        placings.known().forEach(placing -> {
            json.writeStartObject();
            json.writeStringProperty("platform", placing.platform());
            json.writeStringProperty("host", placing.slot().host());
            json.writeStringProperty("slot", placing.slot().slot());
            json.writeBooleanProperty("worseThanEmpty", placing.worth().worseThanEmpty());
            verdict("ignoringCost", placing.worth().ignoringCost(), placing.merit());
            verdict("withCost", placing.worth().withCost(), placing.meritForPrice());
            json.writeEndObject();
        });
        json.writeEndArray();
        if (!placings.open().isEmpty()) {
            json.writeArrayPropertyStart("undecided");
            placings.open().forEach((platform, undecided) -> {
                json.writeStartObject();
                json.writeStringProperty("platform", platform);
                json.writeStringProperty("what", undecided.why());
                json.writeEndObject();
            });
            json.writeEndArray();
        }
    }

    private void verdict(String name, Verdict verdict, Optional<Merit> merit) {
        json.writeObjectPropertyStart(name);
        if (verdict instanceof Verdict.Dominated dominated) {
            json.writeStringProperty("verdict", "dominated");
            parts("shown", Optional.of(dominated.shown()));
            parts("by", dominated.by());
            GainJson.write(json, "gains", gains.of(dominated));
        } else if (verdict instanceof Verdict.Undominated found) {
            json.writeStringProperty("verdict", "undominated");
            parts("shown", Optional.of(found.best()));
            merit.ifPresent(told -> merit(found.best(), told));
        } else if (verdict instanceof Verdict.Open open) {
            json.writeStringProperty("verdict", "undecided");
            json.writeStringProperty("what", open.undecided().why());
        } else {
            json.writeStringProperty("verdict", "unobtainable");
        }
        json.writeEndObject();
    }

    private void merit(Assembly best, Merit merit) {
        if (merit instanceof Merit.Most most) {
            json.writeArrayPropertyStart("bestIn");
            most.in().forEach(column -> json.writeString(column.attribute().map(Attribute::id).orElse("cost") + (column.loaded() ? " when loaded" : "")));
            json.writeEndArray();
        } else if (merit instanceof Merit.Trade trade) {
            parts("against", trade.rival());
            GainJson.write(json, "gains", gains.of(trade.rival(), Optional.of(best)));
        } else if (merit instanceof Merit.Role role) {
            json.writeArrayPropertyStart("serves");
            role.roles().forEach(json::writeString);
            json.writeEndArray();
        } else if (merit instanceof Merit.Even even) {
            parts("equalTo", Optional.of(even.rival()));
        } else if (merit instanceof Merit.Bound bound) {
            parts("notAlwaysReplacedBy", Optional.of(bound.rival()));
        } else {
            json.writeBooleanProperty("alone", true);
        }
    }

    private void parts(String name, Optional<Assembly> choice) {
        json.writeName(name);
        JsonView.value(json, choice.map(Assembly::paths).orElse(new TreeMap<>()));
    }
}

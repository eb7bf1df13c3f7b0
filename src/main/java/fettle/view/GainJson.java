package fettle.view;

import fettle.catalog.Attribute;
import fettle.space.Exact;
import fettle.space.worth.Gain;
import java.util.Collection;
import tools.jackson.core.JsonGenerator;

/** Writes what one assembly gains over another, entry by entry; cost is the entry without an attribute. */
final class GainJson {

    private GainJson() {}

    static void write(JsonGenerator json, String name, Collection<Gain> gains) {
        json.writeArrayPropertyStart(name);
        gains.forEach(gain -> write(json, gain));
        json.writeEndArray();
    }

    static void write(JsonGenerator json, Gain gain) {
        json.writeStartObject();
        JsonView.text(json, "attribute", gain.column().attribute().map(Attribute::id));
        json.writeBooleanProperty("loaded", gain.column().loaded());
        JsonView.text(json, "from", gain.before().map(Exact::text));
        JsonView.text(json, "to", gain.after().map(Exact::text));
        json.writeEndObject();
    }
}

package fettle.view;

import fettle.catalog.Attribute;
import fettle.catalog.Catalog;
import fettle.space.Exact;
import fettle.space.Fraction;
import fettle.space.worth.Ladder;
import fettle.space.worth.Standing;
import java.io.OutputStream;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import tools.jackson.core.JsonGenerator;

/** Writes the value ladder of a slot as JSON. */
public final class LadderJson {

    private final JsonView view;
    private final Catalog catalog;

    public LadderJson(Wording wording, Catalog catalog, String version) {
        this.catalog = catalog;
        this.view = new JsonView(wording, version);
    }

    /** Findings on the catalog's documents, then the ladder. */
    public void write(Report report, Ladder ladder, OutputStream out) {
        PlainJson.object(out, json -> {
            view.common(json, report);
            json.writeObjectPropertyStart("ladder");
            json.writeStringProperty("platform", ladder.platform());
            json.writeStringProperty("host", ladder.slot().host());
            json.writeStringProperty("slot", ladder.slot().slot());
            json.writeStringProperty("lens", ladder.lens().id());
            json.writeArrayPropertyStart("groups");
            ladder.groups().forEach(group -> group(json, group));
            json.writeEndArray();
            json.writeObjectPropertyStart("standing");
            ladder.standing().forEach((part, standing) -> json.writeStringProperty(part, standing.word()));
            json.writeEndObject();
            json.writeArrayPropertyStart("leftOut");
            ladder.lens().leftOut(catalog.attributes()).forEach(attribute -> leftOut(json, attribute));
            json.writeEndArray();
            json.writeEndObject();
        });
    }

    /** What the lens weighs, but a ladder doesn't, as it doesn't add up from part to part. */
    private static void leftOut(JsonGenerator json, Attribute attribute) {
        json.writeStartObject();
        json.writeStringProperty("attribute", attribute.id());
        json.writeStringProperty("combine", attribute.combine().name().toLowerCase(Locale.ROOT));
        json.writeEndObject();
    }

    private static void group(JsonGenerator json, Ladder.Group group) {
        json.writeStartObject();
        json.writeName("roles");
        JsonView.value(json, List.copyOf(group.roles()));
        json.writeArrayPropertyStart("rungs");
        for (Ladder.Rung rung : group.rungs()) {
            rung(json, rung);
        }
        json.writeEndArray();
        json.writeArrayPropertyStart("others");
        for (Ladder.Other other : group.others()) {
            json.writeStartObject();
            figures(json, other.offer());
            JsonView.text(json, "standing", Optional.of(other.standing()).map(Standing::word));
            json.writeEndObject();
        }
        json.writeEndArray();
        json.writeEndObject();
    }

    /** Each place on the hull is one entry, so that each step leads from one entry to the next. */
    private static void rung(JsonGenerator json, Ladder.Rung rung) {
        json.writeStartObject();
        figures(json, rung.offer());
        JsonView.text(json, "step", rung.step().map(Fraction::toString));
        if (!rung.alike().isEmpty()) {
            json.writeArrayPropertyStart("alike");
            rung.alike().forEach(offer -> JsonView.value(json, offer.paths()));
            json.writeEndArray();
        }
        json.writeEndObject();
    }

    private static void figures(JsonGenerator json, Ladder.Offer offer) {
        json.writeName("parts");
        JsonView.value(json, offer.paths());
        json.writeStringProperty("cost", Exact.text(offer.cost()));
        json.writeStringProperty("benefit", Exact.text(offer.benefit()));
    }
}

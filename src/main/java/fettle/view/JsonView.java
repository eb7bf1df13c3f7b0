package fettle.view;

import fettle.catalog.CatalogHead;
import fettle.document.Origin;
import fettle.judgement.BuildReview;
import fettle.judgement.Coexistence;
import fettle.judgement.Finding;
import fettle.judgement.FitSets;
import fettle.judgement.PlatformSurvey;
import fettle.judgement.SlotsOnPlatforms;
import fettle.space.BuildResult;
import fettle.space.Exact;
import fettle.space.Fraction;
import fettle.space.LimitMargin;
import fettle.space.best.Mainstay;
import fettle.space.best.Turn;
import fettle.space.worth.Gain;
import fettle.space.worth.Gains;
import fettle.space.worth.Placings;
import java.io.OutputStream;
import java.math.BigDecimal;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import tools.jackson.core.JsonGenerator;

/** Writes reports as JSON for other programs: keys in a fixed order, figures as strings, the same bytes for the same input. */
public final class JsonView {

    private final Wording wording;
    private final String version;

    public JsonView(Wording wording, String version) {
        this.wording = wording;
        this.version = version;
    }

    /** A report that is nothing but findings. */
    public void report(Report report, OutputStream out) {
        PlainJson.object(out, json -> common(json, report));
    }

    /** Findings, and the builds with what they come to; each build names its findings by their place in the list of all. */
    public void validate(Report report, List<BuildReview> builds, OutputStream out) {
        Map<Finding, Integer> places = new HashMap<>();
        for (Finding finding : report.findings()) {
            places.put(finding, places.size());
        }
        PlainJson.object(out, json -> {
            common(json, report);
            json.writeArrayPropertyStart("builds");
            builds.forEach(build -> build(json, build, places));
            json.writeEndArray();
        });
    }

    /** Findings, and what holds of all valid builds of each platform. */
    public void survey(Report report, List<PlatformSurvey> platforms, Gains gains, OutputStream out) {
        PlainJson.object(out, json -> {
            common(json, report);
            json.writeArrayPropertyStart("platforms");
            SurveyJson surveys = new SurveyJson(json, gains);
            platforms.forEach(surveys::platform);
            json.writeEndArray();
        });
    }

    /** Findings, and whether what was asked for can be together: {@code together} for one platform, {@code platforms} for several; nothing where none was asked of. */
    public void explain(Report report, List<Coexistence> asked, OutputStream out) {
        PlainJson.object(out, json -> {
            common(json, report);
            asked(json, asked);
        });
    }

    /** The same of one part, and how it stands to others. */
    public void explain(Report report, List<Coexistence> asked, Placings placings, Gains gains, OutputStream out) {
        PlainJson.object(out, json -> {
            common(json, report);
            new StandingJson(json, gains).write(placings);
            asked(json, asked);
        });
    }

    private void asked(JsonGenerator json, List<Coexistence> asked) {
        CoexistenceJson coexistence = new CoexistenceJson(json, wording);
        if (asked.size() == 1) {
            json.writeName("together");
            coexistence.write(asked.get(0));
        } else if (!asked.isEmpty()) {
            json.writeArrayPropertyStart("platforms");
            asked.forEach(coexistence::write);
            json.writeEndArray();
        }
    }

    void common(JsonGenerator json, Report report) {
        json.writeStringProperty("fettle", version);
        json.writeStringProperty("command", report.command());
        json.writeObjectPropertyStart("catalog");
        text(json, "id", report.catalog().map(CatalogHead::id));
        text(json, "patch", report.catalog().map(CatalogHead::patch));
        json.writeEndObject();
        json.writeArrayPropertyStart("findings");
        report.findings().forEach(finding -> finding(json, finding));
        json.writeEndArray();
        Tally tally = report.tally();
        json.writeObjectPropertyStart("summary");
        json.writeNumberProperty("error", tally.errors());
        json.writeNumberProperty("warning", tally.warnings());
        json.writeNumberProperty("note", tally.notes());
        json.writeNumberProperty("waived", tally.waived());
        json.writeEndObject();
    }

    private void finding(JsonGenerator json, Finding finding) {
        json.writeStartObject();
        json.writeStringProperty("rule", finding.rule());
        json.writeStringProperty("severity", finding.severity().word());
        json.writeStringProperty("subject", finding.subject());
        json.writeStringProperty("message", wording.message(finding));
        where(json, finding.where());
        json.writeArrayPropertyStart("because");
        Reasoning.of(wording.reasons(finding)).forEach(told -> {
            json.writeStartObject();
            json.writeStringProperty("fact", told.fact());
            told.where().ifPresent(origin -> where(json, List.of(origin)));
            json.writeEndObject();
        });
        json.writeEndArray();
        json.writeArrayPropertyStart("remedies");
        wording.remedies(finding).forEach(json::writeString);
        json.writeEndArray();
        json.writeName("data");
        value(json, finding.data());
        finding.waived().ifPresent(reason -> json.writeStringProperty("waived", reason));
        json.writeEndObject();
    }

    static void where(JsonGenerator json, List<Origin> places) {
        json.writeArrayPropertyStart("where");
        for (Origin place : places) {
            json.writeStartObject();
            json.writeStringProperty("file", place.file());
            json.writeNumberProperty("line", place.line());
            json.writeNumberProperty("column", place.column());
            json.writeStringProperty("pointer", place.pointer());
            json.writeEndObject();
        }
        json.writeEndArray();
    }

    private static void build(JsonGenerator json, BuildReview review, Map<Finding, Integer> places) {
        BuildResult result = review.result();
        json.writeStartObject();
        json.writeStringProperty("id", result.build().id());
        json.writeStringProperty("file", review.file());
        json.writeStringProperty("platform", result.build().platform().id());
        json.writeBooleanProperty("valid", result.valid());
        json.writeName("totals");
        value(json, result.totals());
        text(json, "cost", result.cost().map(Exact::text));
        json.writeArrayPropertyStart("limits");
        result.limits().forEach(limit -> limit(json, limit));
        json.writeEndArray();
        json.writeArrayPropertyStart("findings");
        review.findings().stream().map(places::get).sorted().distinct().forEach(json::writeNumber);
        json.writeEndArray();
        json.writeEndObject();
    }

    static void limit(JsonGenerator json, LimitMargin limit) {
        json.writeStartObject();
        json.writeStringProperty("id", limit.limit().id());
        text(json, "value", limit.value().map(Exact::text));
        text(json, "threshold", limit.threshold().map(Fraction::toString));
        text(json, "margin", limit.margin().map(Fraction::toString));
        if (limit.told()) {
            json.writeBooleanProperty("holds", limit.holds());
        } else {
            json.writeNullProperty("holds");
        }
        json.writeEndObject();
    }

    static void text(JsonGenerator json, String name, Optional<String> value) {
        if (value.isPresent()) {
            json.writeStringProperty(name, value.get());
        } else {
            json.writeNullProperty(name);
        }
    }

    /** Any value of a finding's data; maps are written in the order of their keys. */
    static void value(JsonGenerator json, Object value) {
        if (value instanceof BigDecimal decimal) {
            json.writeString(Exact.text(decimal));
        } else if (value instanceof Boolean bool) {
            json.writeBoolean(bool);
        } else if (value instanceof Gain gain) {
            GainJson.write(json, gain);
        } else if (value instanceof Turn turn) {
            turn(json, turn);
        } else if (value instanceof Mainstay mainstay) {
            value(json, Map.of("total", mainstay.total(), "parts", mainstay.parts()));
        } else if (value instanceof SlotsOnPlatforms where) {
            value(json, where.slots());
        } else if (value instanceof FitSets fits) {
            value(json, fits.sets().stream().map(set -> Map.of("parts", set.parts(), "slots", set.slots())).toList());
        } else if (value instanceof Collection<?> items) {
            json.writeStartArray();
            items.forEach(item -> value(json, item));
            json.writeEndArray();
        } else if (value instanceof Map<?, ?> map) {
            json.writeStartObject();
            Map<String, Object> sorted = new TreeMap<>();
            map.forEach((key, held) -> sorted.put(key.toString(), held));
            sorted.forEach((key, held) -> {
                json.writeName(key);
                value(json, held);
            });
            json.writeEndObject();
        } else {
            json.writeString(value.toString());
        }
    }

    /** By how much a total differs; what it is on either side where it has no value on one. */
    private static void turn(JsonGenerator json, Turn turn) {
        if (turn.size().isPresent()) {
            json.writeString(Exact.text(turn.size().get()));
            return;
        }
        json.writeStartObject();
        text(json, "from", turn.before().map(Exact::text));
        text(json, "to", turn.after().map(Exact::text));
        json.writeEndObject();
    }
}

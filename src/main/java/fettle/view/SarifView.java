package fettle.view;

import fettle.document.Origin;
import fettle.engine.RuleIndex;
import fettle.engine.Severity;
import fettle.judgement.Finding;
import java.io.OutputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import tools.jackson.core.JsonGenerator;

/** Writes findings as SARIF 2.1.0 (OASIS), for services that show them beside the lines of a repository. */
public final class SarifView {

    private static final String SCHEMA = "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json";

    private final Wording wording;
    private final RuleIndex rules;
    private final String version;

    public SarifView(Wording wording, RuleIndex rules, String version) {
        this.wording = wording;
        this.rules = rules;
        this.version = version;
    }

    /** The findings of one run, with the pages of the rules that drew them. */
    public void report(Report report, OutputStream out) {
        List<String> drawn = List.copyOf(new TreeSet<>(report.findings().stream().map(Finding::rule).toList()));
        PlainJson.object(out, json -> {
            json.writeStringProperty("$schema", SCHEMA);
            json.writeStringProperty("version", "2.1.0");
            json.writeArrayPropertyStart("runs");
            json.writeStartObject();
            tool(json, drawn);
            json.writeStringProperty("columnKind", "unicodeCodePoints");
            json.writeArrayPropertyStart("results");
            Fingerprints fingerprints = new Fingerprints(wording);
            report.findings().forEach(finding -> result(json, finding, drawn.indexOf(finding.rule()), fingerprints.of(finding)));
            json.writeEndArray();
            json.writeEndObject();
            json.writeEndArray();
        });
    }

    private void tool(JsonGenerator json, List<String> drawn) {
        json.writeObjectPropertyStart("tool");
        json.writeObjectPropertyStart("driver");
        json.writeStringProperty("name", "Fettle");
        json.writeStringProperty("semanticVersion", version);
        json.writeArrayPropertyStart("rules");
        drawn.forEach(rule -> rule(json, rule));
        json.writeEndArray();
        json.writeEndObject();
        json.writeEndObject();
    }

    private void rule(JsonGenerator json, String name) {
        json.writeStartObject();
        json.writeStringProperty("id", name);
        rules.find(name).ifPresent(rule -> {
            text(json, "shortDescription", rule.law());
            json.writeObjectPropertyStart("help");
            json.writeStringProperty("text", new RulesText(false).page(rule));
            json.writeStringProperty("markdown", rule.page());
            json.writeEndObject();
            json.writeObjectPropertyStart("defaultConfiguration");
            json.writeStringProperty("level", rule.severity().orElse(Severity.ERROR).word());
            json.writeEndObject();
            json.writeObjectPropertyStart("properties");
            json.writeArrayPropertyStart("tags");
            json.writeString(rule.topic());
            json.writeEndArray();
            json.writeEndObject();
        });
        json.writeEndObject();
    }

    private void result(JsonGenerator json, Finding finding, int rule, String fingerprint) {
        json.writeStartObject();
        json.writeStringProperty("ruleId", finding.rule());
        json.writeNumberProperty("ruleIndex", rule);
        json.writeStringProperty("level", finding.severity().word());
        List<String> said = new ArrayList<>(List.of(wording.message(finding)));
        said.addAll(wording.remedies(finding));
        text(json, "message", String.join("\n", said));
        json.writeArrayPropertyStart("locations");
        finding.where().forEach(origin -> {
            json.writeStartObject();
            physical(json, origin);
            json.writeArrayPropertyStart("logicalLocations");
            json.writeStartObject();
            json.writeStringProperty("fullyQualifiedName", finding.subject());
            json.writeEndObject();
            json.writeEndArray();
            json.writeEndObject();
        });
        json.writeEndArray();
        related(json, Reasoning.of(wording.reasons(finding)));
        json.writeObjectPropertyStart("partialFingerprints");
        json.writeStringProperty("fettleFinding/v1", fingerprint);
        json.writeEndObject();
        finding.waived().ifPresent(reason -> {
            json.writeArrayPropertyStart("suppressions");
            json.writeStartObject();
            json.writeStringProperty("kind", "inSource");
            json.writeStringProperty("status", "accepted");
            json.writeStringProperty("justification", reason);
            json.writeEndObject();
            json.writeEndArray();
        });
        json.writeEndObject();
    }

    /** The facts behind a finding; one that was computed has no place of its own, only its words. */
    private static void related(JsonGenerator json, List<Told> reasons) {
        json.writeArrayPropertyStart("relatedLocations");
        for (int i = 0; i < reasons.size(); i++) {
            json.writeStartObject();
            json.writeNumberProperty("id", i + 1);
            reasons.get(i).where().ifPresent(origin -> physical(json, origin));
            text(json, "message", reasons.get(i).fact());
            json.writeEndObject();
        }
        json.writeEndArray();
    }

    private static void physical(JsonGenerator json, Origin origin) {
        json.writeObjectPropertyStart("physicalLocation");
        json.writeObjectPropertyStart("artifactLocation");
        json.writeStringProperty("uri", Places.uri(origin.file()));
        json.writeEndObject();
        json.writeObjectPropertyStart("region");
        json.writeNumberProperty("startLine", origin.line());
        json.writeNumberProperty("startColumn", origin.column());
        json.writeEndObject();
        json.writeEndObject();
    }

    private static void text(JsonGenerator json, String name, String text) {
        json.writeObjectPropertyStart(name);
        json.writeStringProperty("text", text);
        json.writeEndObject();
    }
}

package fettle.view;

import fettle.catalog.Access;
import fettle.catalog.CatalogHead;
import fettle.engine.RuleIndex;
import fettle.judgement.BuildReview;
import fettle.judgement.Finding;
import fettle.relation.Relations;
import fettle.space.Landscape;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Base64;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Writes a report as one HTML page that needs nothing else. The page's frame, style and script are fixed; all that a catalog says goes
 * into it as data, and a policy in the page lets no other script or style act and nothing be loaded.
 */
public final class HtmlView {

    private static final String OPEN = "{{";
    private static final String CLOSE = "}}";

    private final Wording wording;
    private final RuleIndex rules;
    private final String version;

    public HtmlView(Wording wording, RuleIndex rules, String version) {
        this.wording = wording;
        this.rules = rules;
        this.version = version;
    }

    /** The page; every finding of a build stands among the report's, and ladders are bought under {@code access} where that is given. */
    public void report(Report report, Landscape landscape, Optional<Access> access, List<BuildReview> builds, OutputStream out) {
        String style = resource("page.css");
        String script = resource("page.js");
        String policy = "default-src 'none'; script-src '" + hash(script) + "'; style-src '" + hash(style) + "'; base-uri 'none'; form-action 'none'";
        String frame = resource("page.html");
        try {
            int at = 0;
            for (int open = frame.indexOf(OPEN); open >= 0; open = frame.indexOf(OPEN, at)) {
                int close = frame.indexOf(CLOSE, open);
                write(out, frame.substring(at, open));
                String name = frame.substring(open + OPEN.length(), close);
                switch (name) {
                    case "policy" -> write(out, policy);
                    case "style" -> write(out, style);
                    case "script" -> write(out, script);
                    case "ladders" -> EmbeddedJson.object(out, json -> new PageLadders(landscape, access).write(new PageJson(json)));
                    case "data" -> EmbeddedJson.object(out, json -> data(new PageJson(json), report, landscape, access, builds));
                    default -> throw new IllegalStateException("the page's frame names " + name);
                }
                at = close + CLOSE.length();
            }
            write(out, frame.substring(at));
        } catch (IOException broken) {
            throw new UncheckedIOException(broken);
        }
    }

    private void data(PageJson page, Report report, Landscape landscape, Optional<Access> access, List<BuildReview> builds) {
        Relations relations = landscape.relations();
        page.text("fettle", version);
        page.json().writeObjectPropertyStart("catalog");
        page.text("id", report.catalog().map(CatalogHead::id));
        page.text("patch", report.catalog().map(CatalogHead::patch));
        page.json().writeEndObject();
        Tally tally = report.tally();
        page.json().writeObjectPropertyStart("summary");
        page.json().writeNumberProperty("error", tally.errors());
        page.json().writeNumberProperty("warning", tally.warnings());
        page.json().writeNumberProperty("note", tally.notes());
        page.json().writeNumberProperty("waived", tally.waived());
        page.json().writeEndObject();
        new PageFindings(wording, rules, relations.catalog(), builds).write(page, report.findings());
        PageHosts hosts = new PageHosts(relations);
        hosts.write(page);
        new PageLadders(landscape, access).writeLenses(page);
        Map<Finding, Integer> places = new HashMap<>();
        report.findings().forEach(finding -> places.put(finding, places.size()));
        new PageBuilds(wording, relations, hosts).write(page, builds, places);
        page.texts("files", page.files().keySet());
    }

    private static void write(OutputStream out, String text) throws IOException {
        out.write(text.getBytes(StandardCharsets.UTF_8));
    }

    private static String resource(String name) {
        try (InputStream in = HtmlView.class.getResourceAsStream("/fettle/page/" + name)) {
            if (in == null) {
                throw new IllegalStateException("the program was packed without " + name);
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException broken) {
            throw new UncheckedIOException(broken);
        }
    }

    private static String hash(String text) {
        try {
            return "sha256-" + Base64.getEncoder().encodeToString(MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8)));
        } catch (NoSuchAlgorithmException impossible) {
            throw new IllegalStateException("every Java platform has SHA-256", impossible);
        }
    }
}

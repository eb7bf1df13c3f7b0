package fettle.view;

import fettle.catalog.Catalog;
import fettle.catalog.CatalogHead;
import fettle.engine.Severity;
import fettle.judgement.BuildReview;
import fettle.judgement.CatalogReading;
import fettle.judgement.Finding;
import fettle.judgement.PlatformSurvey;
import fettle.space.worth.Gains;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/** Writes reports for people to read on a terminal. */
public final class TextView {

    /** So many builds are told with the reasons of all that is noted of them; of more, nobody reads them. */
    private static final int MOST_WHOLE = 3;

    private final Wording wording;
    private final TextStyle style;

    public TextView(Wording wording, TextStyle style) {
        this.wording = wording;
        this.style = style;
    }

    /** The findings on a catalog, the gravest first, those that are waived last, and what they come to. */
    public String lint(Report report, CatalogReading reading) {
        Sheet sheet = new Sheet(style.colour());
        findings(sheet, reading.catalog(), report.findings());
        if (style.quiet().isEmpty()) {
            sheet.paragraph(0, 2, Span.strong(name(report.catalog()) + ": " + report.tally().inWords() + "."), Span.plain(" " + lookedAt(reading)));
            Unread.of(report.findings().stream().filter(this::tells).toList()).write(sheet);
        }
        return sheet.toString();
    }

    /** The findings on documents, then each build with its totals and findings, and what they come to. */
    public String validate(Report report, CatalogReading reading, List<Finding> general, List<BuildReview> builds) {
        Sheet sheet = new Sheet(style.colour());
        findings(sheet, reading.catalog(), general);
        BuildText text = new BuildText(wording, reading.catalog());
        boolean briefly = builds.size() > MOST_WHOLE;
        for (BuildReview build : builds) {
            List<Finding> told = build.findings().stream().filter(this::tells).toList();
            boolean fails = !build.result().valid() && style.tells(Severity.ERROR);
            if (style.quiet().isEmpty() || !told.isEmpty() || fails) {
                text.write(sheet, build, told, briefly);
                sheet.blank();
                waived(sheet, build.findings());
            }
        }
        if (style.quiet().isEmpty()) {
            sheet.paragraph(0, 2, Span.strong(name(report.catalog()) + ": " + verdict(builds) + "; " + report.tally().inWords() + "."));
            if (briefly && report.findings().stream().anyMatch(finding -> finding.severity() == Severity.NOTE && finding.subject().startsWith("build:") && tells(finding))) {
                sheet.paragraph(0, 2, Span.plain("Of so many builds notes are told without reasons and without what to do; validate one by itself for these, or take --format json."));
            }
        }
        return sheet.toString();
    }

    /** How many builds there are, and how many of them are not valid. */
    static String verdict(List<BuildReview> builds) {
        long wrong = builds.stream().filter(build -> !build.result().valid()).count();
        if (builds.isEmpty()) {
            return "no builds";
        }
        return builds.size() == 1
                ? (wrong == 0 ? "1 build, valid" : "1 build, not valid")
                : Phrases.count(builds.size(), "build", "builds") + ", " + (wrong == 0 ? "all valid" : wrong + " not valid");
    }

    /** The findings on documents, then what holds of all valid builds of each platform. */
    public String survey(Report report, CatalogReading reading, List<PlatformSurvey> platforms, Gains gains) {
        Sheet sheet = new Sheet(style.colour());
        findings(sheet, reading.catalog(), report.findings());
        if (style.quiet().isEmpty()) {
            SurveyText text = new SurveyText(reading.catalog(), gains);
            for (PlatformSurvey platform : platforms) {
                text.write(sheet, platform);
                sheet.blank();
            }
            sheet.paragraph(0, 2, Span.strong(name(report.catalog()) + ": " + SurveyText.summary(platforms) + "."));
        }
        return sheet.toString();
    }

    /** A text, line by line, without anything that would act on a terminal. */
    public static String harmless(String text) {
        return text.lines().map(SafeText::of).collect(Collectors.joining("\n"));
    }

    private boolean tells(Finding finding) {
        return finding.waived().isEmpty() && style.tells(finding.severity());
    }

    void findings(Sheet sheet, Catalog catalog, List<Finding> findings) {
        List<Finding> told = findings.stream().filter(this::tells).toList();
        Unread unread = Unread.of(told);
        Gathering gathering = new Gathering(wording, unread.first(told));
        unread.above(sheet, told.size(), style.quiet().isEmpty());
        gathering.write(sheet, new FindingText(wording, catalog));
        waived(sheet, findings);
    }

    /** What is waived, and why, unless only what fails is wanted. */
    private void waived(Sheet sheet, List<Finding> findings) {
        Map<String, String> waived = new LinkedHashMap<>();
        findings.stream().filter(finding -> finding.waived().isPresent())
                .forEach(finding -> waived.put(finding.rule() + " of " + finding.subject() + ": ", finding.waived().orElseThrow()));
        if (style.quiet().isEmpty() && !waived.isEmpty()) {
            waived.forEach((what, why) -> sheet.entry(Span.faint("waived"), Span.plain(what), Span.faint(why)));
            sheet.blank();
        }
    }

    static String name(Optional<CatalogHead> head) {
        return head.filter(found -> !found.id().isBlank()).map(found -> found.id() + (found.patch().isEmpty() ? "" : ", patch " + found.patch())).orElse("catalog without a name");
    }

    static String lookedAt(CatalogReading reading) {
        Catalog catalog = reading.catalog();
        return "Looked at " + Phrases.and(List.of(
                Phrases.count(catalog.platforms().size(), "platform", "platforms"),
                Phrases.count(catalog.parts().size(), "part", "parts"),
                Phrases.count(catalog.offers().size(), "offer", "offers")))
                + " in " + Phrases.count(reading.documents().documents().size(), "document", "documents") + ".";
    }
}

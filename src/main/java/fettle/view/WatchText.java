package fettle.view;

import fettle.catalog.Catalog;
import fettle.judgement.BuildReview;
import fettle.judgement.CatalogReading;
import fettle.judgement.Finding;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Tells a reader who stays what there is to say at first, and after each save only what is new and what is gone. One instance tells one watch. */
public final class WatchText {

    private static final int MOST_FILES = 3;

    private final TextStyle style;
    private Map<String, String> open = Map.of();
    private boolean first = true;

    public WatchText(TextStyle style) {
        this.style = style;
    }

    /**
     * What to tell after a check.
     *
     * @param saved the files that changed since the one before
     * @param deleted the files that are no longer there
     */
    public String after(List<String> saved, List<String> deleted, Report report, Wording wording, CatalogReading reading, List<BuildReview> builds) {
        Sheet sheet = new Sheet(style.colour());
        Catalog catalog = reading.catalog();
        Map<String, String> waived = new LinkedHashMap<>();
        Map<String, String> now = new LinkedHashMap<>();
        List<Finding> fresh = new ArrayList<>();
        Fingerprints prints = new Fingerprints(wording);
        for (Finding finding : report.findings()) {
            String print = prints.of(finding);
            String told = wording.message(finding) + "  (" + finding.rule() + ")";
            if (finding.waived().isPresent()) {
                waived.put(print, told);
            } else {
                now.put(print, told);
                if (!open.containsKey(print)) {
                    fresh.add(finding);
                }
            }
        }
        String summary = TextView.name(report.catalog()) + ": " + (builds.isEmpty() ? "" : TextView.verdict(builds) + "; ") + report.tally().inWords() + ".";
        if (first) {
            new TextView(wording, style).findings(sheet, catalog, report.findings());
            sheet.paragraph(0, 2, Span.strong(summary), Span.plain(" " + TextView.lookedAt(reading)));
        } else {
            sheet.paragraph(0, 2, Span.faint(Stream.of(files("saved ", saved), files("deleted ", deleted)).filter(some -> !some.isEmpty()).collect(Collectors.joining(", "))));
            new TextView(wording, style).findings(sheet, catalog, fresh);
            List<String> gone = open.keySet().stream().filter(print -> !now.containsKey(print)).toList();
            gone.forEach(print -> sheet.entry(Span.faint(waived.containsKey(print) ? "waived" : "gone"), Span.plain(open.get(print))));
            if (!gone.isEmpty()) {
                sheet.blank();
            }
            sheet.paragraph(0, 2, Span.strong(summary), Span.plain(" " + fresh.size() + " new, " + gone.size() + " gone."));
        }
        first = false;
        open = now;
        return sheet.toString();
    }

    private static String files(String what, List<String> files) {
        List<String> named = new ArrayList<>(files.stream().limit(MOST_FILES).toList());
        if (files.size() > MOST_FILES) {
            named.add(Phrases.count(files.size() - MOST_FILES, "more file", "more files"));
        }
        return named.isEmpty() ? "" : what + Phrases.and(named);
    }
}

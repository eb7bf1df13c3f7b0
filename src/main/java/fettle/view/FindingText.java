package fettle.view;

import fettle.catalog.Catalog;
import fettle.catalog.Part;
import fettle.document.Origin;
import fettle.engine.Severity;
import fettle.judgement.Finding;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;

/** Writes one finding for people: what is wrong and where, then why, then what to do. */
final class FindingText {

    private static final int MOST_PLACES = 6;
    private static final int MOST_OTHERS = 12;

    /** So many facts are told of an error of a build, and of advice on one, unless some follow from others, which are of use only together. */
    private static final int MOST_REASONS = 12;
    private static final int MOST_OF_ADVICE = 7;

    /** Where the id of a part or platform stands. */
    private static final Pattern ENTRY_ID = Pattern.compile("/(?:parts|platforms)/\\d+/id");

    private final Wording wording;
    private final Catalog catalog;

    FindingText(Wording wording, Catalog catalog) {
        this.wording = wording;
        this.catalog = catalog;
    }

    /** Writes the finding; its subject is left out where the reader knows it. */
    void write(Sheet sheet, Finding finding, boolean subjectKnown) {
        headline(sheet, finding);
        List<Told> reasons = wording.reasons(finding);
        places(sheet, finding, reasons, subjectKnown);
        int most = finding.severity() == Severity.ERROR ? MOST_REASONS : MOST_OF_ADVICE;
        boolean many = finding.subject().startsWith("build:") && reasons.size() > most && reasons.stream().allMatch(reason -> reason.premises().isEmpty());
        List<Told> shown = many ? reasons.subList(0, most - 1) : reasons;
        why(sheet, shown, finding.where().isEmpty() ? "" : finding.where().get(0).file());
        leftOut(sheet, 0, reasons.size() - shown.size());
        remedies(sheet, wording.remedies(finding));
    }

    /** Writes what is wrong and where, unless that is where the reader is already. */
    void briefly(Sheet sheet, Finding finding, Origin known) {
        headline(sheet, finding);
        finding.where().stream().limit(1).filter(origin -> !origin.equals(known)).forEach(origin -> sheet.entry(Span.faint("at"), Span.plain(Places.of(origin))));
    }

    /** Writes what is wrong and where, and nothing else. */
    void inALine(Sheet sheet, Finding finding) {
        List<Span> line = new ArrayList<>(List.of(Span.plain(wording.message(finding))));
        finding.where().stream().limit(1).forEach(origin -> line.add(Span.faint("  " + Places.of(origin))));
        sheet.entry(new Span(finding.severity().word(), tone(finding.severity())), line.toArray(Span[]::new));
    }

    private void headline(Sheet sheet, Finding finding) {
        sheet.entry(
                new Span(finding.severity().word(), tone(finding.severity())),
                Span.strong(wording.message(finding)), Span.plain("  "), Span.faint("(" + finding.rule() + ")"));
    }

    /** Writes, below one that is told, where others are that have the same cause, with the value of each that has one, and what to try first where that is something else. */
    void others(Sheet sheet, Finding told, String alike, List<Finding> others) {
        String file = told.where().isEmpty() ? "" : told.where().get(0).file();
        sheet.entry(Span.faint("also"), Span.plain(others.size() + " more " + alike + ":"));
        Optional<String> tried = first(told);
        List<Finding> listed = others.size() <= MOST_OTHERS ? others : others.subList(0, MOST_OTHERS - 1);
        listed.forEach(other -> {
            String subject = other.subject() + label(other);
            List<Span> line = new ArrayList<>(other.where().stream().limit(1).map(origin -> Span.plain(Places.of(origin, file))).toList());
            if (line.isEmpty() || !onWholeDocument(other)) {
                line.add(Span.faint((line.isEmpty() ? "" : ", ") + subject));
            }
            wording.value(other).ifPresent(value -> line.add(Span.plain(": " + value)));
            sheet.more(2, line.toArray(Span[]::new));
            first(other).filter(remedy -> !tried.equals(Optional.of(remedy))).ifPresent(remedy -> sheet.more(4, Span.plain(remedy)));
        });
        leftOut(sheet, 2, others.size() - listed.size());
    }

    private static void leftOut(Sheet sheet, int indent, int count) {
        if (count > 0) {
            sheet.more(indent, Span.plain("and " + count + " more; --format json tells of each"));
        }
    }

    private Optional<String> first(Finding finding) {
        return wording.remedies(finding).stream().findFirst();
    }

    /** Whether the subject is the document whose place is told. */
    private static boolean onWholeDocument(Finding finding) {
        return !finding.where().isEmpty() && finding.subject().startsWith("document:")
                && finding.where().get(0).file().endsWith(finding.subject().substring("document:".length()));
    }

    static Tone tone(Severity severity) {
        return switch (severity) {
            case ERROR -> Tone.ERROR;
            case WARNING -> Tone.WARNING;
            case NOTE -> Tone.NOTE;
        };
    }

    /** The first place, which is the one to mend, and those that no reason tells. */
    private void places(Sheet sheet, Finding finding, List<Told> reasons, boolean subjectKnown) {
        Set<Origin> told = new HashSet<>();
        reasons.forEach(reason -> gather(reason, told));
        List<Origin> shown = new ArrayList<>();
        for (Origin origin : finding.where()) {
            if (shown.isEmpty() || !told.contains(origin)) {
                shown.add(origin);
            }
        }
        List<Span> first = new ArrayList<>();
        if (!shown.isEmpty()) {
            first.add(Span.plain(Places.of(shown.get(0))));
        }
        if (!subjectKnown && !onWholeDocument(finding)) {
            first.add(Span.faint((first.isEmpty() ? "" : ", ") + finding.subject() + label(finding)));
        }
        if (!first.isEmpty()) {
            sheet.entry(Span.faint("at"), first.toArray(Span[]::new));
        }
        shown.stream().skip(1).limit(MOST_PLACES - 1L).forEach(origin -> sheet.more(0, Span.plain(Places.of(origin))));
        if (shown.size() > MOST_PLACES) {
            sheet.more(0, Span.plain("and " + Phrases.count(shown.size() - MOST_PLACES, "more place", "more places")));
        }
    }

    private static void gather(Told reason, Set<Origin> places) {
        reason.where().ifPresent(places::add);
        reason.premises().forEach(premise -> gather(premise, places));
    }

    private String label(Finding finding) {
        String subject = finding.subject();
        String id = subject.substring(subject.indexOf(':') + 1);
        Optional<Part> host = subject.startsWith("part:") ? Optional.ofNullable(catalog.parts().get(id))
                : subject.startsWith("platform:") ? Optional.ofNullable(catalog.platforms().get(id)) : Optional.empty();
        return host.filter(part -> !onAnother(finding, part)).map(Part::label).filter(text -> !text.equals(id)).map(text -> " \"" + text + "\"").orElse("");
    }

    /** Whether it is about another entry that has the part's id too. */
    private static boolean onAnother(Finding finding, Part part) {
        Origin kept = part.origin();
        return finding.where().stream().limit(1).anyMatch(at -> ENTRY_ID.matcher(at.pointer()).matches() && !(at.file().equals(kept.file()) && at.pointer().equals(kept.pointer() + "/id")));
    }

    /** A reason that is used again is numbered where it is told, and afterwards only referred to. */
    static void why(Sheet sheet, List<Told> reasons, String file) {
        if (reasons.isEmpty()) {
            return;
        }
        Map<Told, Integer> uses = new HashMap<>();
        reasons.forEach(reason -> count(reason, uses));
        Telling telling = new Telling(uses, file, new HashMap<>(), new HashSet<>(), new ArrayList<>());
        reasons.forEach(reason -> telling.row(reason, 0));
        sheet.aligned(Span.faint("why"), telling.rows);
    }

    private static void count(Told reason, Map<Told, Integer> uses) {
        if (uses.merge(reason, 1, Integer::sum) == 1) {
            reason.premises().forEach(premise -> count(premise, uses));
        }
    }

    private record Telling(Map<Told, Integer> uses, String file, Map<Told, Integer> numbers, Set<Told> said, List<Sheet.Row> rows) {

        void row(Told reason, int depth) {
            if (!said.add(reason)) {
                if (depth > 0) {
                    rows.add(new Sheet.Row(2 * depth, "by (" + numbers.get(reason) + ")", ""));
                }
                return;
            }
            String number = "";
            if (uses.get(reason) > 1) {
                numbers.put(reason, numbers.size() + 1);
                number = "(" + numbers.get(reason) + ") ";
            }
            rows.add(new Sheet.Row(2 * depth, number + reason.fact(), reason.where().map(origin -> Places.of(origin, file)).orElse("")));
            reason.premises().forEach(premise -> row(premise, depth + 1));
        }
    }

    private static void remedies(Sheet sheet, List<String> remedies) {
        boolean first = true;
        for (String remedy : remedies) {
            if (first) {
                sheet.entry(Span.faint("try"), Span.plain(remedy));
            } else {
                sheet.more(0, Span.plain(remedy));
            }
            first = false;
        }
    }
}

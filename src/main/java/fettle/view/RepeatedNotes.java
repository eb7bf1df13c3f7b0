package fettle.view;

import fettle.document.Origin;
import fettle.engine.Severity;
import fettle.judgement.Finding;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;

/**
 * Notes of one rule that are so many that a reader is better served by a few of them and the places of the rest, as all prices grow old on the day of a patch. Whatever is graver
 * is told one by one, and other forms of output tell all.
 */
final class RepeatedNotes {

    /** The most notes of a rule that are all told. */
    private static final int MOST = 12;
    /** How many are told where there are more. */
    private static final int FIRST = 3;

    private final List<Finding> told = new ArrayList<>();
    private final Map<String, List<Finding>> rest = new LinkedHashMap<>();

    RepeatedNotes(List<Finding> findings) {
        Map<String, Long> notes = findings.stream().filter(RepeatedNotes::note).collect(Collectors.groupingBy(Finding::rule, Collectors.counting()));
        Map<String, Integer> first = new LinkedHashMap<>();
        for (Finding finding : findings) {
            boolean few = !note(finding) || notes.get(finding.rule()) <= MOST || first.merge(finding.rule(), 1, Integer::sum) <= FIRST;
            (few ? told : rest.computeIfAbsent(finding.rule(), unused -> new ArrayList<>())).add(finding);
        }
    }

    private static boolean note(Finding finding) {
        return finding.severity() == Severity.NOTE;
    }

    /** Those that are told in full, in order. */
    List<Finding> told() {
        return told;
    }

    /** Writes where the rest are. */
    void rest(Sheet sheet) {
        rest.forEach((rule, findings) -> {
            sheet.entry(new Span(Severity.NOTE.word(), FindingText.tone(Severity.NOTE)), Span.strong(findings.size() + " more of " + rule));
            SortedMap<String, TreeSet<Origin>> places = new TreeMap<>();
            findings.forEach(finding -> finding.where().stream().limit(1).forEach(at -> places.computeIfAbsent(at.file(), unused -> new TreeSet<>()).add(at)));
            List<Span> lines = places.values().stream()
                    .map(at -> Span.plain(Places.of(at.first()) + (at.size() == 1 ? "" : " and " + Phrases.count(at.size() - 1, "place", "places") + " below it"))).toList();
            lines.stream().limit(1).forEach(line -> sheet.entry(Span.faint("at"), line));
            lines.stream().skip(1).forEach(line -> sheet.more(0, line));
            sheet.entry(Span.faint("try"), Span.plain("What is told to try with the first ones holds here too; --format json tells of each."));
            sheet.blank();
        });
    }
}

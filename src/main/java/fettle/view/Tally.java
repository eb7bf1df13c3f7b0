package fettle.view;

import fettle.engine.Severity;
import fettle.judgement.Finding;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;

/** Counts findings by severity; waived ones are counted apart, and there alone. */
public record Tally(int errors, int warnings, int notes, int waived) {

    /** Counts findings. */
    public static Tally of(Collection<Finding> findings) {
        return new Tally(
                count(findings, Severity.ERROR), count(findings, Severity.WARNING), count(findings, Severity.NOTE),
                (int) findings.stream().filter(finding -> finding.waived().isPresent()).count());
    }

    private static int count(Collection<Finding> findings, Severity severity) {
        return (int) findings.stream().filter(finding -> finding.waived().isEmpty() && finding.severity() == severity).count();
    }

    /** {@code 2 errors and 1 note; 1 waived}. */
    String inWords() {
        List<String> counts = new ArrayList<>();
        add(counts, errors, "error", "errors");
        add(counts, warnings, "warning", "warnings");
        add(counts, notes, "note", "notes");
        String found = counts.isEmpty() ? "no findings" : Phrases.and(counts);
        return waived == 0 ? found : found + "; " + waived + " waived";
    }

    private static void add(List<String> counts, int number, String one, String several) {
        if (number > 0) {
            counts.add(Phrases.count(number, one, several));
        }
    }
}

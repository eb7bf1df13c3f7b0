package fettle.view;

import fettle.judgement.Finding;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;

/**
 * Documents that could not be read in full, so that what is told of others may come from there.
 *
 * @param files their names
 * @param findings how many findings may come from them
 */
record Unread(Set<String> files, int findings) {

    /** So many findings are seen at a glance. */
    private static final int FEW = 6;

    /** The value of a finding that names the documents that it may come from. */
    static final String FILES = "unread";

    /** What these findings say of it. */
    static Unread of(List<Finding> findings) {
        List<Finding> doubtful = findings.stream().filter(finding -> finding.data().containsKey(FILES)).toList();
        Set<String> files = new TreeSet<>();
        doubtful.forEach(finding -> ((Collection<?>) finding.data().get(FILES)).forEach(file -> files.add((String) file)));
        return new Unread(files, doubtful.size());
    }

    boolean none() {
        return findings == 0;
    }

    /** The findings of each severity with those first that others may come from: what is wrong with these documents. */
    List<Finding> first(List<Finding> told) {
        return told.stream().sorted(Comparator.comparing(Finding::severity).thenComparing(finding -> !isCause(finding))).toList();
    }

    private boolean isCause(Finding finding) {
        return finding.subject().startsWith("document:") && finding.where().stream().anyMatch(place -> files.contains(place.file()));
    }

    /** Says what to begin with above findings, where these are so many, or no summary comes, that it would not be seen below them. */
    void above(Sheet sheet, int told, boolean summary) {
        if (!none() && (!summary || told > FEW)) {
            write(sheet);
            sheet.blank();
        }
    }

    /** Says what to begin with, where there is such a thing. */
    void write(Sheet sheet) {
        if (none()) {
            return;
        }
        sheet.paragraph(0, 2, Span.plain("Begin with " + Phrases.and(files) + ", of which not all could be read: " + Phrases.count(findings, "finding", "findings")
                + " may come from that."));
    }
}

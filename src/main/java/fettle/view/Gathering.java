package fettle.view;

import fettle.document.Origin;
import fettle.engine.Severity;
import fettle.judgement.Finding;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Consumer;

/**
 * Findings that are so many that a reader is better served by a few of them and the places of the rest: those that have one cause, as every mention of a name that nothing has; and of
 * one rule, notes, as all prices grow old on the day of a patch, and whatever may come from a document that could not be read. Of many warnings of one rule each is told, all but a
 * dozen in a line. All else is told one by one, and other forms of output tell all.
 */
final class Gathering {

    /** The most findings with one cause that are all told. */
    private static final int MOST_ALIKE = 3;
    /** The most of one rule that are all told in full, where any may be shortened or left out at all. */
    private static final int MOST = 12;
    /** How many are told where there are more. */
    private static final int FIRST = 3;

    /** One that is told in full, and those with the same cause. */
    private record Group(Finding told, List<Finding> others) {
        List<Finding> all() {
            List<Finding> all = new ArrayList<>(List.of(told));
            all.addAll(others);
            return all;
        }
    }

    /** What may be left out for there being many of it. */
    private record Lot(Severity severity, String rule) {}

    private final Wording wording;
    private final List<Group> told = new ArrayList<>();
    private final Map<Lot, List<Finding>> shortened = new LinkedHashMap<>();
    private final Map<Lot, List<Finding>> rest = new LinkedHashMap<>();

    /** The findings come with the gravest first, and are told in this order. */
    Gathering(Wording wording, List<Finding> findings) {
        this.wording = wording;
        List<Group> groups = groups(findings);
        Map<Lot, Integer> sizes = new HashMap<>();
        groups.forEach(group -> sizes.merge(lot(group), 1, Integer::sum));
        Map<Lot, Integer> first = new HashMap<>();
        for (Group group : groups) {
            Lot lot = lot(group);
            boolean spare = spare(group.told);
            boolean brief = !spare && lot.severity == Severity.WARNING && group.others.isEmpty();
            if (!spare && !brief || sizes.get(lot) <= MOST || first.merge(lot, 1, Integer::sum) <= (brief ? MOST : FIRST)) {
                told.add(group);
            } else if (brief) {
                shortened.computeIfAbsent(lot, unused -> new ArrayList<>()).add(group.told);
            } else {
                rest.computeIfAbsent(lot, unused -> new ArrayList<>()).addAll(group.all());
            }
        }
    }

    private List<Group> groups(List<Finding> findings) {
        Map<List<Object>, List<Finding>> causes = new HashMap<>();
        findings.forEach(finding -> causes.computeIfAbsent(cause(finding), unused -> new ArrayList<>()).add(finding));
        List<Group> groups = new ArrayList<>();
        for (Finding finding : findings) {
            List<Finding> alike = causes.get(cause(finding));
            if (alike.size() <= MOST_ALIKE || wording.alike(finding).isEmpty()) {
                groups.add(new Group(finding, List.of()));
            } else if (alike.get(0) == finding) {
                groups.add(new Group(finding, alike.subList(1, alike.size())));
            }
        }
        return groups;
    }

    private List<Object> cause(Finding finding) {
        return List.of(finding.rule(), finding.severity(), wording.alike(finding));
    }

    /** Whether a finding may be left out for there being many: where nothing is wrong, or where something else is to be mended first. */
    private static boolean spare(Finding finding) {
        return finding.severity() == Severity.NOTE || finding.data().containsKey(Unread.FILES);
    }

    private static Lot lot(Group group) {
        return new Lot(group.told.severity(), group.told.rule());
    }

    /** Writes them all, those that are left out behind those of the same severity. */
    void write(Sheet sheet, FindingText text) {
        for (Severity severity : Severity.values()) {
            write(sheet, text, severity, finding -> text.write(sheet, finding, false), true);
        }
    }

    /** Writes notes closely, each by its teller. */
    void notes(Sheet sheet, FindingText text, Consumer<Finding> teller) {
        write(sheet, text, Severity.NOTE, teller, false);
        if (!told.isEmpty()) {
            sheet.blank();
        }
    }

    private void write(Sheet sheet, FindingText text, Severity severity, Consumer<Finding> teller, boolean apart) {
        told.stream().filter(group -> group.told.severity() == severity).forEach(group -> {
            teller.accept(group.told);
            if (!group.others.isEmpty()) {
                text.others(sheet, group.told, wording.alike(group.told).orElseThrow(), group.others);
            }
            if (apart) {
                sheet.blank();
            }
        });
        shortened.forEach((lot, findings) -> {
            if (lot.severity == severity) {
                sheet.paragraph(0, 2, Span.plain(findings.size() + " more of " + lot.rule + ", each in a line; --format json tells why, and what to do."));
                findings.forEach(finding -> text.inALine(sheet, finding));
                sheet.blank();
            }
        });
        rest.forEach((lot, findings) -> {
            if (lot.severity == severity) {
                rest(sheet, lot, findings, apart ? "What is told to try with the first ones holds here too; " : "");
                if (apart) {
                    sheet.blank();
                }
            }
        });
    }

    private static void rest(Sheet sheet, Lot lot, List<Finding> findings, String advice) {
        boolean note = lot.severity == Severity.NOTE;
        sheet.entry(new Span(lot.severity.word(), FindingText.tone(lot.severity)),
                Span.strong(findings.size() + " more of " + lot.rule + (note ? "" : " that may come from what could not be read")));
        SortedMap<String, TreeSet<Origin>> places = new TreeMap<>();
        findings.forEach(finding -> finding.where().stream().limit(1).forEach(at -> places.computeIfAbsent(at.file(), unused -> new TreeSet<>()).add(at)));
        List<Span> lines = places.values().stream()
                .map(at -> Span.plain(Places.of(at.first()) + (at.size() == 1 ? "" : " and " + Phrases.count(at.size() - 1, "place", "places") + " below it"))).toList();
        lines.stream().limit(1).forEach(line -> sheet.entry(Span.faint("at"), line));
        lines.stream().skip(1).forEach(line -> sheet.more(0, line));
        sheet.entry(Span.faint("try"), Span.plain(advice + "--format json tells of each."));
    }
}

package fettle.view;

import fettle.catalog.Part;
import fettle.judgement.Comparison;
import fettle.judgement.PatchedBuild;
import fettle.space.Change;
import fettle.space.EntryName;
import fettle.space.patch.BuildShift;
import fettle.space.patch.EntryRename;
import fettle.space.patch.Rename;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * Writes what differs between two catalogs for people: renamed, added, removed and changed entries. What was done to many entries alike is told once
 * for all of them.
 */
final class ChangeList {

    /** From so many entries on, what was done to all of them is told in one line. */
    private static final int MANY = 5;
    private static final int MOST_LINES = 60;

    private final Sheet sheet;
    private final Comparison comparison;
    private final Map<Change, Set<String>> builds = new LinkedHashMap<>();

    ChangeList(Sheet sheet, Comparison comparison) {
        this.sheet = sheet;
        this.comparison = comparison;
        comparison.builds().forEach(this::noteBlame);
    }

    private void noteBlame(PatchedBuild build) {
        BuildShift shift = build.shift();
        List<Change> blame = new ArrayList<>(shift.blame());
        shift.figures().forEach(figure -> blame.addAll(figure.blame()));
        shift.crossings().forEach(crossing -> blame.addAll(crossing.blame()));
        blame.forEach(change -> builds.computeIfAbsent(change, unused -> new LinkedHashSet<>()).add(build.id()));
    }

    void write() {
        List<Change> changes = comparison.changes().all();
        Set<EntryName> renamed = new HashSet<>();
        for (Rename rename : comparison.changes().renames()) {
            renamed.add(rename.from());
            renamed.add(rename.to());
            renamed(rename);
        }
        for (EntryRename rename : comparison.changes().entryRenames()) {
            renamed.add(rename.from());
            renamed.add(rename.to());
            sheet.entry(Span.faint("renamed"), Span.plain(ChangeWording.entry(rename.from()) + " is probably " + rename.to().id() + " now"),
                    Span.plain(" "), Span.faint("(a guess: all else is the same)"),
                    reach(changes.stream().filter(change -> change.whole() && change.entry().equals(rename.from())).toList()));
        }
        slots();
        List<Change> whole = changes.stream().filter(change -> change.whole() && !renamed.contains(change.entry())).toList();
        entries("added", whole.stream().filter(Change::added).toList());
        entries("removed", whole.stream().filter(Change::removed).toList());
        changed(changes.stream().filter(change -> !change.whole()).toList());
    }

    private void renamed(Rename rename) {
        List<String> evidence = new ArrayList<>();
        evidence.add("same kind");
        evidence.add(Phrases.count(rename.equal(), "property", "properties") + " the same, " + (rename.differing() == 0 ? "none" : rename.differing()) + " different");
        if (rename.namesNear()) {
            evidence.add("names alike");
        }
        sheet.entry(Span.faint("renamed"), Span.plain(ChangeWording.entry(rename.from()) + " is probably " + rename.to().id() + " now"),
                Span.plain(" "), Span.faint("(a guess: " + String.join(", ", evidence) + ")"));
        rename.changes().forEach(change -> sheet.more(2, Span.plain(ChangeWording.property(change))));
    }

    /** Slots, those renamed alike on several hosts in one line. */
    private void slots() {
        Map<List<String>, List<String>> hosts = new LinkedHashMap<>();
        comparison.changes().slotRenames().forEach(slot ->
                hosts.computeIfAbsent(List.of(slot.from(), slot.to()), unused -> new ArrayList<>()).add(ChangeWording.entry(slot.host())));
        hosts.forEach((ids, bearers) -> sheet.entry(Span.faint("renamed"),
                Span.plain("slot " + ids.get(0) + " of " + Phrases.and(bearers) + " is probably " + ids.get(1) + " now"), Span.plain(" "), Span.faint("(a guess: it takes the same)")));
    }

    private void entries(String word, List<Change> changes) {
        Map<String, List<Change>> sections = new TreeMap<>();
        changes.forEach(change -> sections.computeIfAbsent(change.entry().section(), unused -> new ArrayList<>()).add(change));
        sections.forEach((section, same) -> {
            if (same.size() < MANY) {
                same.forEach(change -> sheet.entry(Span.faint(word), Span.plain(ChangeWording.entry(change.entry()) + kind(change)), reach(List.of(change))));
            } else {
                sheet.entry(Span.faint(word), Span.plain(same.size() + " " + section + ": " + Phrases.and(Phrases.each(same, change -> change.entry().id()))),
                        reach(same));
            }
        });
    }

    private String kind(Change change) {
        Part part = (change.added() ? comparison.now() : comparison.old()).catalog().parts().get(change.entry().id());
        return change.entry().section().equals("parts") && part != null ? part.kind().map(kind -> " (" + kind + ")").orElse("") : "";
    }

    private void changed(List<Change> changes) {
        Map<String, List<Change>> alike = new LinkedHashMap<>();
        changes.forEach(change -> alike.computeIfAbsent(done(change), unused -> new ArrayList<>()).add(change));
        Map<EntryName, List<Change>> single = new TreeMap<>();
        alike.forEach((done, same) -> {
            if (entries(same) < MANY) {
                same.forEach(change -> single.computeIfAbsent(change.entry(), unused -> new ArrayList<>()).add(change));
            } else {
                sheet.entry(Span.faint("changed"), Span.plain(done + " of " + Phrases.count(entries(same), "entry", "entries") + ": " + listed(same)), reach(same));
            }
        });
        int told = 0;
        for (Map.Entry<EntryName, List<Change>> entry : single.entrySet()) {
            if (++told > MOST_LINES) {
                sheet.entry(Span.faint("changed"), Span.plain(Phrases.count(single.size() - MOST_LINES, "more entry", "more entries") + ", all of them in JSON"));
                break;
            }
            sheet.entry(Span.faint("changed"),
                    Span.plain(ChangeWording.entry(entry.getKey()) + ": " + String.join("; ", Phrases.each(entry.getValue(), ChangeWording::property))),
                    reach(entry.getValue()));
        }
    }

    private static long entries(List<Change> changes) {
        return changes.stream().map(Change::entry).distinct().count();
    }

    /** What was done, equal for what is worth telling once: to any offers of one vendor, or just the same. */
    private static String done(Change change) {
        if (!offered(change)) {
            return ChangeWording.property(change);
        }
        String vendor = change.path().get(1).replaceFirst("[:#].*", "");
        String last = change.path().get(change.path().size() - 1);
        String offers = "offers at " + vendor;
        return change.path().size() > 2 ? offers + ", " + last : offers + (change.added() ? ", new" : ", gone");
    }

    private static boolean offered(Change change) {
        return change.path().size() > 1 && change.property().equals("offers");
    }

    private static String listed(List<Change> same) {
        return Phrases.and(Phrases.each(same, change -> {
            boolean moved = offered(change) && change.path().size() > 2 && change.from().isPresent() && change.to().isPresent();
            return change.entry().id() + (moved ? " from " + change.from().get().text() + " to " + change.to().get().text() : "");
        }));
    }

    /** The platforms that can hold these parts, where several can, and the builds that they moved. */
    private Span reach(Collection<Change> changes) {
        SortedSet<String> platforms = new TreeSet<>();
        Set<String> moved = new TreeSet<>();
        for (Change change : changes) {
            if (change.entry().section().equals("parts")) {
                platforms.addAll(Optional.ofNullable(comparison.touched().get(change.entry().id())).orElseGet(TreeSet::new));
            }
            moved.addAll(builds.getOrDefault(change, Set.of()));
        }
        List<String> says = new ArrayList<>();
        if (platforms.size() > 1) {
            says.add("on " + Phrases.and(platforms));
        }
        if (!moved.isEmpty()) {
            says.add("moves " + Phrases.and(moved));
        }
        return Span.faint(says.isEmpty() ? "" : "  (" + String.join("; ", says) + ")");
    }
}

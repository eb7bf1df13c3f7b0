package fettle.view;

import fettle.catalog.Attribute;
import fettle.catalog.Catalog;
import fettle.catalog.CatalogHead;
import fettle.engine.Severity;
import fettle.judgement.Comparison;
import fettle.judgement.Finding;
import fettle.judgement.PatchedBuild;
import fettle.space.BuildResult;
import fettle.space.patch.BuildShift;
import fettle.space.patch.FigureShift;
import fettle.space.patch.LimitCrossing;
import fettle.space.patch.Verdict;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.stream.Collectors;

/** Writes a comparison for people: what broke first, then what shifted, then what changed. */
public final class ComparisonText {

    private static final int MOST_BUILDS = 60;
    private static final String SHIFTED = "build-shifted";
    private static final String CROSSED = "limit-crossed";

    private final Wording wording;
    private final TextStyle style;

    public ComparisonText(Wording wording, TextStyle style) {
        this.wording = wording;
        this.style = style;
    }

    /** The text of a comparison. */
    public String of(Report report, Comparison comparison) {
        Sheet sheet = new Sheet(style.colour());
        Catalog catalog = comparison.now().catalog();
        FindingText text = new FindingText(wording, catalog);
        List<Finding> told = report.findings().stream().filter(finding -> style.tells(finding.severity())).toList();
        Unread unread = Unread.of(told);
        unread.above(sheet, told.size(), style.quiet().isEmpty());
        new Gathering(wording, unread.first(catalogFirst(told))).write(sheet, text);
        if (style.quiet().isEmpty()) {
            doubt(sheet, comparison);
            mended(sheet, comparison);
            shifted(sheet, comparison, told);
            notes(sheet, told, text);
            int before = sheet.toString().length();
            new ChangeList(sheet, comparison).write();
            if (sheet.toString().length() > before) {
                sheet.blank();
            }
            summary(sheet, report, comparison);
            unread.write(sheet);
        } else {
            notes(sheet, told, text);
        }
        return sheet.toString();
    }

    /** What is wrong with the catalog itself comes before what builds suffer from that. */
    private static List<Finding> catalogFirst(List<Finding> told) {
        return told.stream().filter(ComparisonText::grave).sorted(Comparator.comparing(finding -> finding.subject().startsWith("build:"))).toList();
    }

    private static boolean grave(Finding finding) {
        return finding.severity() != Severity.NOTE;
    }

    /** What is told of entries that one side seems not to have may come from what could not be read there. */
    private static void doubt(Sheet sheet, Comparison comparison) {
        List<String> before = comparison.old().unread();
        List<String> after = comparison.now().unread();
        if (!before.isEmpty()) {
            sheet.paragraph(0, 2, Span.plain("Not all of " + Phrases.and(before) + " of the old catalog could be read: what seems new, gained or mended may have been there before."));
        }
        if (!after.isEmpty()) {
            sheet.paragraph(0, 2, Span.plain("Not all of " + Phrases.and(after) + " of the new catalog could be read: what seems gone, lost or broken may still be there."));
        }
        if (!before.isEmpty() || !after.isEmpty()) {
            sheet.blank();
        }
    }

    private static List<PatchedBuild> judged(List<PatchedBuild> builds) {
        return builds.stream().filter(build -> !build.unjudged()).toList();
    }

    private static void mended(Sheet sheet, Comparison comparison) {
        List<PatchedBuild> mended = judged(with(comparison.builds(), Verdict.MENDED));
        String since = comparison.old().unread().isEmpty() ? " since " : ", perhaps since ";
        for (PatchedBuild build : mended) {
            List<String> through = build.shift().blame().stream().map(ChangeWording::sentence).toList();
            sheet.entry(new Span("mended", Tone.GOOD), Span.plain("build " + build.id() + " is valid now"),
                    Span.faint((through.isEmpty() ? "" : since + Phrases.and(through)) + besides(former(build))));
        }
        if (!mended.isEmpty()) {
            sheet.blank();
        }
    }

    private void shifted(Sheet sheet, Comparison comparison, List<Finding> told) {
        Set<String> crossing = told.stream().filter(finding -> finding.rule().equals(CROSSED)).map(Finding::subject).collect(Collectors.toSet());
        List<PatchedBuild> shifted = judged(with(comparison.builds(), Verdict.SHIFTED)).stream().filter(build -> !(crossing.contains(build.subject()) && crossesOnly(build))).toList();
        List<PatchedBuild> all = shifted;
        SortedSet<String> passing = passing(comparison, all);
        shifted = all.stream().filter(build -> !passesOnly(build, passing)).toList();
        if (shifted.size() < all.size()) {
            sheet.entry(Span.faint("shifted"), Span.plain(Phrases.count(all.size() - shifted.size(), "build", "builds") + ", in nothing but what only one of the catalogs counts: "
                    + Phrases.and(List.copyOf(passing))));
        }
        shifted.stream().limit(MOST_BUILDS).forEach(build -> {
            List<String> moved = new ArrayList<>(build.shift().figures().stream().filter(figure -> !passing.contains(figure.figure())).map(figure -> moved(comparison, build.shift(), figure)).toList());
            moved.addAll(build.limits());
            List<String> besides = new ArrayList<>();
            if (!build.shift().after().valid()) {
                besides.add("not valid, before or after");
            }
            build.renamed().ifPresent(names -> besides.add("written with " + Phrases.and(names)));
            besides.addAll(former(build));
            sheet.entry(Span.faint("shifted"), Span.plain("build " + build.id() + (moved.isEmpty() ? "" : ": ") + String.join("; ", moved)),
                    Span.faint(besides(besides)));
        });
        if (shifted.size() > MOST_BUILDS) {
            sheet.entry(Span.faint("shifted"), Span.plain(Phrases.count(shifted.size() - MOST_BUILDS, "more build", "more builds") + ", all of them in JSON"));
        }
        if (!all.isEmpty()) {
            sheet.blank();
        }
    }

    /** The attributes in which builds shifted since one of the catalogs lacks them. */
    private static SortedSet<String> passing(Comparison comparison, List<PatchedBuild> shifted) {
        Set<String> then = comparison.old().catalog().attributes().keySet();
        Set<String> since = comparison.now().catalog().attributes().keySet();
        return shifted.stream().flatMap(build -> build.shift().figures().stream()).filter(figure -> !figure.cost() && then.contains(figure.figure()) != since.contains(figure.figure()))
                .map(FigureShift::figure).collect(Collectors.toCollection(TreeSet::new));
    }

    /** Whether nothing of a build moved but such attributes. */
    private static boolean passesOnly(PatchedBuild build, Set<String> passing) {
        BuildShift shift = build.shift();
        return !shift.figures().isEmpty() && shift.figures().stream().allMatch(figure -> passing.contains(figure.figure())) && shift.crossings().isEmpty() && shift.after().valid()
                && build.renamed().isEmpty() && build.formerNames().isEmpty();
    }

    /** Whether nothing of a build moved but that it is outside limits now, which findings tell. */
    private static boolean crossesOnly(PatchedBuild build) {
        BuildShift shift = build.shift();
        return shift.figures().isEmpty() && shift.crossings().stream().allMatch(LimitCrossing::outward) && shift.after().valid()
                && build.renamed().isEmpty() && build.formerNames().isEmpty();
    }

    private static List<String> former(PatchedBuild build) {
        return build.formerNames().stream().map(name -> name.written() + " taken for " + name.former() + " before").toList();
    }

    private static String besides(List<String> besides) {
        return besides.isEmpty() ? "" : "  (" + String.join("; ", besides) + ")";
    }

    private static List<PatchedBuild> with(List<PatchedBuild> builds, Verdict verdict) {
        return builds.stream().filter(build -> build.shift().verdict() == verdict).toList();
    }

    private static String moved(Comparison comparison, BuildShift shift, FigureShift figure) {
        Catalog catalog = comparison.now().catalog();
        if (figure.cost()) {
            String currency = catalog.head().map(CatalogHead::currency).orElse("");
            String before = cost(comparison.old().catalog(), shift.before(), "");
            String after = cost(catalog, shift.after(), currency);
            boolean known = shift.before().cost().isPresent() && shift.after().cost().isPresent();
            return known ? "cost from " + before + " to " + after : "cost " + before + " before, now " + after;
        }
        Optional<Attribute> then = Optional.ofNullable(comparison.old().catalog().attributes().get(figure.figure()));
        Optional<Attribute> since = Optional.ofNullable(catalog.attributes().get(figure.figure()));
        int places = (figure.to().isEmpty() ? then : since).map(Attribute::shown).orElse(2);
        boolean seen = figure.from().isEmpty() || figure.to().isEmpty() || !rounded(figure.from(), places).equals(rounded(figure.to(), places));
        int shown = seen ? places : Math.max(figure.from().get().stripTrailingZeros().scale(), figure.to().get().stripTrailingZeros().scale());
        String from = rounded(figure.from(), shown);
        // One unit for both stands behind the second.
        boolean own = figure.from().isPresent() && (figure.to().isEmpty() || !Figures.withUnit("", then).equals(Figures.withUnit("", since)));
        return figure.figure() + " from " + (own ? Figures.withUnit(from, then) : from)
                + " to " + (figure.to().isEmpty() ? rounded(figure.to(), shown) : Figures.withUnit(rounded(figure.to(), shown), since));
    }

    private static String rounded(Optional<BigDecimal> value, int places) {
        return value.map(number -> Figures.rounded(number, Math.max(0, places))).orElse("no value");
    }

    private static String cost(Catalog catalog, BuildResult side, String currency) {
        return side.cost().map(amount -> Figures.withUnit(Figures.money(amount), currency)).orElseGet(() -> CostWording.brief(catalog, side));
    }

    /** Notes say what is so and why; what they say of a shifted build has been told. */
    private void notes(Sheet sheet, List<Finding> told, FindingText text) {
        new Gathering(wording, told.stream()
                .filter(finding -> !grave(finding) && (style.quiet().isPresent() || !finding.rule().equals(SHIFTED)))
                .toList()).notes(sheet, text, finding -> note(sheet, finding));
    }

    private void note(Sheet sheet, Finding finding) {
        sheet.entry(new Span("note", Tone.NOTE), Span.plain(wording.message(finding)), Span.plain("  "), Span.faint("(" + finding.rule() + ")"));
        if (!finding.rule().equals(SHIFTED)) {
            FindingText.why(sheet, wording.reasons(finding), "");
        }
    }

    private static void summary(Sheet sheet, Report report, Comparison comparison) {
        String patches = patch(comparison.old().catalog().head()) + " to " + patch(comparison.now().catalog().head());
        String name = comparison.now().catalog().head().map(CatalogHead::id).filter(id -> !id.isBlank()).orElse("catalog without a name");
        List<String> builds = new ArrayList<>();
        for (Verdict verdict : Verdict.values()) {
            int count = judged(with(comparison.builds(), verdict)).size();
            if (count > 0) {
                builds.add(count + " " + verdict.word());
            }
        }
        long unjudged = comparison.builds().stream().filter(PatchedBuild::unjudged).count();
        if (unjudged > 0) {
            builds.add(unjudged + " that can't be judged");
        }
        String told = comparison.builds().isEmpty() ? "" : Phrases.count(comparison.builds().size(), "build", "builds") + ": " + String.join(", ", builds) + "; ";
        String found = report.findings().isEmpty() ? "" : "; " + report.tally().inWords();
        String differences = comparison.changes().none() ? "nothing differs" + found : report.tally().inWords();
        sheet.paragraph(0, 2, Span.strong(name + ", " + patches + ": " + told + differences + "."),
                Span.plain(comparison.advice().isEmpty() ? " Which parts are outclassed was not compared; --advice all does it." : ""));
    }

    private static String patch(Optional<CatalogHead> head) {
        return head.map(CatalogHead::patch).filter(patch -> !patch.isEmpty()).map(patch -> "patch " + patch).orElse("a patch without a name");
    }
}

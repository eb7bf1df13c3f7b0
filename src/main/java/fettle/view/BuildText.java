package fettle.view;

import fettle.catalog.Attribute;
import fettle.catalog.Build;
import fettle.catalog.Catalog;
import fettle.catalog.CatalogHead;
import fettle.catalog.Part;
import fettle.document.Origin;
import fettle.engine.Severity;
import fettle.judgement.BuildReview;
import fettle.judgement.Finding;
import fettle.space.BuildResult;
import fettle.space.LimitMargin;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;

/** Writes one build for people: whether it is valid, what it comes to, how it stands to each limit, and its findings. */
final class BuildText {

    /** Where on a build a finding is, in its data. */
    private static final String PATH = "path";

    private final Catalog catalog;
    private final FindingText findings;
    private final LimitWording wording;

    BuildText(Wording wording, Catalog catalog) {
        this.catalog = catalog;
        this.findings = new FindingText(wording, catalog);
        this.wording = new LimitWording(catalog);
    }

    /**
     * Writes the build.
     *
     * @param briefly whether notes are told without their reasons and what to do
     */
    void write(Sheet sheet, BuildReview review, List<Finding> told, boolean briefly) {
        BuildResult result = review.result();
        Build build = result.build();
        sheet.entry(
                Span.faint("build"), Span.strong(build.id().isBlank() ? "without an id" : Phrases.named(build.id(), build.label())), Span.plain(": "),
                result.valid() ? new Span("valid", Tone.GOOD) : new Span("not valid", Tone.ERROR));
        sheet.entry(Span.faint("at"), Span.plain(Places.of(build.origin())));
        sheet.entry(Span.faint("on"), Span.plain(on(catalog, build)));
        totals(sheet, result);
        sheet.entry(Span.faint("cost"), Span.plain(cost(catalog, result)));
        limits(sheet, result.limits());
        boolean followed = false;
        for (List<Finding> same : apartFromPath(told)) {
            Finding first = same.get(0);
            boolean brief = briefly && first.severity() == Severity.NOTE;
            if (!brief || !followed) {
                sheet.blank();
            }
            followed = brief;
            if (brief) {
                findings.briefly(sheet, first, build.origin());
            } else {
                findings.write(sheet, first, true);
            }
            if (same.size() > 1) {
                List<String> paths = Phrases.each(same.subList(1, same.size()), other -> path(other, first));
                sheet.entry(Span.faint("also"), Span.plain("the same at " + Phrases.and(paths) + "."));
            }
        }
    }

    /** The findings in their order, those together that say the same of several places, as of slots that are alike. */
    private static Collection<List<Finding>> apartFromPath(List<Finding> findings) {
        Map<Object, List<Finding>> same = new LinkedHashMap<>();
        for (Finding finding : findings) {
            SortedMap<String, Object> data = new TreeMap<>(finding.data());
            boolean placed = data.remove(PATH) != null;
            Object said = placed ? List.of(finding.rule(), finding.severity(), finding.because(), data) : finding;
            same.computeIfAbsent(said, unused -> new ArrayList<>()).add(finding);
        }
        return same.values();
    }

    /** Where on the build it is, and in the document where that is not where another one is. */
    private static String path(Finding finding, Finding told) {
        String path = String.valueOf(finding.data().get(PATH));
        if (finding.where().isEmpty() || finding.where().equals(told.where())) {
            return path;
        }
        Origin place = finding.where().get(0);
        return path + " (" + (told.where().isEmpty() ? Places.of(place) : Places.of(place, told.where().get(0).file())) + ")";
    }

    static String on(Catalog catalog, Build build) {
        String platform = build.platform().id();
        List<String> says = new ArrayList<>();
        says.add(!build.platform().named() ? "no platform" : Phrases.named(platform, Optional.ofNullable(catalog.platforms().get(platform)).map(Part::label).orElse(platform)));
        build.patch().ifPresent(patch -> says.add("for patch " + patch));
        says.add(build.loaded() ? "loaded" : "not loaded");
        build.outfit().filter(Build.Located::named).ifPresent(outfit -> says.add("wearing " + outfit.id()));
        build.access().filter(Build.Located::named).ifPresent(access -> says.add("bought as " + access.id()));
        return String.join(", ", says);
    }

    private void totals(Sheet sheet, BuildResult result) {
        List<Grid.Cell> cells = new ArrayList<>();
        result.totals().forEach((id, total) -> {
            Attribute attribute = catalog.attributes().get(id);
            String number = Figures.rounded(total, attribute.shown());
            cells.add(new Grid.Cell(attribute.label(), number, Figures.unit(number, attribute.unit())));
        });
        boolean first = true;
        for (String line : Grid.lines(cells, Sheet.WIDTH - Sheet.GUTTER)) {
            sheet.fixed(first ? Span.faint("totals") : Span.faint(""), Span.plain(line));
            first = false;
        }
    }

    static String cost(Catalog catalog, BuildResult result) {
        if (result.cost().isPresent()) {
            String cost = money(catalog, result.cost().get());
            return result.build().budget().map(budget -> cost + ", of a budget of " + money(catalog, budget)).orElse(cost);
        }
        return CostWording.none(catalog, result);
    }

    private static String money(Catalog catalog, java.math.BigDecimal amount) {
        return Figures.withUnit(Figures.money(amount), catalog.head().map(CatalogHead::currency).orElse(""));
    }

    private void limits(Sheet sheet, List<LimitMargin> limits) {
        List<String> names = Phrases.each(limits, limit -> SafeText.of(limit.limit().label()));
        List<String> values = Phrases.each(limits, wording::value);
        List<String> bounds = Phrases.each(limits, wording::bound);
        int name = Grid.widest(names);
        int value = Grid.widest(values);
        int bound = Grid.widest(bounds);
        for (int i = 0; i < limits.size(); i++) {
            LimitMargin limit = limits.get(i);
            sheet.fixed(
                    i == 0 ? Span.faint("limits") : Span.faint(""),
                    Span.plain(Grid.left(names.get(i), name) + "  " + Grid.right(values.get(i), value) + "  " + Grid.left(bounds.get(i), bound) + "  "),
                    new Span(wording.margin(limit), limit.holds() && limit.told() ? Tone.PLAIN : limit.limit().grave() ? Tone.ERROR : Tone.WARNING));
        }
    }
}

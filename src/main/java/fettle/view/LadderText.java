package fettle.view;

import fettle.catalog.Attribute;
import fettle.catalog.Catalog;
import fettle.catalog.CatalogHead;
import fettle.space.Exact;
import fettle.space.worth.Ladder;
import fettle.space.worth.Standing;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;

/** Writes the value ladder of a slot for people: rungs by rising cost, and between them what is a waste of money. */
public final class LadderText {

    private static final String GAP = "  ";
    /** How many groups people are shown. */
    static final int MOST_GROUPS = 8;

    private final Wording wording;
    private final Catalog catalog;
    private final TextStyle style;

    public LadderText(Wording wording, Catalog catalog, TextStyle style) {
        this.wording = wording;
        this.catalog = catalog;
        this.style = style;
    }

    /** The findings on documents, then the ladder. */
    public String of(Report report, Ladder ladder, Optional<String> access) {
        Sheet sheet = new Sheet(style.colour());
        new TextView(wording, style).findings(sheet, catalog, report.findings());
        if (style.quiet().isPresent()) {
            return sheet.toString();
        }
        String bought = access.map(id -> ", bought as " + id).orElse("");
        sheet.entry(Span.faint("slot"), Span.strong(ladder.slot().toString()), Span.plain(" on " + ladder.platform() + " for "),
                Span.strong(Phrases.named(ladder.lens().id(), ladder.lens().label())), Span.plain(bought));
        List<String> leftOut = ladder.lens().leftOut(catalog.attributes()).stream().map(LadderText::shown).toList();
        if (!leftOut.isEmpty()) {
            sheet.entry(Span.faint("without"), Span.plain("the weight of " + Phrases.and(leftOut)
                    + ": a ladder counts what adds up from part to part, sums and percents; improve weighs all"));
        }
        List<Ladder.Group> simplest = ladder.simplestFirst();
        for (Ladder.Group group : simplest.subList(0, Math.min(MOST_GROUPS, simplest.size()))) {
            sheet.blank();
            sheet.entry(Span.faint("serves"), Span.plain(group.roles().isEmpty() ? "no role" : Phrases.and(group.roles())));
            table(sheet, rows(group));
        }
        if (simplest.size() > MOST_GROUPS) {
            sheet.blank();
            sheet.entry(Span.faint("more"), Span.plain(Phrases.count(simplest.size() - MOST_GROUPS, "other group", "other groups")
                    + " of assemblies that serve more roles at once; --format json tells them too"));
        }
        sheet.blank();
        sheet.entry(Span.faint("in all"), Span.plain(summary(ladder)));
        sheet.blank();
        sheet.paragraph(0, 2, Span.faint("This concerns game data only, and says nothing about real equipment."));
        return sheet.toString();
    }

    private static String shown(Attribute attribute) {
        return attribute.id() + " (" + attribute.combine().name().toLowerCase(Locale.ROOT) + ")";
    }

    private static String summary(Ladder ladder) {
        if (ladder.standing().isEmpty()) {
            return "nothing that can be bought goes there";
        }
        List<String> counts = new ArrayList<>();
        for (Standing standing : Standing.values()) {
            long count = ladder.standing().values().stream().filter(standing::equals).count();
            counts.add(switch (standing) {
                case RUNG -> count + (count == 1 ? " is a rung" : " are rungs");
                case BETWEEN -> count + (count == 1 ? " lies between rungs" : " lie between rungs");
                case DOMINATED -> count + (count == 1 ? " is dominated" : " are dominated");
            });
        }
        return "of " + Phrases.count(ladder.standing().size(), "part", "parts") + " " + Phrases.and(counts);
    }

    /** @param alike what shares a rung with it */
    private record Row(Standing standing, Ladder.Offer offer, List<Ladder.Offer> alike, String step) {

        String assembly() {
            return ImprovementWording.assembly(offer.paths()) + alike.stream().map(other -> "; or " + ImprovementWording.assembly(other.paths())).collect(Collectors.joining());
        }
    }

    private static List<Row> rows(Ladder.Group group) {
        List<Row> rows = new ArrayList<>();
        group.rungs().forEach(rung -> rows.add(new Row(Standing.RUNG, rung.offer(), rung.alike(), rung.step().map(Figures::of).orElse(""))));
        group.others().forEach(other -> rows.add(new Row(other.standing(), other.offer(), List.of(), "")));
        rows.sort(Comparator.comparing((Row row) -> row.offer.cost()).thenComparing(row -> row.offer.benefit()).thenComparing(Row::standing));
        return rows;
    }

    private void table(Sheet sheet, List<Row> rows) {
        String currency = catalog.head().map(CatalogHead::currency).filter(unit -> !unit.isEmpty()).map(unit -> ", " + unit).orElse("");
        List<List<String>> columns = List.of(
                column("standing", rows.stream().map(row -> row.standing.word()).toList()),
                column("cost" + currency, rows.stream().map(row -> Figures.money(row.offer.cost())).toList()),
                column("benefit", rows.stream().map(row -> Exact.text(row.offer.benefit())).toList()),
                column("step price", rows.stream().map(Row::step).toList()));
        for (int i = 0; i <= rows.size(); i++) {
            StringBuilder line = new StringBuilder(Grid.left(columns.get(0).get(i), Grid.widest(columns.get(0))));
            for (List<String> column : columns.subList(1, columns.size())) {
                line.append(GAP).append(Grid.right(column.get(i), Grid.widest(column)));
            }
            String assembly = i == 0 ? "assembly" : rows.get(i - 1).assembly();
            sheet.tabbed(Span.faint(""), line + GAP, Span.plain(assembly));
        }
    }

    private static List<String> column(String name, List<String> cells) {
        List<String> column = new ArrayList<>(List.of(SafeText.of(name)));
        column.addAll(cells);
        return column;
    }
}

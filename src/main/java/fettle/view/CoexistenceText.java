package fettle.view;

import fettle.catalog.Catalog;
import fettle.judgement.Coexistence;
import fettle.judgement.Finding;
import fettle.space.Cause;
import fettle.space.Together;
import java.util.List;

/** Writes for people whether things can be together on a platform: a build that shows it, or why not. */
public final class CoexistenceText {

    private final Wording wording;

    public CoexistenceText(Wording wording) {
        this.wording = wording;
    }

    /** The text on several platforms, after the findings on the catalog's documents. */
    public String text(Catalog catalog, List<Finding> general, List<Coexistence> all, TextStyle style) {
        Sheet sheet = new Sheet(style.colour());
        if (!general.isEmpty()) {
            new TextView(wording, style).findings(sheet, catalog, general);
            sheet.blank();
        }
        for (int i = 0; i < all.size(); i++) {
            if (i > 0) {
                sheet.blank();
            }
            write(sheet, all.get(i));
        }
        return sheet.toString();
    }

    void write(Sheet sheet, Coexistence coexistence) {
        Span platform = Span.strong(Phrases.named(coexistence.platform().id(), coexistence.platform().label()));
        Together answer = coexistence.answer();
        if (answer instanceof Together.Possible possible) {
            sheet.entry(Span.faint("on"), platform, Span.plain(": "), new Span(said(coexistence.asked(), true), Tone.GOOD));
            build(sheet, possible);
        } else if (answer instanceof Together.Impossible impossible) {
            sheet.entry(Span.faint("on"), platform, Span.plain(": "), new Span(said(coexistence.asked(), false), Tone.ERROR));
            List<Told> told = impossible.because().stream().map((Cause cause) -> wording.told(cause)).toList();
            FindingText.why(sheet, told, "");
        } else if (answer instanceof Together.Open open) {
            sheet.entry(Span.faint("on"), platform, Span.plain(": "), new Span("not decided", Tone.WARNING));
            sheet.entry(Span.faint("since"), Span.plain(open.undecided().why() + (open.undecided().at().isEmpty() ? "" : " That is so at " + open.undecided().at() + ".")));
        }
    }

    private static String said(List<String> asked, boolean possible) {
        if (asked.isEmpty()) {
            return possible ? "there are valid builds, such as this" : "no build is valid";
        } else if (asked.size() == 1) {
            return asked.get(0) + (possible ? " can be used, as in this valid build" : " can be used in no valid build");
        }
        return Phrases.and(asked) + (possible ? " can be together, as in this valid build" : " cannot be together");
    }

    private static void build(Sheet sheet, Together.Possible possible) {
        if (possible.parts().isEmpty()) {
            sheet.entry(Span.faint("build"), Span.plain("nothing on it at all"));
        }
        int path = Grid.widest(List.copyOf(possible.parts().keySet()));
        String gutter = "build";
        for (var placed : possible.parts().entrySet()) {
            sheet.fixed(Span.faint(gutter), Span.plain(Grid.left(placed.getKey(), path) + "  " + placed.getValue()));
            gutter = "";
        }
    }
}

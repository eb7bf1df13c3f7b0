package fettle.view;

import fettle.catalog.Access;
import fettle.catalog.Catalog;
import fettle.catalog.Part;
import fettle.judgement.Coexistence;
import fettle.judgement.Finding;
import fettle.relation.Relations;
import fettle.space.worth.Placings;
import java.util.List;
import java.util.Optional;

/** Tells what is known of what an id names, and the findings about it. */
public final class ExplainView {

    private final Wording wording;
    private final Relations relations;
    private final TextStyle style;

    public ExplainView(Wording wording, Relations relations, TextStyle style) {
        this.wording = wording;
        this.relations = relations;
        this.style = style;
    }

    /** The text on everything of that name without comparing it with others, and nothing else. */
    public String about(List<IdSort.Named> named, Optional<Access> access) {
        Sheet sheet = new Sheet(style.colour());
        about(sheet, named, access, Placings.NONE);
        return sheet.toString();
    }

    private void about(Sheet sheet, List<IdSort.Named> named, Optional<Access> access, Placings placings) {
        Catalog catalog = relations.catalog();
        for (IdSort.Named each : named) {
            if (each.sort() == IdSort.PART || each.sort() == IdSort.PLATFORM) {
                Part part = (each.sort() == IdSort.PART ? catalog.parts() : catalog.platforms()).get(each.id());
                if (part != null) {
                    new PartText(wording, relations, sheet).write(PartAccount.of(relations, part, access), access, placings);
                }
            } else {
                new IdText(wording, relations, sheet).write(each);
            }
            sheet.blank();
        }
    }

    /** The findings on the catalog's documents, and the text on everything of that name, at least one thing, whether it can be on the platforms that were asked of, and how a part stands to others. */
    public String text(List<Finding> general, List<IdSort.Named> named, List<Finding> findings, Optional<Access> access, List<Coexistence> asked, Placings placings) {
        Sheet sheet = new Sheet(style.colour());
        Catalog catalog = relations.catalog();
        if (!general.isEmpty()) {
            new TextView(wording, style).findings(sheet, catalog, general);
            sheet.blank();
        }
        about(sheet, named, access, placings);
        for (Coexistence coexistence : asked) {
            new CoexistenceText(wording).write(sheet, coexistence);
            sheet.blank();
        }
        if (findings.isEmpty()) {
            sheet.paragraph(0, 2, Span.plain("No findings about " + (named.size() == 1 ? "it" : "them") + "."));
        } else {
            new TextView(wording, style).findings(sheet, catalog, findings);
        }
        return sheet.toString();
    }
}

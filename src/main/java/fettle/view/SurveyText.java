package fettle.view;

import fettle.catalog.Attribute;
import fettle.catalog.Catalog;
import fettle.judgement.PlatformSurvey;
import fettle.space.Range;
import fettle.space.Survey;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.SortedMap;

/** Writes one platform's survey for people, on one screen: how many builds, what is in none or all of them, and how far the figures reach. */
final class SurveyText {

    private final Catalog catalog;

    SurveyText(Catalog catalog) {
        this.catalog = catalog;
    }

    void write(Sheet sheet, PlatformSurvey platform) {
        List<Span> head = new ArrayList<>(List.of(Span.faint("on "), Span.strong(named(platform))));
        if (platform.survey() instanceof Survey.Known known) {
            if (known.isVoid()) {
                head.add(Span.plain(": "));
                head.add(new Span("void, no build on it is valid", Tone.ERROR));
            }
            sheet.paragraph(0, 3, head.toArray(Span[]::new));
            known(sheet, known);
        } else if (platform.survey() instanceof Survey.Open open) {
            head.add(Span.plain(": "));
            head.add(new Span("not decided", Tone.WARNING));
            sheet.paragraph(0, 3, head.toArray(Span[]::new));
            sheet.entry(Span.faint("since"), Span.plain(open.undecided().why() + (open.undecided().at().isEmpty() ? "" : " That is so at " + open.undecided().at() + ".")));
            sheet.entry(Span.faint("parts"), Span.plain(reached(open)));
        }
    }

    /** How many platforms there are, and how many of them are void or undecided. */
    static String summary(List<PlatformSurvey> platforms) {
        long empty = platforms.stream().filter(platform -> platform.survey() instanceof Survey.Known known && known.isVoid()).count();
        long open = platforms.stream().filter(platform -> platform.survey() instanceof Survey.Open).count();
        List<String> says = new ArrayList<>(List.of(Phrases.count(platforms.size(), "platform", "platforms") + " surveyed"));
        if (empty > 0) {
            says.add(empty + " void");
        }
        if (open > 0) {
            says.add(open + " not decided");
        }
        return String.join(", ", says);
    }

    private static String named(PlatformSurvey platform) {
        String id = platform.platform().id();
        String label = platform.platform().label();
        return label.equals(id) ? id : id + " \"" + label + "\"";
    }

    private static String reached(Survey survey) {
        int parts = survey.reachable().size();
        return (parts == 0 ? "none" : parts) + " can be reached";
    }

    private void known(Sheet sheet, Survey.Known survey) {
        if (survey.isVoid()) {
            sheet.entry(Span.faint("parts"), Span.plain(reached(survey)));
            return;
        }
        BigCount.of(survey.count()).write(sheet, "has", "valid build", "valid builds");
        sheet.entry(Span.faint("parts"), Span.plain(reached(survey) + used(survey)));
        list(sheet, "dead", survey.dead(), "in no valid build");
        list(sheet, "always", survey.essential(), "in every valid build");
        list(sheet, "empty", survey.deadSlots().stream().map(Object::toString).toList(), "used in no valid build");
        ranges(sheet, survey.ranges());
    }

    private static String used(Survey.Known survey) {
        if (survey.reachable().isEmpty()) {
            return "";
        }
        return survey.dead().isEmpty() ? ", each in some valid build" : ", all but " + survey.dead().size() + " in some valid build";
    }

    private static void list(Sheet sheet, String word, Collection<String> ids, String where) {
        if (!ids.isEmpty()) {
            sheet.entry(Span.faint(word), Span.plain(Phrases.and(ids) + (ids.size() == 1 ? " is " : " are ") + where));
        }
    }

    private void ranges(Sheet sheet, SortedMap<String, Range> ranges) {
        List<Attribute> attributes = ranges.keySet().stream().map(catalog.attributes()::get).toList();
        List<String> least = Phrases.each(attributes, attribute -> Figures.rounded(ranges.get(attribute.id()).least(), attribute.shown()));
        List<String> greatest = Phrases.each(attributes, attribute -> Figures.rounded(ranges.get(attribute.id()).greatest(), attribute.shown()));
        int low = Grid.widest(least);
        int high = Grid.widest(greatest);
        List<Grid.Cell> cells = new ArrayList<>();
        for (int i = 0; i < attributes.size(); i++) {
            boolean fixed = ranges.get(attributes.get(i).id()).least().compareTo(ranges.get(attributes.get(i).id()).greatest()) == 0;
            String number = fixed
                    ? "always " + Grid.right(greatest.get(i), high)
                    : Grid.right(least.get(i), low) + " to " + Grid.right(greatest.get(i), high);
            cells.add(new Grid.Cell(attributes.get(i).label(), number, Figures.unit(attributes.get(i).unit())));
        }
        boolean first = true;
        for (String line : Grid.lines(cells, Sheet.WIDTH - Sheet.GUTTER)) {
            sheet.fixed(first ? Span.faint("ranges") : Span.faint(""), Span.plain(line));
            first = false;
        }
    }
}

package fettle.view;

import fettle.catalog.Attribute;
import fettle.catalog.Catalog;
import fettle.judgement.Assemblies;
import fettle.judgement.PlatformSurvey;
import fettle.space.Assembly;
import fettle.space.Range;
import fettle.space.Survey;
import fettle.space.worth.Gains;
import fettle.space.worth.PartWorth;
import fettle.space.worth.SlotWorth;
import fettle.space.worth.Verdict;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;

/** Writes one platform's survey for people, on one screen: how many builds, what is in none or all of them, and how far the figures reach. */
final class SurveyText {

    /** A platform is to fit on a screen, so that no more parts are told of at length. */
    private static final int MOST_WASTED = 8;

    private final Catalog catalog;
    private final Gains gains;

    SurveyText(Catalog catalog, Gains gains) {
        this.catalog = catalog;
        this.gains = gains;
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
            waste(sheet, platform.slots());
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

    /** Dominated parts, those that fall to the same in several slots together. */
    private void waste(Sheet sheet, List<SlotWorth> slots) {
        Set<String> outdone = new HashSet<>();
        Set<String> told = new HashSet<>();
        Map<String, List<String>> where = new LinkedHashMap<>();
        List<String> open = new ArrayList<>();
        for (SlotWorth slot : slots) {
            slot.parts().forEach((part, worth) -> {
                if (worth.dominated().isPresent()) {
                    if (told.size() < MOST_WASTED || told.contains(part)) {
                        told.add(part);
                        waste(worth).forEach(line -> where.computeIfAbsent(line, unused -> new ArrayList<>()).add(slot.slot().toString()));
                    }
                    outdone.add(part);
                }
                if (worth.ignoringCost() instanceof Verdict.Open || worth.withCost() instanceof Verdict.Open) {
                    open.add(part + " in " + slot.slot());
                }
            });
        }
        Span word = Span.faint("wasted");
        for (Map.Entry<String, List<String>> each : where.entrySet()) {
            sheet.entry(word, Span.plain(each.getKey() + " (in " + Phrases.and(each.getValue()) + ")"));
            word = Span.faint("");
        }
        if (outdone.size() > told.size()) {
            sheet.entry(word, Span.plain("and " + Phrases.count(outdone.size() - told.size(), "part more is", "parts more are") + " outdone somewhere: fettle explain tells of one part, --format json of all"));
        }
        if (!open.isEmpty()) {
            sheet.entry(Span.faint("open"), Span.plain("not decided whether dominated: " + Phrases.and(open)));
        }
    }

    private List<String> waste(PartWorth worth) {
        Outdone outdone = Outdone.of(worth, gains).orElseThrow();
        boolean free = worth.ignoringCost() instanceof Verdict.Dominated;
        boolean priced = worth.withCost() instanceof Verdict.Dominated;
        if (outdone.forItsPrice().isPresent()) {
            return List.of(waste(outdone.by(), "whatever it costs"), waste(outdone.forItsPrice().get(), "for its price"));
        }
        return List.of(waste(outdone.by(), free && priced ? "for its price too" : free ? "whatever it costs" : "for its price"));
    }

    private String waste(Verdict.Dominated dominated, String mode) {
        return words(Optional.of(dominated.shown())) + " is outdone by " + words(dominated.by()) + ", " + mode + ": " + GainWording.of(gains.of(dominated));
    }

    private static String words(Optional<Assembly> choice) {
        return choice.map(assembly -> Assemblies.filled(assembly.paths())).orElse("leaving the slot empty");
    }

    private void ranges(Sheet sheet, SortedMap<String, Range> ranges) {
        List<Attribute> attributes = ranges.keySet().stream().map(catalog.attributes()::get).toList();
        List<String> least = Phrases.each(attributes, attribute -> Figures.rounded(ranges.get(attribute.id()).least(), places(attribute, ranges)));
        List<String> greatest = Phrases.each(attributes, attribute -> Figures.rounded(ranges.get(attribute.id()).greatest(), places(attribute, ranges)));
        int low = Grid.widest(least);
        int high = Grid.widest(greatest);
        List<Grid.Cell> cells = new ArrayList<>();
        for (int i = 0; i < attributes.size(); i++) {
            boolean fixed = ranges.get(attributes.get(i).id()).least().compareTo(ranges.get(attributes.get(i).id()).greatest()) == 0;
            String number = fixed
                    ? "always " + Grid.right(greatest.get(i), high)
                    : Grid.right(least.get(i), low) + " to " + Grid.right(greatest.get(i), high);
            cells.add(new Grid.Cell(attributes.get(i).label(), number, Figures.unit(number, attributes.get(i).unit())));
        }
        boolean first = true;
        for (String line : Grid.lines(cells, Sheet.WIDTH - Sheet.GUTTER)) {
            sheet.fixed(first ? Span.faint("ranges") : Span.faint(""), Span.plain(line));
            first = false;
        }
        if (!ranges.isEmpty() && catalog.parts().values().stream().anyMatch(part -> !part.loaded().isEmpty())) {
            sheet.more(0, Span.faint("with nothing loaded"));
        }
    }

    /** The attribute's shown places, or more where these would not tell the ends of its range apart. */
    private static int places(Attribute attribute, SortedMap<String, Range> ranges) {
        Range range = ranges.get(attribute.id());
        int places = attribute.shown();
        while (range.least().compareTo(range.greatest()) != 0 && Figures.rounded(range.least(), places).equals(Figures.rounded(range.greatest(), places))) {
            places++;
        }
        return places;
    }
}

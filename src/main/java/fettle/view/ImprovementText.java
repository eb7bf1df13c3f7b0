package fettle.view;

import fettle.catalog.Attribute;
import fettle.catalog.Build;
import fettle.catalog.Catalog;
import fettle.catalog.Part;
import fettle.judgement.Finding;
import fettle.space.Fraction;
import fettle.space.LimitMargin;
import fettle.space.best.Change;
import fettle.space.best.Improvement;
import fettle.space.best.Mainstay;
import fettle.space.best.Outcome;
import fettle.space.best.Share;
import fettle.space.best.Swap;
import fettle.space.best.Turn;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.function.Function;

/** Writes how a build can be improved for people, as a reviewer's notes: what is wrong, what to do first, what not to bother with, and the best build. */
public final class ImprovementText {

    private static final int MOST_TOLD = 5;

    private final Wording wording;
    private final Catalog catalog;
    private final ImprovementWording words;
    private final TextStyle style;

    public ImprovementText(Wording wording, Catalog catalog, TextStyle style) {
        this.wording = wording;
        this.catalog = catalog;
        this.words = new ImprovementWording(catalog);
        this.style = style;
    }

    /** The notes on one build. */
    public String of(Improvement improvement, List<Finding> findings) {
        Sheet sheet = new Sheet(style.colour());
        Build build = improvement.before().build();
        sheet.entry(Span.faint("build"), Span.strong(Phrases.named(build.id(), build.label())), Span.plain(" for "),
                Span.strong(Phrases.named(improvement.weighing().lens().id(), improvement.weighing().lens().label())),
                Span.plain(asked(build)));
        FindingText text = new FindingText(wording, catalog);
        findings.stream().filter(finding -> finding.waived().isEmpty() && style.tells(finding.severity())).forEach(finding -> {
            sheet.blank();
            text.write(sheet, finding, true);
        });
        swaps(sheet, improvement);
        steps(sheet, improvement);
        best(sheet, improvement);
        margins(sheet, improvement);
        sheet.blank();
        sheet.paragraph(0, 2, Span.faint("This concerns game data only, and says nothing about real equipment."));
        return sheet.toString();
    }

    private String asked(Build build) {
        List<String> asked = new ArrayList<>();
        build.budget().ifPresent(budget -> asked.add("within " + words.money(budget)));
        build.access().ifPresent(access -> asked.add("bought as " + access.id()));
        build.outfit().ifPresent(outfit -> asked.add("wearing " + outfit.id()));
        return asked.isEmpty() ? "" : ", " + String.join(", ", asked);
    }

    private void swaps(Sheet sheet, Improvement improvement) {
        List<Swap> good = improvement.swaps().swaps().stream().filter(swap -> swap.gain().signum() > 0 && swap.sound() && improvement.affordable(swap)).toList();
        told(sheet, improvement, "first", good.stream().filter(swap -> matters(improvement, swap)).sorted(ImprovementText::forTheMoney).toList(),
                none(improvement));
        List<Swap> idle = good.stream().filter(swap -> !matters(improvement, swap) && swap.price().signum() > 0)
                .sorted(Comparator.comparing(Swap::price).reversed().thenComparing(Swap::path)).toList();
        if (!idle.isEmpty()) {
            told(sheet, improvement, "skip", idle, "");
        }
        List<String> unpriced = improvement.before().unobtainable().stream().map(Part::id).toList();
        if (improvement.before().build().budget().isPresent() && !unpriced.isEmpty()) {
            sheet.entry(Span.faint("note"), Span.plain("what the whole costs isn't known: no open offer sells " + Phrases.joined(unpriced, "or")
                    + ", which counts as nothing toward the budget, since the build has it"));
        }
        if (!improvement.swaps().bounded().isEmpty()) {
            sheet.entry(Span.faint("note"), Span.plain("not every chain was tried at " + Phrases.and(improvement.swaps().bounded()) + ", where there are too many of the longer ones"));
        }
    }

    private static String none(Improvement improvement) {
        if (improvement.before().valid()) {
            return "no single swap that can be paid for gains anything that matters";
        }
        return improvement.swaps().swaps().isEmpty() ? "no single swap makes the build valid"
                : "no single swap that makes the build valid and can be paid for gains anything that matters";
    }

    /** Most gain for the money first; what costs nothing before all else. */
    private static int forTheMoney(Swap one, Swap other) {
        int byValue = other.gain().multiply(one.price()).compareTo(one.gain().multiply(other.price()));
        if (one.price().signum() == 0 || other.price().signum() == 0) {
            byValue = Integer.compare(one.price().signum(), other.price().signum());
        }
        int order = byValue != 0 ? byValue : other.gain().compareTo(one.gain());
        return order != 0 ? order : one.path().compareTo(other.path());
    }

    /** Whether some total gets better by at least what matters. */
    private boolean matters(Improvement improvement, Swap swap) {
        return turns(improvement, swap).stream().anyMatch(turn -> turn.better() && turn.matters());
    }

    private List<Turn> turns(Improvement improvement, Swap swap) {
        return Turn.between(improvement.weighing(), improvement.before().totals(), swap.after().totals());
    }

    private void told(Sheet sheet, Improvement improvement, String gutter, List<Swap> swaps, String none) {
        sheet.blank();
        if (swaps.isEmpty()) {
            sheet.entry(Span.faint(gutter), Span.plain(none));
            return;
        }
        Set<String> paths = new HashSet<>();
        String word = gutter;
        for (Swap swap : swaps) {
            if (paths.size() == MOST_TOLD) {
                break;
            }
            if (paths.add(swap.path())) {
                swap(sheet, word, improvement, swap);
                word = "";
            }
        }
    }

    private void swap(Sheet sheet, String gutter, Improvement improvement, Swap swap) {
        String gain = Figures.signed(swap.gain());
        sheet.entry(Span.faint(gutter), Span.strong(swap.path() + ": " + ImprovementWording.assembly(swap.to())),
                Span.plain(" for " + ImprovementWording.assembly(swap.from()) + ": " + gain + ", for "
                        + (swap.price().signum() == 0 ? "nothing" : words.money(swap.price()))));
        SortedMap<String, Mainstay> held = Mainstay.of(improvement.weighing(), improvement.before(), swap.prospect());
        sheet.more(2, Span.plain(words.changes(turns(improvement, swap)) + (held.isEmpty() ? "" : ", as long as " + Phrases.and(Phrases.each(held.values(), TurnWording::of)))));
        if (!swap.buy().isEmpty()) {
            sheet.more(2, Span.plain(words.bought(swap.buy())));
        }
        String hung = ImprovementWording.hung(improvement.before().build(), swap);
        if (!hung.isEmpty()) {
            sheet.more(2, Span.plain(hung));
        }
    }

    private void steps(Sheet sheet, Improvement improvement) {
        if (improvement.steps().swaps().isEmpty()) {
            return;
        }
        sheet.blank();
        int number = 1;
        Build before = improvement.before().build();
        for (Swap step : improvement.steps().swaps()) {
            sheet.entry(Span.faint("step " + number++), Span.strong(step.path() + ": " + ImprovementWording.assembly(step.to())),
                    Span.plain(": " + Figures.signed(step.gain()) + ", for " + (step.price().signum() == 0 ? "nothing" : words.money(step.price()))));
            if (!step.notchesDropped().isEmpty()) {
                sheet.more(2, Span.plain(ImprovementWording.notchesDropped(step.notchesDropped())));
            }
            ImprovementWording.movedUp(before, step).ifPresent(moves -> sheet.more(2, Span.plain(moves)));
            before = step.after().build();
        }
        sheet.more(2, Span.plain(improvement.steps().proved()
                ? "Proved: no other sequence of so many swaps gains more, if each is to gain something."
                : "Not proved: there are too many sequences to try them all, and another may gain more; --time-limit gives the seconds in which to go on trying."));
    }

    private void best(Sheet sheet, Improvement improvement) {
        sheet.blank();
        if (improvement.best().isEmpty()) {
            sheet.entry(Span.faint("best"), Span.strong(improvement.outcome() instanceof Outcome.Nothing ? "no build does all that is asked"
                    : improvement.outcome() instanceof Outcome.Open ? "not known" : "not known, nor whether any build does all that is asked"));
            words.because(improvement.outcome()).forEach(reason -> sheet.more(2, Span.plain(reason)));
            cutShort(sheet, improvement);
            return;
        }
        Outcome.Found found = (Outcome.Found) improvement.outcome();
        Change change = improvement.best().get();
        String gain = Figures.signed(found.benefit().subtract(improvement.benefit()));
        String furthest = "none can be more than " + Figures.signed(found.bound().subtract(found.benefit())) + " better";
        if (!found.proved() && change.shares().isEmpty()) {
            sheet.entry(Span.faint("best"), Span.strong("the build as it is"), Span.plain("; no better one was found in time, and " + furthest));
        } else {
            sheet.entry(Span.faint("best"), Span.strong(gain + " in all, for " + words.money(change.price())),
                    Span.plain(found.proved() ? "; proved to be the best there is" : "; the best found in time, and " + furthest));
        }
        cutShort(sheet, improvement);
        List<String> outside = improvement.before().limits().stream().filter(margin -> !margin.holds()).map(margin -> margin.limit().id()).toList();
        if (!outside.isEmpty()) {
            sheet.more(2, Span.plain("It keeps every limit. The build as it is doesn't keep " + Phrases.and(outside) + ", nor need a swap mend that."));
        }
        for (Share share : change.shares()) {
            sheet.more(2, Span.strong(share.path() + ": " + ImprovementWording.assembly(share.to())),
                    Span.plain(" for " + ImprovementWording.assembly(share.from()) + ": " + Figures.signed(share.benefit())));
        }
        if (!change.notchesDropped().isEmpty()) {
            sheet.more(2, Span.plain(ImprovementWording.notchesDropped(change.notchesDropped())));
        }
        change.buy().filter(buy -> !buy.isEmpty()).ifPresent(buy -> sheet.entry(Span.faint("buy"), Span.plain(words.bought(buy))));
        sheet.blank();
        table(sheet, improvement, change);
    }

    /** How much time there was, where it was not enough. */
    private static void cutShort(Sheet sheet, Improvement improvement) {
        improvement.allowed().filter(unused -> !improvement.outcome().finished()).ifPresent(allowed -> sheet.more(2,
                Span.plain("Not proved: the search was cut short after " + allowed.toSeconds() + " s; --time-limit gives the seconds in which to go on.")));
    }

    private void table(Sheet sheet, Improvement improvement, Change change) {
        List<String> names = new ArrayList<>(List.of(""));
        List<String> now = new ArrayList<>(List.of("now"));
        List<String> best = new ArrayList<>(List.of("best"));
        List<String> by = new ArrayList<>(List.of("change"));
        for (Attribute attribute : catalog.attributes().values()) {
            Optional<BigDecimal> was = Optional.ofNullable(improvement.before().totals().get(attribute.id()));
            Optional<BigDecimal> is = Optional.ofNullable(change.after().totals().get(attribute.id()));
            names.add(SafeText.of(attribute.label()));
            now.add(was.map(value -> Figures.rounded(value, attribute.shown())).orElse("-"));
            best.add(is.map(value -> Figures.rounded(value, attribute.shown())).orElse("-"));
            by.add(was.isPresent() && is.isPresent() && was.get().compareTo(is.get()) != 0
                    ? Figures.signed(is.get().subtract(was.get()).setScale(Math.max(attribute.shown(), attribute.decimals()), RoundingMode.HALF_UP)) : "");
        }
        names.add("cost");
        now.add(improvement.before().cost().map(Figures::money).orElse("-"));
        best.add(change.after().cost().map(Figures::money).orElse("-"));
        by.add("");
        int name = Grid.widest(names);
        int first = Grid.widest(now);
        int second = Grid.widest(best);
        int third = Grid.widest(by);
        for (int i = 0; i < names.size(); i++) {
            String line = Grid.left(names.get(i), name) + "  " + Grid.right(now.get(i), first) + "  " + Grid.right(best.get(i), second) + "  "
                    + Grid.right(by.get(i), third);
            sheet.fixed(i == 0 ? Span.faint("totals") : Span.faint(""), Span.plain(line.stripTrailing()));
        }
    }

    private void margins(Sheet sheet, Improvement improvement) {
        if (catalog.limits().isEmpty()) {
            return;
        }
        sheet.blank();
        String gutter = "margins";
        for (int limit = 0; limit < catalog.limits().size(); limit++) {
            int at = limit;
            LimitMargin bare = improvement.worn().get(0).before().get(limit);
            List<Span> says = new ArrayList<>(List.of(Span.strong(bare.limit().id()),
                    Span.plain(": now " + margin(improvement, at, worn -> Optional.of(worn.before())))));
            improvement.best().ifPresent(unused -> says.add(Span.plain("; best " + margin(improvement, at, Improvement.Worn::after))));
            sheet.entry(Span.faint(gutter), says.toArray(Span[]::new));
            gutter = "";
        }
    }

    /** The margin without an outfit, and what the outfits make of it. */
    private String margin(Improvement improvement, int limit, Function<Improvement.Worn, Optional<List<LimitMargin>>> side) {
        LimitMargin bare = side.apply(improvement.worn().get(0)).orElseThrow().get(limit);
        List<String> outside = new ArrayList<>();
        List<String> inside = new ArrayList<>();
        improvement.worn().stream().skip(1).forEach(worn -> {
            LimitMargin there = side.apply(worn).orElseThrow().get(limit);
            if (!there.margin().equals(bare.margin())) {
                (there.holds() ? inside : outside).add(margin(there) + " in " + worn.outfit());
            }
        });
        return margin(bare) + (outside.isEmpty() ? "" : ", but " + Phrases.and(outside)) + (inside.isEmpty() ? "" : ", " + Phrases.and(inside));
    }

    private String margin(LimitMargin limit) {
        if (!limit.told()) {
            return "can't be told";
        }
        if (limit.margin().isEmpty()) {
            return "no value, so it holds";
        }
        Attribute attribute = catalog.attributes().get(limit.limit().attribute());
        Fraction margin = limit.margin().get();
        String size = Figures.withUnit(Figures.rounded(margin.signum() < 0 ? margin.negate() : margin, attribute.shown()), attribute.unit());
        return margin.signum() < 0 ? size + " outside" : size + " to spare";
    }
}

package fettle.view;

import fettle.catalog.Attribute;
import fettle.catalog.Catalog;
import fettle.space.Assembly;
import fettle.space.Prices;
import fettle.space.Undecided;
import fettle.space.worth.Column;
import fettle.space.worth.Gain;
import fettle.space.worth.Gains;
import fettle.space.worth.Merit;
import fettle.space.worth.Placing;
import fettle.space.worth.Placings;
import fettle.space.worth.Verdict;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;

/** Tells for people how a part stands to the others slot by slot: what outdoes it and by how much, or where it wins. */
final class StandingText {

    private final Catalog catalog;
    private final Prices prices;
    private final Gains gains;

    StandingText(Catalog catalog, Prices prices) {
        this.catalog = catalog;
        this.prices = prices;
        this.gains = new Gains(catalog, prices);
    }

    /** Slots in which the same is to be said are told together. */
    void write(Sheet sheet, Placings placings) {
        if (placings.known().isEmpty() && placings.open().isEmpty()) {
            return;
        }
        Map<List<String>, SortedMap<String, TreeSet<String>>> alike = new LinkedHashMap<>();
        placings.known().forEach(placing -> alike.computeIfAbsent(told(placing), unused -> new TreeMap<>())
                .computeIfAbsent(placing.slot().toString(), unused -> new TreeSet<>()).add(placing.platform()));
        sheet.blank();
        String gutter = "worth";
        for (Map.Entry<List<String>, SortedMap<String, TreeSet<String>>> each : alike.entrySet()) {
            sheet.entry(Span.faint(gutter), Span.strong("in " + places(each.getValue())));
            each.getKey().forEach(line -> sheet.more(2, Span.plain(line)));
            gutter = "";
        }
        for (Map.Entry<String, Undecided> open : placings.open().entrySet()) {
            sheet.entry(Span.faint(gutter), Span.strong("on " + open.getKey()));
            sheet.more(2, Span.plain("not decided: " + open.getValue().why()));
            gutter = "";
        }
    }

    /** A platform's own slot is named once; of others the platforms are told. */
    private static String places(SortedMap<String, TreeSet<String>> slots) {
        Map<TreeSet<String>, List<String>> byPlatforms = new LinkedHashMap<>();
        slots.forEach((slot, platforms) -> byPlatforms.computeIfAbsent(platforms, unused -> new ArrayList<>()).add(slot));
        List<String> told = new ArrayList<>();
        byPlatforms.forEach((platforms, some) -> {
            boolean own = platforms.size() == 1 && some.stream().allMatch(slot -> slot.startsWith(platforms.first() + "/"));
            told.add(Phrases.and(some) + (own ? "" : " on " + Phrases.and(platforms)));
        });
        return String.join("; ", told);
    }

    private List<String> told(Placing placing) {
        List<String> lines = new ArrayList<>();
        Verdict free = placing.worth().ignoringCost();
        Verdict priced = placing.worth().withCost();
        if (placing.worth().worseThanEmpty()) {
            lines.add("worse than leaving the slot empty, whatever it costs");
        }
        if (free instanceof Verdict.Dominated dominated) {
            lines.add("dominated, cost ignored: " + outdone(dominated));
        } else if (free instanceof Verdict.Undominated best) {
            lines.add("not dominated: " + words(Optional.of(best.best())) + " " + placing.merit().map(merit -> wins(best.best(), merit)).orElse("stands"));
        } else if (free instanceof Verdict.Open open) {
            lines.add("not decided, cost ignored: " + open.undecided().why());
        }
        if (priced instanceof Verdict.Dominated dominated) {
            lines.add("dominated for its price" + (free instanceof Verdict.Dominated same && same.equals(dominated) ? " too" : ": " + outdone(dominated)));
        } else if (priced instanceof Verdict.Undominated best && placing.meritForPrice().isPresent()) {
            lines.add("not dominated for its price: " + words(Optional.of(best.best())) + " " + wins(best.best(), placing.meritForPrice().get()));
        } else if (priced instanceof Verdict.Unsold) {
            lines.add("not compared by price, since it can't be bought");
        } else if (priced instanceof Verdict.Open open) {
            lines.add("not decided, cost counted: " + open.undecided().why());
        }
        return lines;
    }

    private String outdone(Verdict.Dominated dominated) {
        List<Gain> all = gains.of(dominated);
        return words(dominated.by()) + " in place of " + words(Optional.of(dominated.shown())) + ": " + listed(all, dominated.shown(), dominated.by())
                + adapters(dominated.by());
    }

    /** What carries others on its way is named as such. */
    private String adapters(Optional<Assembly> by) {
        List<String> carrying = by.map(StandingText::carriers).orElse(List.of());
        return carrying.isEmpty() ? "" : "; it goes there through " + Phrases.and(carrying);
    }

    private static List<String> carriers(Assembly assembly) {
        List<String> carrying = new ArrayList<>();
        if (!assembly.slots().isEmpty()) {
            carrying.add(assembly.part());
            assembly.slots().values().forEach(held -> held.forEach(each -> carrying.addAll(carriers(each))));
        }
        return carrying.stream().distinct().toList();
    }

    private String wins(Assembly best, Merit merit) {
        if (merit instanceof Merit.Alone) {
            return "is all that goes there";
        } else if (merit instanceof Merit.Most most) {
            return "is best there in " + Phrases.and(Phrases.each(most.in(), StandingText::name));
        } else if (merit instanceof Merit.Role role) {
            return role.roles().isEmpty() ? "has no figure to be compared by" : "serves as " + Phrases.and(role.roles()) + ", which nothing as good does";
        } else if (merit instanceof Merit.Even even) {
            return "has its equal in " + words(Optional.of(even.rival())) + ", and nothing better";
        } else if (merit instanceof Merit.Bound bound) {
            List<Gain> all = gains.of(Optional.of(best), Optional.of(bound.rival()));
            return "stays where " + words(Optional.of(bound.rival())) + " can't take its place in every valid build, though that would bring "
                    + listed(all, best, Optional.of(bound.rival()));
        }
        Optional<Assembly> rival = ((Merit.Trade) merit).rival();
        return "wins against each in something; against " + words(rival) + " it brings " + listed(won(gains.of(rival, Optional.of(best))), best, Optional.of(best));
    }

    private static List<Gain> won(List<Gain> all) {
        return all.stream().filter(StandingText::better).toList();
    }

    /** No figure at all is the worst of a maximum to be raised and of a minimum to be lowered, and the best of the others. */
    private static boolean better(Gain gain) {
        if (gain.before().isPresent() && gain.after().isPresent()) {
            int order = gain.after().get().compareTo(gain.before().get());
            return gain.column().higher() ? order > 0 : order < 0;
        }
        boolean worst = (gain.column().combine() == Attribute.Combine.MAX) == gain.column().higher();
        return gain.after().isPresent() == worst;
    }

    private String listed(List<Gain> all, Assembly shown, Optional<Assembly> by) {
        List<String> told = new ArrayList<>();
        for (Gain gain : all) {
            boolean cheaper = gain.column().attribute().isEmpty() && gain.after().orElseThrow().compareTo(gain.before().orElseThrow()) < 0;
            told.add(GainWording.of(gain) + (cheaper ? by.map(found -> sources(found, shown)).orElse("") : ""));
        }
        return told.isEmpty() ? "nothing else" : Phrases.and(told);
    }

    /** Where what is cheaper is bought. */
    private String sources(Assembly by, Assembly shown) {
        List<String> from = by.parts().stream().filter(part -> by.equals(shown) || !shown.parts().contains(part))
                .flatMap(part -> prices.cheapest(part).stream()).map(StandingText::vendor).distinct().toList();
        return from.isEmpty() ? "" : " through " + Phrases.and(from);
    }

    private static String vendor(Prices.Priced priced) {
        String vendor = priced.offer().vendor();
        return priced.offer().tiered() ? vendor + "'s tier " + priced.offer().tier() : vendor;
    }

    private static String name(Column column) {
        return column.attribute().map(attribute -> attribute.label() + (column.loaded() ? " when loaded" : "")).orElse("cost");
    }

    private static String words(Optional<Assembly> choice) {
        return choice.map(assembly -> ImprovementWording.assembly(assembly.paths())).orElse("an empty slot");
    }
}

package fettle.view;

import fettle.catalog.Attribute;
import fettle.catalog.Build;
import fettle.catalog.Catalog;
import fettle.catalog.CatalogHead;
import fettle.catalog.Offer;
import fettle.judgement.Assemblies;
import fettle.space.Exact;
import fettle.space.PathMove;
import fettle.space.best.Demand;
import fettle.space.best.Outcome;
import fettle.space.best.Purchase;
import fettle.space.best.Swap;
import fettle.space.best.Turn;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Words for swaps, purchases and what became of a search. */
public final class ImprovementWording {

    private final Catalog catalog;

    public ImprovementWording(Catalog catalog) {
        this.catalog = catalog;
    }

    /** Why there is no best build. */
    List<String> because(Outcome outcome) {
        if (outcome instanceof Outcome.Nothing nothing) {
            return nothing.conflict().isEmpty() ? List.of("the platform has no valid build") : Stream.concat(nothing.conflict().stream().map(this::demand),
                    nothing.smallest() ? Stream.empty() : Stream.of("the time was over before it was known whether each of these is needed for that")).toList();
        } else if (outcome instanceof Outcome.CutShort cut) {
            return List.of("the time was over before a build was found that does; no benefit exceeds " + Figures.rounded(cut.bound().orElse(BigDecimal.ZERO), 2));
        } else if (outcome instanceof Outcome.Open open) {
            return List.of(open.undecided().why());
        }
        return List.of();
    }

    private String demand(Demand demand) {
        if (demand instanceof Demand.Keeping keeping) {
            return "it must keep the limit " + keeping.limit().id();
        } else if (demand instanceof Demand.Leaving leaving) {
            return "it must keep what is at " + leaving.path();
        }
        return demand instanceof Demand.WithinBudget ? "it must cost no more than the budget" : "its parts must be owned or on sale to this player";
    }

    String money(BigDecimal amount) {
        return Figures.withUnit(Figures.money(amount), catalog.head().map(CatalogHead::currency).orElse(""));
    }

    /** An assembly by its parts, the head first. */
    static String assembly(SortedMap<String, String> parts) {
        return parts.isEmpty() ? "nothing" : Assemblies.filled(parts);
    }

    /** What is bought where; nothing where nothing is. */
    String bought(List<Purchase> buy) {
        Map<Purchase, Long> counted = buy.stream().collect(Collectors.groupingBy(purchase -> purchase, LinkedHashMap::new, Collectors.counting()));
        return counted.entrySet().stream().map(each -> (each.getValue() > 1 ? each.getValue() + " times " : "") + bought(each.getKey()))
                .collect(Collectors.joining("; "));
    }

    private String bought(Purchase purchase) {
        if (purchase.offer().isEmpty()) {
            return purchase.part() + " is owned";
        }
        Offer offer = purchase.offer().get().offer();
        String from = offer.vendor() + (offer.tiered() ? " tier " + offer.tier() : "");
        return purchase.part() + " " + money(purchase.offer().get().cost()) + " from " + from + (offer.barter().isEmpty() ? ""
                : " for " + Phrases.and(Phrases.each(offer.barter(), item -> Exact.text(item.count()) + " " + item.good())));
    }

    /** What changes in each total that has a better direction, better first. */
    String changes(List<Turn> turns) {
        List<String> good = new ArrayList<>();
        List<String> bad = new ArrayList<>();
        turns.forEach(turn -> (turn.better() ? good : bad).add(change(turn)));
        if (good.isEmpty() && bad.isEmpty()) {
            return "no total changes";
        }
        return String.join(", ", good) + (bad.isEmpty() ? "" : (good.isEmpty() ? "" : "; but ") + String.join(", ", bad));
    }

    private static String change(Turn turn) {
        String label = turn.attribute().label().toLowerCase(Locale.ROOT);
        if (turn.before().isPresent() && turn.after().isPresent()) {
            return Figures.signed(rounded(turn.attribute(), turn.after().get().subtract(turn.before().get()))) + " " + label;
        }
        return turn.after().map(value -> label + " " + Exact.text(rounded(turn.attribute(), value)) + " where there was none").orElse("no " + label + " any more");
    }

    private static BigDecimal rounded(Attribute attribute, BigDecimal value) {
        return value.setScale(Math.max(attribute.shown(), attribute.decimals()), RoundingMode.HALF_UP);
    }

    /** What hung on the old assembly, what it served as, and what is stated about its place. */
    static String hung(Build before, Swap swap) {
        List<String> says = new ArrayList<>();
        if (!swap.carried().isEmpty()) {
            says.add("carried over: " + Phrases.and(swap.carried()));
        }
        if (!swap.lost().isEmpty()) {
            says.add("falls off: " + Phrases.and(swap.lost()));
        }
        if (!swap.rolesElsewhere().isEmpty()) {
            says.add("takes out what serves here as " + Phrases.and(swap.rolesElsewhere()) + ", of which the build has another");
        }
        if (!swap.notchesDropped().isEmpty()) {
            says.add(notchesDropped(swap.notchesDropped()));
        }
        movedUp(before, swap).ifPresent(says::add);
        return String.join("; ", says);
    }

    /** What moves up where a part is taken out of a list. */
    static Optional<String> movedUp(Build before, Swap swap) {
        return Optional.of(swap.movedUp(before)).filter(moves -> !moves.isEmpty())
                .map(moves -> "parts behind it move up: write " + Phrases.and(moves.stream().map(PathMove::words).toList()));
    }

    /** What is to be done about notches that a build states. */
    static String notchesDropped(List<String> paths) {
        return "leave out `at` at " + Phrases.and(paths) + ": the notches stated now don't leave room";
    }
}

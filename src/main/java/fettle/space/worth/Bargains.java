package fettle.space.worth;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.BinaryOperator;
import java.util.function.UnaryOperator;

/**
 * Of a set of choices those worth their price among the ones that serve the same roles: no other costs no more and brings no less. Of choices alike in
 * both figures the one with the fewest parts is kept.
 *
 * @param byRoles by set of role kinds, the choices by rising cost and benefit
 */
record Bargains(SortedMap<SortedSet<String>, List<Bargain>> byRoles) {

    static final Comparator<SortedSet<String>> BY_ROLES = Comparator.comparing(Object::toString);

    /** No choice at all. */
    static final Bargains NONE = new Bargains(new TreeMap<>(BY_ROLES));

    private static final Comparator<Bargain> BEST_FIRST = Comparator.comparing(Bargain::cost).thenComparing(Comparator.comparing(Bargain::benefit).reversed())
            .thenComparingInt(Bargain::parts);

    Bargains {
        byRoles = Collections.unmodifiableSortedMap(byRoles);
    }

    static Bargains of(SortedSet<String> roles, Bargain only) {
        SortedMap<SortedSet<String>, List<Bargain>> one = new TreeMap<>(BY_ROLES);
        one.put(roles, List.of(only));
        return new Bargains(one);
    }

    Bargains or(Bargains other) {
        SortedMap<SortedSet<String>, List<Bargain>> all = lists();
        other.byRoles.forEach((roles, bargains) -> all.computeIfAbsent(roles, unused -> new ArrayList<>()).addAll(bargains));
        return pruned(all);
    }

    Bargains and(Bargains other) {
        return paired(other, Bargain::with);
    }

    /** These upon a part, of which there is one way. */
    Bargains upon(Bargains part) {
        return paired(part, Bargain::on);
    }

    Bargains in(int slot) {
        return each(bargain -> bargain.in(slot));
    }

    int size() {
        return byRoles.values().stream().mapToInt(List::size).sum();
    }

    private Bargains paired(Bargains other, BinaryOperator<Bargain> together) {
        SortedMap<SortedSet<String>, List<Bargain>> all = new TreeMap<>(BY_ROLES);
        byRoles.forEach((roles, some) -> other.byRoles.forEach((otherRoles, others) -> {
            SortedSet<String> both = new TreeSet<>(roles);
            both.addAll(otherRoles);
            List<Bargain> into = all.computeIfAbsent(both, unused -> new ArrayList<>());
            some.forEach(one -> others.forEach(another -> into.add(together.apply(one, another))));
        }));
        return pruned(all);
    }

    private Bargains each(UnaryOperator<Bargain> change) {
        SortedMap<SortedSet<String>, List<Bargain>> all = lists();
        all.replaceAll((roles, bargains) -> bargains.stream().map(change).toList());
        return new Bargains(all);
    }

    private SortedMap<SortedSet<String>, List<Bargain>> lists() {
        SortedMap<SortedSet<String>, List<Bargain>> all = new TreeMap<>(BY_ROLES);
        byRoles.forEach((roles, bargains) -> all.put(roles, new ArrayList<>(bargains)));
        return all;
    }

    private static Bargains pruned(SortedMap<SortedSet<String>, List<Bargain>> all) {
        all.replaceAll((roles, bargains) -> pruned(bargains));
        return new Bargains(all);
    }

    private static List<Bargain> pruned(List<Bargain> bargains) {
        bargains.sort(BEST_FIRST);
        List<Bargain> kept = new ArrayList<>();
        BigDecimal best = null;
        for (Bargain bargain : bargains) {
            if (best == null || bargain.benefit().compareTo(best) > 0) {
                kept.add(bargain);
                best = bargain.benefit();
            }
        }
        return kept;
    }
}

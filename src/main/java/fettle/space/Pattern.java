package fettle.space;

import fettle.relation.Clause;
import fettle.relation.Term;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * What a clause, or several clauses at once, say of the numbered hosts and slots of a terrain.
 *
 * @param when the conditions, in order, since their order makes no difference
 * @param needed whether something is needed
 * @param need what answers the need
 * @param apart whether different things must meet them
 * @param wanted whether builds are looked for that break it, and no others
 */
record Pattern(List<Things> when, boolean needed, Things need, boolean apart, boolean wanted) {

    Pattern {
        when = when.stream().sorted().toList();
    }

    static Pattern of(Clause clause, TermMembers members) {
        List<Things> when = new ArrayList<>();
        clause.when().forEach(term -> when.add(things(term, members)));
        Things need = Things.NONE;
        for (Term term : clause.need()) {
            need = need.or(things(term, members));
        }
        return new Pattern(when, !clause.need().isEmpty(), need, clause.apart(), false);
    }

    /** Turned round: broken by the builds that keep this, and kept by those that break it. */
    Pattern turned() {
        return new Pattern(when, needed, need, apart, !wanted);
    }

    private static Things things(Term term, TermMembers members) {
        return Things.of(members.hosts(term), members.slots(term));
    }

    /**
     * Fewer patterns that are broken by the same builds: where all but one condition are the same, what meets either of the two that differ breaks one or the
     * other, so they become one condition. Parts and slots are kept apart, since a monitor that takes them as one has much to remember.
     */
    static List<Pattern> merged(List<Pattern> patterns) {
        Set<Pattern> left = new LinkedHashSet<>(patterns);
        int before;
        do {
            before = left.size();
            left = mergedOnce(left);
        } while (left.size() < before);
        return List.copyOf(left);
    }

    /** A condition of a pattern, and all the rest of it. */
    private record Split(Pattern rest, boolean parts) {
        // Written out, as in SlotId.
        @Override
        public boolean equals(Object other) {
            return other instanceof Split that && parts == that.parts && rest.equals(that.rest);
        }

        @Override
        public int hashCode() {
            return 31 * rest.hashCode() + Boolean.hashCode(parts);
        }
    }

    private static Set<Pattern> mergedOnce(Set<Pattern> patterns) {
        Map<Split, List<Pattern>> alike = new LinkedHashMap<>();
        for (Pattern pattern : patterns) {
            pattern.when.stream().filter(unused -> !pattern.wanted).distinct().forEach(one -> alike.computeIfAbsent(pattern.without(one), unused -> new ArrayList<>()).add(pattern));
        }
        List<Map.Entry<Split, List<Pattern>>> largestFirst = new ArrayList<>(alike.entrySet());
        largestFirst.sort(Comparator.comparing(entry -> -entry.getValue().size()));
        Set<Pattern> left = new LinkedHashSet<>(patterns);
        Set<Pattern> made = new LinkedHashSet<>();
        for (Map.Entry<Split, List<Pattern>> entry : largestFirst) {
            List<Pattern> group = entry.getValue().stream().filter(left::contains).toList();
            if (group.size() > 1) {
                Pattern rest = entry.getKey().rest;
                List<Things> when = new ArrayList<>(rest.when);
                when.add(group.stream().map(pattern -> pattern.beside(rest)).reduce(Things.NONE, Things::or));
                left.removeAll(Set.copyOf(group));
                made.add(new Pattern(when, rest.needed, rest.need, rest.apart, false));
            }
        }
        left.addAll(made);
        return left;
    }

    private Split without(Things one) {
        List<Things> others = new ArrayList<>(when);
        others.remove(one);
        return new Split(new Pattern(others, needed, need, apart, wanted), one.slots().isEmpty());
    }

    /** The one condition that the rest lacks. */
    private Things beside(Pattern rest) {
        List<Things> one = new ArrayList<>(when);
        rest.when.forEach(one::remove);
        return one.get(0);
    }

    // Written out, as in SlotId.
    @Override
    public boolean equals(Object other) {
        return other instanceof Pattern that && needed == that.needed && apart == that.apart && wanted == that.wanted && when.equals(that.when) && need.equals(that.need);
    }

    @Override
    public int hashCode() {
        return 31 * (31 * (31 * (31 * when.hashCode() + Boolean.hashCode(needed)) + need.hashCode()) + Boolean.hashCode(apart)) + Boolean.hashCode(wanted);
    }
}

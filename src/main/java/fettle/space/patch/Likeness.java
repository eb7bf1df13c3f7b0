package fettle.space.patch;

import fettle.catalog.Catalog;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Function;

/**
 * How much a repaired build is like what it was, wherever its parts sit: those come first that throw fewer parts out, then those that lack fewer of
 * its role kinds, then those that put fewer strange parts in.
 *
 * @param out how many of the build's parts are not in it, each as often as it comes
 * @param roles how many parts of a role kind it lacks
 * @param in how many of its parts the build did not have
 */
record Likeness(int out, int roles, int in) implements Comparable<Likeness> {

    private static final Comparator<Likeness> MOST =
            Comparator.comparingInt(Likeness::out).thenComparingInt(Likeness::roles).thenComparingInt(Likeness::in);

    /**
     * Compares the parts of a build with those of a repaired one.
     *
     * @param current the id that a part of the build goes by now
     */
    static Likeness of(Collection<String> before, Catalog old, Collection<String> after, Catalog now, Function<String, String> current) {
        List<String> then = before.stream().map(current).toList();
        return new Likeness(missing(then, after), missing(roles(before, old, now), roles(after, now, now)), missing(after, then));
    }

    /** The role kinds of parts in a catalog; of a part that a build names by its new id, in the new one. */
    private static List<String> roles(Collection<String> parts, Catalog catalog, Catalog now) {
        return parts.stream().flatMap(part -> {
            Catalog known = catalog.parts().containsKey(part) ? catalog : now;
            return known.roleOf(known.parts().get(part)).stream();
        }).toList();
    }

    /** How many of these are not among the others, each as often as it comes. */
    private static int missing(Collection<String> these, Collection<String> others) {
        Map<String, Integer> left = new TreeMap<>();
        others.forEach(other -> left.merge(other, 1, Integer::sum));
        int missing = 0;
        for (String each : these) {
            missing += left.merge(each, -1, Integer::sum) < 0 ? 1 : 0;
        }
        return missing;
    }

    @Override
    public int compareTo(Likeness other) {
        return MOST.compare(this, other);
    }
}

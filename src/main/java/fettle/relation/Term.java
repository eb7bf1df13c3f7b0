package fettle.relation;

import fettle.catalog.Selector;
import java.util.List;

/**
 * What a clause speaks of: a set of things that can be placed. Which parts a name or a group holds is said by rules.
 *
 * @param sort how {@code key} is read
 * @param key a part's or platform's id, a name that parts answer to, a group's name, or a slot tag
 */
public record Term(Sort sort, String key) implements Comparable<Term> {

    /** How a term names things. */
    public enum Sort {
        /** Occurrences of one part; of a platform: the platform itself, which always stands. */
        PART,
        /** Occurrences of the parts that answer to a name. */
        NAME,
        /** Occurrences of the parts (and the platform, where it is one) that a rule has put into a group. */
        GROUP,
        /** Slots in use that a rule has put under a tag. */
        SLOT
    }

    /** Occurrences of one part or the platform. */
    public static Term part(String id) {
        return new Term(Sort.PART, id);
    }

    /** Occurrences of the parts that answer to a name. */
    public static Term name(String name) {
        return new Term(Sort.NAME, name);
    }

    /** Occurrences of the parts in a group. */
    public static Term group(String group) {
        return new Term(Sort.GROUP, group);
    }

    /** One term a selector. */
    public static List<Term> names(List<Selector> selectors) {
        return selectors.stream().map(selector -> name(selector.text())).toList();
    }

    /** Slots in use under a tag. */
    public static Term slot(String tag) {
        return new Term(Sort.SLOT, tag);
    }

    // Written out, since linking what would be generated takes a while in each run, and every run asks for this.
    @Override
    public boolean equals(Object other) {
        return other instanceof Term that && sort == that.sort && key.equals(that.key);
    }

    @Override
    public int hashCode() {
        return 31 * sort.ordinal() + key.hashCode();
    }

    @Override
    public int compareTo(Term other) {
        int bySort = sort.compareTo(other.sort);
        return bySort != 0 ? bySort : key.compareTo(other.key);
    }
}

package fettle.space;

/** What may be swapped for what in a slot: whether every valid build stays valid. */
public interface Swaps {

    /** Whether nothing is said to be safe that is not safe whatever stands around. */
    default boolean onlyIfSure() {
        return false;
    }

    /** Whether any assembly of one stand may take the place of any of another, as far as parts standing above are not at stake. */
    boolean safe(Stand from, Stand to);

    /** Whether any assembly of a stand may be taken out. */
    boolean safeToEmpty(Stand from);

    /** Whether assemblies made from any of a stand may take their place. Neither the new head nor what is added may be able to come back below itself. */
    boolean safe(Stand from, Rehung to);
}

package fettle.space.patch;

import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Predicate;

/** Finds which of a number of things an outcome takes: all of them give it, and none of those kept can be left out. */
final class Needed {

    private Needed() {}

    /**
     * Leaves out one after the other, first to last, as long as the rest gives the outcome, and goes round again until none can be left out: of
     * things that work against each other, one may become needless when another has gone. Where not even all of them give the outcome, all
     * are returned.
     */
    static <T> List<T> of(Collection<T> things, Predicate<Set<T>> gives) {
        Set<T> kept = new LinkedHashSet<>(things);
        if (kept.size() < 2 || !gives.test(kept)) {
            return List.copyOf(kept);
        }
        int before;
        do {
            before = kept.size();
            for (T thing : List.copyOf(kept)) {
                Set<T> without = new LinkedHashSet<>(kept);
                without.remove(thing);
                if (gives.test(without)) {
                    kept = without;
                }
            }
        } while (kept.size() < before);
        return List.copyOf(kept);
    }
}

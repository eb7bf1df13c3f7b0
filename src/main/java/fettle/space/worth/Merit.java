package fettle.space.worth;

import fettle.space.Assembly;
import java.util.List;
import java.util.Optional;
import java.util.SortedSet;

/** Why an assembly is dominated by nothing that could stand in its place. */
public sealed interface Merit {

    /** Nothing else goes there. */
    record Alone() implements Merit {}

    /** It brings more than anything else there in these columns. */
    record Most(List<Column> in) implements Merit {

        public Most {
            in = List.copyOf(in);
        }
    }

    /**
     * It wins in some column against each.
     *
     * @param rival the one against which it wins in the fewest, of those with as few parts as can be; empty where there is only the empty choice
     */
    record Trade(Optional<Assembly> rival) implements Merit {}

    /** Another is as good in every column, and none is better. */
    record Even(Assembly rival) implements Merit {}

    /** What is no worse in any column does not serve all of its roles. */
    record Role(SortedSet<String> roles) implements Merit {}

    /** Another is better, but can't take its place in every valid build. */
    record Bound(Assembly rival) implements Merit {}
}

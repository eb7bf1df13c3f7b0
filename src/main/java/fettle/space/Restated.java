package fettle.space;

import fettle.catalog.Constraint;
import fettle.catalog.Fact;
import fettle.relation.Clause;
import fettle.relation.Relations;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Relations with an entry of their own that say no more than another one does.
 *
 * <p>Tells all but the first of those that say the same. What two parts say of each other is left alone: each of them is to say it.
 */
record Restated(Relations relations) {

    /** Those that say no more than another one of these does, which all say the same. */
    List<IdleRelation> among(Collection<Clause> alike) {
        List<Clause> inOrder = alike.stream().filter(Restated::byItself).sorted(Comparator.comparing(clause -> stated(clause).get(0).origin())).toList();
        List<IdleRelation> more = new ArrayList<>();
        Set<String> names = new HashSet<>();
        for (Clause clause : inOrder) {
            // An entry that is there twice is told as that.
            if (names.add(name(clause)) && names.size() > 1) {
                more.add(new IdleRelation(clause.rule(), IdleRelations.key(clause), stated(clause), false, Optional.of(stated(inOrder.get(0)).get(0)), Optional.empty()));
            }
        }
        return more;
    }

    /** Whether a relation is stated for its own sake, rather than as what one part says of others. */
    private static boolean byItself(Clause clause) {
        return clause.because().isEmpty() || clause.because().get(0) instanceof Constraint;
    }

    private static String name(Clause clause) {
        return !clause.because().isEmpty() && clause.because().get(0) instanceof Constraint constraint ? constraint.id() : IdleRelations.key(clause);
    }

    /** The entries that state a relation, the first one first; where none does, those of its members. */
    private List<Fact> stated(Clause clause) {
        return !clause.because().isEmpty() ? clause.because()
                : clause.when().stream().flatMap(term -> relations.members(term).values().stream()).distinct().sorted(Comparator.comparing(Fact::origin)).toList();
    }
}

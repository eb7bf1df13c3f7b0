package fettle.space;

import fettle.relation.Agreement;
import fettle.relation.Clause;
import java.util.List;

/** The relations between placed things that are to be kept; those within a slot are part of the terrain. */
record Rules(List<Clause> clauses, List<Agreement> agreements) {

    Rules {
        clauses = List.copyOf(clauses);
        agreements = List.copyOf(agreements);
    }
}

package fettle.view;

import fettle.catalog.Fact;
import java.util.List;

/**
 * One way in which a part is bound to other parts of a build.
 *
 * @param sort what the tie does
 * @param rule the rule that derived it
 * @param told the tie in words: one sentence without a full stop
 * @param others the parts or slots at the other end, by id
 * @param because the catalog entries behind it: those that state it, then those that make the part, and the others, subject to it
 */
record Tie(Sort sort, String rule, String told, List<String> others, List<Fact> because) {

    /** What a tie does. */
    enum Sort { CLASH, NEED, SERVICE, AGREEMENT }

    Tie {
        others = List.copyOf(others);
        because = List.copyOf(because);
    }
}

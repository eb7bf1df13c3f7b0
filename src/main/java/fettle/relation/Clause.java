package fettle.relation;

import fettle.catalog.Fact;
import java.util.List;

/**
 * These placed things together need one of those; with none to need, they exclude each other.
 *
 * <p>A clause is broken by a build in which every term of {@code when} is met and no term of {@code need} is. With {@code apart}, the things that
 * meet the terms of {@code when} must be pairwise different, and the thing needed different from all of them; a part and the slot that
 * it sits in itself are not different. Without {@code apart} one thing may meet several terms.
 *
 * @param rule the rule that derived it, which also names the finding that a build draws by breaking it
 * @param because the catalog entries it was derived from
 */
public record Clause(String rule, List<Term> when, List<Term> need, boolean apart, List<Fact> because) {

    public Clause {
        when = List.copyOf(when);
        need = List.copyOf(need);
        because = List.copyOf(because);
    }
}

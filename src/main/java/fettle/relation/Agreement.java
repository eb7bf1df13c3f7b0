package fettle.relation;

import fettle.catalog.Fact;
import java.util.Set;
import java.util.TreeSet;
import java.util.Collections;

/**
 * A part or platform that, where placed, narrows a trait to these values; what all placed things leave over must not be empty.
 *
 * @param rule the rule that derived it, which also names the finding that a build draws by breaking it
 */
public record Agreement(String rule, String trait, String part, Set<String> values, Fact because) {

    public Agreement {
        values = Collections.unmodifiableSet(new TreeSet<>(values));
    }
}

package fettle.catalog;

import fettle.document.Origin;

import java.util.List;

/** Where each selector in {@code when} is met, one in {@code need} must be; an empty {@code need} forbids the combination. */
public record Constraint(String id, List<Selector> when, List<Selector> need, String because, Origin origin) implements Fact {

    /** {@code when}, by a name that rule files can say. */
    public List<Selector> condition() {
        return when;
    }
}

package fettle.catalog;

import java.util.ArrayList;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Set;

/** Facts in the order in which they are first named, each once. A catalog holds each of its facts once, so that which fact it is needs no look at what it says. */
public final class FactList {

    private final Set<Fact> known = Collections.newSetFromMap(new IdentityHashMap<>());
    private final List<Fact> facts = new ArrayList<>();

    /** Adds a fact, unless it is there already. */
    public FactList add(Fact fact) {
        if (known.add(fact)) {
            facts.add(fact);
        }
        return this;
    }

    /** Adds facts, each unless it is there already. */
    public FactList addAll(Iterable<? extends Fact> more) {
        more.forEach(this::add);
        return this;
    }

    /** What was added so far. */
    public List<Fact> list() {
        return List.copyOf(facts);
    }
}

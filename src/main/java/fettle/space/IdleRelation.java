package fettle.space;

import fettle.catalog.Fact;
import java.util.List;
import java.util.Optional;

/**
 * A relation, or several that say the same, without which every platform would have the same valid builds. All that are told of one catalog can be taken out
 * together.
 *
 * @param rule the rule that derived it
 * @param key what its first condition names; of an agreement, the trait
 * @param because the entries that state it
 * @param apart whether no platform even leads to all that it speaks of; else other relations or the room in slots rule the same out
 * @param alike what states another relation that says the same and is not told, where there is one
 * @param undecided why it is not known whether it rules something out, where that is so
 */
public record IdleRelation(String rule, String key, List<Fact> because, boolean apart, Optional<Fact> alike, Optional<Undecided> undecided) {

    public IdleRelation {
        because = List.copyOf(because);
    }

    /** The entry that states it first. */
    public Fact stated() {
        return because.get(0);
    }
}

package fettle.space.best;

import fettle.space.Undecided;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;

/** What a search for the best build came to. */
public sealed interface Outcome {

    /** Whether all was found out before the time was over. */
    default boolean finished() {
        return !(this instanceof CutShort || this instanceof Found found && !found.proved() || this instanceof Nothing nothing && !nothing.smallest());
    }

    /**
     * A build.
     *
     * @param benefit Σ weight × total
     * @param cost in base currency
     * @param changed how many paths differ from the build before
     * @param proved whether it is certain that none is to be preferred
     * @param bound what no build's benefit exceeds; the benefit itself where proved
     */
    record Found(Arrangement build, BigDecimal benefit, BigDecimal cost, long changed, boolean proved, BigDecimal bound) implements Outcome {}

    /**
     * No build satisfies the demands.
     *
     * @param conflict demands that no build satisfies together; empty where the platform has no valid build at all
     * @param smallest whether none of them can be left out; otherwise the time was over before that was known
     */
    record Nothing(List<Demand> conflict, boolean smallest) implements Outcome {
        public Nothing {
            conflict = List.copyOf(conflict);
        }
    }

    /** The time was over before any build was found; no benefit exceeds the bound. */
    record CutShort(Optional<BigDecimal> bound) implements Outcome {}

    /** It could not be worked out. */
    record Open(Undecided undecided) implements Outcome {}
}

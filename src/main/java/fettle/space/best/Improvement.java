package fettle.space.best;

import fettle.space.BuildResult;
import fettle.space.LimitMargin;
import java.math.BigDecimal;
import java.time.Duration;
import java.util.List;
import java.util.Optional;

/**
 * A build looked over for a lens.
 *
 * @param benefit Σ weight × total of the build as it is
 * @param swaps what a single swap would do
 * @param outcome what the search for the best build came to
 * @param best the build made into the best, where one was found
 * @param steps swaps to make one after the other
 * @param allowed how long the best build was sought at most; empty where as long as it took
 * @param worn margins with each outfit of the catalog, before and after
 */
public record Improvement(
        BuildResult before, Weighing weighing, BigDecimal benefit, Swaps.Found swaps, Outcome outcome, Optional<Change> best, Steps steps,
        Optional<Duration> allowed, List<Worn> worn) {

    /**
     * Margins with one outfit.
     *
     * @param outfit its id; empty for none
     * @param after of the best build; empty where there is none
     */
    public record Worn(String outfit, List<LimitMargin> before, Optional<List<LimitMargin>> after) {}

    /** Whether the build with a swap made keeps to the budget as far as its parts can be bought, or else costs no more than it does now. */
    public boolean affordable(Swap swap) {
        return affordable(before, swap.after());
    }

    /**
     * Whether what a build becomes costs no more than its budget, or else no more than it does now. A part that nobody sells is only in it where the build has it already, and
     * counts as nothing.
     */
    public static boolean affordable(BuildResult before, BuildResult after) {
        Optional<BigDecimal> budget = before.build().budget();
        return budget.isEmpty() || after.obtainable().compareTo(budget.get()) <= 0 || after.obtainable().compareTo(before.obtainable()) <= 0;
    }

    public Improvement {
        worn = List.copyOf(worn);
    }
}

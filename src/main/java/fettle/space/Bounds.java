package fettle.space;

/**
 * How much work is allowed before a question is given up as undecided.
 *
 * @param relationStates how many states one relation may have
 * @param states how many signatures one slot or host may have
 * @param work how many combinations may be formed for one platform
 */
public record Bounds(int relationStates, int states, long work) {

    /** Enough for most catalogs, though not where many relations that have nothing to do with each other meet in parts with rails. */
    public static final Bounds ORDINARY = new Bounds(20_000, 200_000, 60_000_000);
}

package fettle.space.worth;

/**
 * A rate at which cost is weighed against benefit.
 *
 * @param perCost what a step of cost takes away; not negative
 * @param perBenefit what a step of benefit gives; not negative, and more than nothing where the other isn't
 */
record Rate(long perCost, long perBenefit) implements Comparable<Rate> {

    /** Benefit alone. */
    static final Rate BENEFIT = new Rate(0, 1);

    /** Cost alone. */
    static final Rate COST = new Rate(1, 0);

    private static final int MOST_BITS = 20;

    /**
     * By which two choices come to much the same: figures are shortened where they are long, since for all that it is used for any rate will do.
     *
     * @param rise how much more is brought; not negative
     * @param run for how much more cost; not negative
     */
    static Rate of(long rise, long run) {
        int over = Math.max(0, Long.SIZE - Long.numberOfLeadingZeros(Math.max(rise, run)) - MOST_BITS);
        return new Rate(rise >> over, Math.max(1, run >> over));
    }

    /** Whether one of the two figures alone counts. */
    boolean extreme() {
        return perCost == 0 || perBenefit == 0;
    }

    /** The one that minds cost less comes first. */
    @Override
    public int compareTo(Rate other) {
        return Long.compare(perCost * other.perBenefit, other.perCost * perBenefit);
    }

    /**
     * What a choice comes to.
     *
     * @throws ArithmeticException where that is too much
     */
    long weighed(long cost, long benefit) {
        return Math.subtractExact(Math.multiplyExact(benefit, perBenefit), Math.multiplyExact(cost, perCost));
    }

    /** By what choices that come to as much are told apart, of which the least is best: what they cost, or where that alone counts what they take away. */
    long besides(long cost, long benefit) {
        return perBenefit == 0 ? Math.negateExact(benefit) : cost;
    }

    /** What a choice costs. */
    long cost(long weighed, long besides) {
        return perBenefit == 0 ? Math.negateExact(weighed) / perCost : besides;
    }

    /**
     * What a choice brings.
     *
     * @throws ArithmeticException where what it costs is too much to be weighed
     */
    long benefit(long weighed, long besides) {
        return perBenefit == 0 ? Math.negateExact(besides) : Math.addExact(weighed, Math.multiplyExact(besides, perCost)) / perBenefit;
    }

    // Written out, as in SlotId.
    @Override
    public boolean equals(Object other) {
        return other instanceof Rate that && perCost == that.perCost && perBenefit == that.perBenefit;
    }

    @Override
    public int hashCode() {
        return 31 * Long.hashCode(perCost) + Long.hashCode(perBenefit);
    }
}

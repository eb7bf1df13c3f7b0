package fettle.space.best;

/**
 * Prices on what is scarce: a build's benefit, taken {@code factor} times, less what it uses of the budget and of each row at these rates. The most that
 * any build reaches by this, plus what the scarce things are worth in all, bounds the benefit of those that keep within them.
 *
 * @param factor at least 1
 * @param cost the rate on cost, not negative
 * @param rows the rate on each row, not negative
 */
record Weights(long factor, long cost, long[] rows) {

    /** What a part reaches. */
    long of(long benefit, long price, long[] uses) {
        long value = factor * benefit - cost * price;
        for (int row = 0; row < rows.length; row++) {
            value -= rows[row] * uses[row];
        }
        return value;
    }

    Weights withCost(long rate) {
        return new Weights(factor, rate, rows);
    }

    Weights withRow(int row, long rate) {
        long[] changed = rows.clone();
        changed[row] = rate;
        return new Weights(factor, cost, changed);
    }
}

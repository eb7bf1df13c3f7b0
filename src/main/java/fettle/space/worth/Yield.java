package fettle.space.worth;

import java.math.BigDecimal;
import java.util.Arrays;

/**
 * What an assembly brings, column by column of a {@link Measure}; or the best that any of some assemblies brings in each column.
 *
 * @param small columns of whole numbers, turned so that more is better
 * @param least large columns: the least, where there is a choice
 * @param most large columns: the greatest, where there is a choice
 */
record Yield(long[] small, BigDecimal[] least, BigDecimal[] most) {

    @Override
    public boolean equals(Object other) {
        return other instanceof Yield yield && Arrays.equals(small, yield.small) && Arrays.equals(least, yield.least) && Arrays.equals(most, yield.most);
    }

    @Override
    public int hashCode() {
        return 31 * (31 * Arrays.hashCode(small) + Arrays.hashCode(least)) + Arrays.hashCode(most);
    }

    @Override
    public String toString() {
        return Arrays.toString(small) + Arrays.toString(least) + Arrays.toString(most);
    }
}

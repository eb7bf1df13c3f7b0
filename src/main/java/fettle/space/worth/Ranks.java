package fettle.space.worth;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/**
 * Yields in places, and by column the sets of places in which a yield comes up to one value or another, as bits: those that may be as good as another in every column
 * are found many at a time.
 */
final class Ranks {

    /** In how many steps a column is divided, and of how many yields they are taken. */
    private static final int MOST_STEPS = 32;
    private static final int MOST_SAMPLED = 512;

    /** How many places are looked at in the time that comparing two yields takes, about. */
    static final int PLACES_A_COMPARISON = 16;

    private final int[] columns;
    /** By place among these columns, the values from which on there is a higher rank, rising. */
    private final long[][] steps;
    /** By place among the columns, by rank, those that have at least it. */
    private final long[][][] reaching;
    private long[] all = new long[1];

    /**
     * No yields so far.
     *
     * @param alike some that are like those to come
     */
    private Ranks(Measure measure, List<Yield> alike) {
        int apart = 1 + alike.size() / MOST_SAMPLED;
        long[][] values = new long[measure.plain()][];
        for (int c = 0; c < values.length; c++) {
            int column = c;
            long[] sample = IntStream.range(0, alike.size() / apart).mapToLong(i -> alike.get(i * apart).small()[column]).sorted().toArray();
            values[c] = IntStream.rangeClosed(1, MOST_STEPS).mapToLong(i -> sample[(sample.length - 1) * i / MOST_STEPS]).filter(value -> value > sample[0]).distinct().toArray();
        }
        this.columns = IntStream.range(0, values.length).filter(c -> values[c].length > 0).boxed()
                .sorted(Comparator.comparingInt(c -> -values[c].length)).mapToInt(Integer::intValue).toArray();
        this.steps = Arrays.stream(columns).mapToObj(c -> values[c]).toArray(long[][]::new);
        this.reaching = Arrays.stream(steps).map(column -> new long[column.length + 1][all.length]).toArray(long[][][]::new);
    }

    /** Yields in the places in which they come, as among others that are like them. */
    static Ranks of(Measure measure, List<Yield> alike, List<Yield> yields) {
        Ranks ranks = new Ranks(measure, alike);
        for (int i = 0; i < yields.size(); i++) {
            ranks.add(i, yields.get(i));
        }
        return ranks;
    }

    /** Puts a yield in a place. */
    void add(int place, Yield yield) {
        if (place >= all.length * Long.SIZE) {
            all = Arrays.copyOf(all, Math.max(2 * all.length, place / Long.SIZE + 1));
            for (long[][] column : reaching) {
                Arrays.setAll(column, rank -> Arrays.copyOf(column[rank], all.length));
            }
        }
        all[place / Long.SIZE] |= 1L << place;
        int[] ranks = of(yield);
        for (int k = 0; k < ranks.length; k++) {
            for (int rank = 0; rank <= ranks[k]; rank++) {
                reaching[k][rank][place / Long.SIZE] |= 1L << place;
            }
        }
    }

    /** The ranks that a yield has. */
    int[] of(Yield yield) {
        int[] ranks = new int[columns.length];
        for (int k = 0; k < ranks.length; k++) {
            int found = Arrays.binarySearch(steps[k], yield.small()[columns[k]]);
            ranks[k] = found < 0 ? -found - 1 : found + 1;
        }
        return ranks;
    }

    /** The next place, from one on, of a yield that has no lower rank than these; less than 0 where there is none. */
    int next(int from, int[] ranks) {
        long mask = -1L << from;
        for (int word = from / Long.SIZE; word < all.length; word++) {
            long bits = all[word] & mask;
            for (int k = 0; k < ranks.length && bits != 0; k++) {
                bits &= reaching[k][ranks[k]][word];
            }
            if (bits != 0) {
                return word * Long.SIZE + Long.numberOfTrailingZeros(bits);
            }
            mask = -1;
        }
        return -1;
    }
}

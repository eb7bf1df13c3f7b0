package fettle.space.worth;

import java.util.Arrays;
import java.util.Comparator;

/** Sets of role kinds, as bits, in the order in which they are listed: the fewest kinds first, each set once. */
final class SmallestFirst {

    static final Comparator<Long> ORDER = SmallestFirst::compare;

    /** How many sets are put in order at once, so that making up many pairs takes no room for all of them. */
    private static final int AT_ONCE = 1 << 14;

    private SmallestFirst() {}

    private static int compare(long one, long other) {
        int order = Integer.compare(Long.bitCount(one), Long.bitCount(other));
        return order == 0 ? Long.compare(one, other) : order;
    }

    /** Those of either list, both of which are in order: the very list that has all of them, where one has. */
    static long[] either(long[] one, long[] other) {
        int common = common(one, other);
        if (common == other.length || common == one.length) {
            return common == other.length ? one : other;
        }
        long[] all = new long[one.length + other.length - common];
        int i = 0;
        int j = 0;
        for (int next = 0; next < all.length; next++) {
            int order = i == one.length ? 1 : j == other.length ? -1 : compare(one[i], other[j]);
            all[next] = order <= 0 ? one[i] : other[j];
            i += order <= 0 ? 1 : 0;
            j += order >= 0 ? 1 : 0;
        }
        return all;
    }

    /** How many both lists have. */
    private static int common(long[] one, long[] other) {
        int common = 0;
        int i = 0;
        int j = 0;
        while (i < one.length && j < other.length) {
            int order = compare(one[i], other[j]);
            common += order == 0 ? 1 : 0;
            i += order <= 0 ? 1 : 0;
            j += order >= 0 ? 1 : 0;
        }
        return common;
    }

    /** What each of one list makes up with each of another. */
    static long[] both(long[] one, long[] other) {
        long[] all = {};
        long[] some = new long[Math.max(other.length, (int) Math.min(AT_ONCE, (long) one.length * other.length))];
        int size = 0;
        for (long first : one) {
            if (size + other.length > some.length) {
                all = either(all, inOrder(Arrays.copyOf(some, size)));
                size = 0;
            }
            for (long second : other) {
                some[size++] = first | second;
            }
        }
        return either(all, inOrder(Arrays.copyOf(some, size)));
    }

    /** Sorted by themselves they are in order among those of the same size. */
    private static long[] inOrder(long[] sets) {
        Arrays.sort(sets);
        int[] next = new int[Long.SIZE + 2];
        int different = 0;
        for (int i = 0; i < sets.length; i++) {
            if (i == 0 || sets[i] != sets[i - 1]) {
                sets[different++] = sets[i];
                next[Long.bitCount(sets[i]) + 1]++;
            }
        }
        for (int bits = 1; bits < next.length; bits++) {
            next[bits] += next[bits - 1];
        }
        long[] all = new long[different];
        for (int i = 0; i < different; i++) {
            all[next[Long.bitCount(sets[i])]++] = sets[i];
        }
        return all;
    }
}

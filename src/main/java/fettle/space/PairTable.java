package fettle.space;

import java.util.Arrays;

/** Numbers by two numbers, none of them negative. */
final class PairTable {

    /** Where nothing was put. */
    static final int NONE = -1;

    private long[] keys = blank(16);
    private int[] values = new int[16];
    private int size;

    private static long[] blank(int length) {
        long[] keys = new long[length];
        Arrays.fill(keys, NONE);
        return keys;
    }

    int get(int one, int other) {
        return values[place(key(one, other))] - 1;
    }

    void put(int one, int other, int value) {
        if (3 * size >= 2 * keys.length) {
            grow();
        }
        long key = key(one, other);
        int at = place(key);
        size += keys[at] == NONE ? 1 : 0;
        keys[at] = key;
        values[at] = value + 1;
    }

    private static long key(int one, int other) {
        return (long) one << 32 | other;
    }

    /** Where a key is, or the free place that is its own. */
    private int place(long key) {
        long mixed = key * Spreading.LONG;
        int at = (int) (mixed ^ mixed >>> 32) & (keys.length - 1);
        while (keys[at] != NONE && keys[at] != key) {
            at = (at + 1) & (keys.length - 1);
        }
        return at;
    }

    private void grow() {
        long[] oldKeys = keys;
        int[] oldValues = values;
        keys = blank(2 * oldKeys.length);
        values = new int[keys.length];
        for (int i = 0; i < oldKeys.length; i++) {
            if (oldKeys[i] != NONE) {
                int at = place(oldKeys[i]);
                keys[at] = oldKeys[i];
                values[at] = oldValues[i];
            }
        }
    }
}

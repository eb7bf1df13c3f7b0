package fettle.space;

import java.util.Arrays;

/** Numbers by number, neither of them negative. */
final class IntTable {

    /** Where nothing was put. */
    static final int NONE = -1;

    private int[] keys = new int[16];
    private int[] values = new int[16];
    private int size;

    IntTable() {
        Arrays.fill(keys, NONE);
    }

    int get(int key) {
        int at = place(key, keys.length);
        while (keys[at] != NONE) {
            if (keys[at] == key) {
                return values[at];
            }
            at = (at + 1) & (keys.length - 1);
        }
        return NONE;
    }

    void put(int key, int value) {
        if (3 * size >= 2 * keys.length) {
            grow();
        }
        int at = place(key, keys.length);
        while (keys[at] != NONE && keys[at] != key) {
            at = (at + 1) & (keys.length - 1);
        }
        size += keys[at] == NONE ? 1 : 0;
        keys[at] = key;
        values[at] = value;
    }

    private void grow() {
        int[] oldKeys = keys;
        int[] oldValues = values;
        keys = new int[2 * oldKeys.length];
        values = new int[keys.length];
        Arrays.fill(keys, NONE);
        for (int i = 0; i < oldKeys.length; i++) {
            if (oldKeys[i] != NONE) {
                int at = place(oldKeys[i], keys.length);
                while (keys[at] != NONE) {
                    at = (at + 1) & (keys.length - 1);
                }
                keys[at] = oldKeys[i];
                values[at] = oldValues[i];
            }
        }
    }

    private static int place(int key, int length) {
        int mixed = key * Spreading.INT;
        return (mixed ^ mixed >>> 15) & (length - 1);
    }
}

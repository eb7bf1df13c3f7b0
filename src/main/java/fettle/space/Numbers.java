package fettle.space;

import java.util.Arrays;

/** Sets of numbers as sorted arrays without repeats. */
final class Numbers {

    static final int[] NONE = {};

    private Numbers() {}

    static int[] union(int[] one, int[] other) {
        if (one.length == 0 || one == other) {
            return other;
        }
        if (other.length == 0) {
            return one;
        }
        int[] both = new int[one.length + other.length];
        int length = 0;
        int i = 0;
        int j = 0;
        while (i < one.length && j < other.length) {
            int next = Math.min(one[i], other[j]);
            both[length++] = next;
            if (one[i] == next) {
                i++;
            }
            if (other[j] == next) {
                j++;
            }
        }
        while (i < one.length) {
            both[length++] = one[i++];
        }
        while (j < other.length) {
            both[length++] = other[j++];
        }
        return length == one.length ? one : length == other.length ? other : Arrays.copyOf(both, length);
    }

    /** Whether all of some numbers are among others. */
    static boolean contains(int[] all, int[] some) {
        if (some == all) {
            return true;
        }
        int i = 0;
        for (int number : some) {
            while (i < all.length && all[i] < number) {
                i++;
            }
            if (i == all.length || all[i] != number) {
                return false;
            }
        }
        return true;
    }

    static int[] intersection(int[] one, int[] other) {
        if (one.length == 0 || one == other) {
            return one;
        }
        int[] shared = new int[Math.min(one.length, other.length)];
        int length = 0;
        int j = 0;
        for (int number : one) {
            while (j < other.length && other[j] < number) {
                j++;
            }
            if (j < other.length && other[j] == number) {
                shared[length++] = number;
            }
        }
        return length == 0 ? NONE : length == one.length ? one : Arrays.copyOf(shared, length);
    }

    /** A sorted array without its repeats. */
    static int[] distinct(int[] sorted) {
        int different = 0;
        int[] once = new int[sorted.length];
        for (int number : sorted) {
            if (different == 0 || number != once[different - 1]) {
                once[different++] = number;
            }
        }
        return different == sorted.length ? sorted : Arrays.copyOf(once, different);
    }
}

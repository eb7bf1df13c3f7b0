package fettle.space;

import java.util.Arrays;

/**
 * What some placed things can still do to the rest of a build: the state of each monitor that they have changed, as pairs of monitor and state in rising
 * order of the monitors. A monitor that isn't named is in state 0.
 */
final class Signature {

    static final Signature NOTHING = new Signature(new int[0]);

    private final int[] pairs;

    private Signature(int[] pairs) {
        this.pairs = pairs;
    }

    /** What tells most signatures apart. A sum over the pairs, no term of which waits for another: signatures are long, and made often. */
    static int hash(int[] pairs, int length) {
        long sum = 0;
        for (int i = 0; i < length; i += 2) {
            long pair = ((long) pairs[i] << 32 | pairs[i + 1]) * Spreading.LONG;
            sum += pair ^ pair >>> 29;
        }
        return (int) (sum ^ sum >>> 32);
    }

    /** Of the first of some pairs. */
    static Signature of(int[] pairs, int length) {
        return length == 0 ? NOTHING : new Signature(Arrays.copyOf(pairs, length));
    }

    /** The pairs; nobody changes them. */
    int[] pairs() {
        return pairs;
    }

    /** Whether these are the pairs, as many as are given by the length. */
    boolean holds(int[] some, int length) {
        return Arrays.equals(pairs, 0, pairs.length, some, 0, length);
    }

    boolean isNothing() {
        return pairs.length == 0;
    }

    int size() {
        return pairs.length / 2;
    }

    int monitor(int i) {
        return pairs[2 * i];
    }

    int state(int i) {
        return pairs[2 * i + 1];
    }

    /** The state of one monitor. */
    int stateOf(int monitor) {
        for (int i = 0; i < pairs.length; i += 2) {
            if (pairs[i] == monitor) {
                return pairs[i + 1];
            }
        }
        return 0;
    }

    @Override
    public String toString() {
        return Arrays.toString(pairs);
    }
}

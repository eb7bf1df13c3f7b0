package fettle.space;

import java.util.Arrays;

/** Looks at signatures with the eyes of what can still be placed: what that cannot tell apart is made the same, and what it cannot save is dropped. */
final class Lens {

    static final Lens CLEAR = new Lens(0, new int[0], new Quotient[0]);

    private final int number;
    private final int[] monitors;
    private final Quotient[] quotients;
    private final int[] demanding;

    /**
     * A lens.
     *
     * @param number tells it from others
     * @param monitors those looked at, in rising order; states of others are left as they are
     */
    Lens(int number, int[] monitors, Quotient[] quotients) {
        this.number = number;
        this.monitors = monitors;
        this.quotients = quotients;
        int[] found = new int[monitors.length];
        int count = 0;
        for (int i = 0; i < monitors.length; i++) {
            if (quotients[i].demands()) {
                found[count++] = monitors[i];
            }
        }
        this.demanding = Arrays.copyOf(found, count);
    }

    int number() {
        return number;
    }

    /** The signature as seen; empty-handed ({@code null}) where no valid build has it. */
    Signature see(Signature signature) {
        for (int monitor : demanding) {
            if (signature.stateOf(monitor) == 0) {
                return null;
            }
        }
        if (monitors.length == 0 || signature.isNothing()) {
            return signature;
        }
        int[] kept = null;
        int length = 0;
        int at = 0;
        for (int i = 0; i < signature.size(); i++) {
            while (at < monitors.length && monitors[at] < signature.monitor(i)) {
                at++;
            }
            boolean looked = at < monitors.length && monitors[at] == signature.monitor(i);
            int seen = looked ? quotients[at].of(signature.state(i)) : signature.state(i);
            if (seen == Quotient.HOPELESS) {
                return null;
            }
            if (kept == null && seen != signature.state(i)) {
                kept = new int[2 * signature.size()];
                for (int j = 0; j < i; j++) {
                    kept[2 * j] = signature.monitor(j);
                    kept[2 * j + 1] = signature.state(j);
                }
                length = 2 * i;
            }
            if (kept != null && seen != 0) {
                kept[length++] = signature.monitor(i);
                kept[length++] = seen;
            }
        }
        return kept == null ? signature : Signature.of(kept, length);
    }
}

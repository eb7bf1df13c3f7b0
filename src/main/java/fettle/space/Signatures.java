package fettle.space;

import java.util.ArrayList;
import java.util.List;

/** Numbers signatures, so that the same sum of two and the same view of one need not be worked out again and again. */
final class Signatures {

    /** The number of {@link Signature#NOTHING}. */
    static final int NOTHING = 0;

    /** Where no valid build has a signature. */
    static final int HOPELESS = -1;

    private final Monitors monitors;
    private final List<Signature> signatures = new ArrayList<>();
    /** Finds signatures: hash and number of each, one more than it is, in one. */
    private long[] table = new long[1024];
    private final Memory sums = new Memory();
    private final Memory views = new Memory();
    /** For the pairs of a sum, which mostly is one that is known. */
    private int[] room = new int[64];

    Signatures(Monitors monitors) {
        this.monitors = monitors;
        number(Signature.NOTHING);
    }

    int number(Signature signature) {
        return number(signature.pairs(), signature.pairs().length);
    }

    /** That of the signature of some pairs, which is made only where there is none yet. */
    private int number(int[] pairs, int length) {
        if (length == 0 && !signatures.isEmpty()) {
            return NOTHING;
        }
        int hash = Signature.hash(pairs, length);
        int at = place(hash);
        while (table[at] != 0) {
            if ((int) (table[at] >>> 32) == hash && get((int) table[at] - 1).holds(pairs, length)) {
                return (int) table[at] - 1;
            }
            at = (at + 1) & (table.length - 1);
        }
        signatures.add(Signature.of(pairs, length));
        table[at] = (long) hash << 32 | signatures.size();
        if (2 * signatures.size() > table.length) {
            rehash();
        }
        return signatures.size() - 1;
    }

    private int place(int hash) {
        return (hash * Spreading.INT >>> 7) & (table.length - 1);
    }

    private void rehash() {
        long[] old = table;
        table = new long[2 * old.length];
        for (long entry : old) {
            if (entry != 0) {
                int at = place((int) (entry >>> 32));
                while (table[at] != 0) {
                    at = (at + 1) & (table.length - 1);
                }
                table[at] = entry;
            }
        }
    }

    Signature get(int number) {
        return signatures.get(number);
    }

    int plus(int one, int other) {
        if (one == NOTHING) {
            return other;
        }
        if (other == NOTHING) {
            return one;
        }
        // As asked, not in the order of the numbers: one that meets many is then remembered with them side by side.
        long key = (long) one << 32 | other;
        int known = sums.recall(key);
        return known != Memory.FORGOTTEN ? known : sums.keep(key, summed(get(one), get(other)));
    }

    private int summed(Signature one, Signature other) {
        int most = 2 * (one.size() + other.size());
        if (room.length < most) {
            room = new int[2 * most];
        }
        return number(room, monitors.plus(one, other, room));
    }

    int plus(int one, int[] events) {
        return events.length == 0 ? one : number(monitors.plus(get(one), events));
    }

    int see(Lens lens, int signature) {
        if (lens == Lens.CLEAR) {
            return signature;
        }
        long key = (long) lens.number() << 32 | signature;
        int known = views.recall(key);
        if (known != Memory.FORGOTTEN) {
            return known;
        }
        Signature seen = lens.see(get(signature));
        return views.keep(key, seen == null ? HOPELESS : number(seen));
    }
}

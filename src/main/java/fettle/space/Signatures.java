package fettle.space;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Numbers signatures, so that the same sum of two and the same view of one need not be worked out again and again. */
final class Signatures {

    /** The number of {@link Signature#NOTHING}. */
    static final int NOTHING = 0;

    /** Where no valid build has a signature. */
    static final int HOPELESS = -1;

    private final Monitors monitors;
    private final List<Signature> signatures = new ArrayList<>();
    private final Map<Signature, Integer> numbers = new HashMap<>();
    private final Memory sums = new Memory();
    private final Memory views = new Memory();

    Signatures(Monitors monitors) {
        this.monitors = monitors;
        number(Signature.NOTHING);
    }

    int number(Signature signature) {
        Integer known = numbers.putIfAbsent(signature, signatures.size());
        if (known == null) {
            signatures.add(signature);
            return signatures.size() - 1;
        }
        return known;
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
        long key = Memory.pair(one, other);
        int known = sums.recall(key);
        return known != Memory.FORGOTTEN ? known : sums.keep(key, number(monitors.plus(get(one), get(other))));
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

package fettle.space;

import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Makes lenses, each kind of quotient once, so that equal views are recognised across slots and platforms. */
final class Lenses {

    private record QuotientKey(Monoid monoid, int base, List<Integer> left) {
        @Override
        public boolean equals(Object other) {
            return other instanceof QuotientKey key && monoid == key.monoid && base == key.base && left.equals(key.left);
        }

        @Override
        public int hashCode() {
            return 31 * (31 * System.identityHashCode(monoid) + base) + left.hashCode();
        }
    }

    private record LensKey(List<Integer> monitors, List<Quotient> quotients) {}

    private final Monitors monitors;
    private final Map<QuotientKey, Quotient> quotients = new HashMap<>();
    private final Map<Quotient, Quotient> distinct = new HashMap<>();
    private final Map<LensKey, Lens> lenses = new HashMap<>();

    Lenses(Monitors monitors) {
        this.monitors = monitors;
    }

    /**
     * The view of what is outside.
     *
     * @param looked the monitors looked at, in rising order
     * @param base by monitor, the state that the platform itself brings
     * @param outside sorted events that may still happen; those of other monitors are passed over
     */
    Lens lens(int[] looked, int[] base, int[] outside) {
        if (looked.length == 0) {
            return Lens.CLEAR;
        }
        Quotient[] seen = new Quotient[looked.length];
        int at = 0;
        for (int i = 0; i < looked.length; i++) {
            while (at < outside.length && monitors.monitorOf(outside[at]) < looked[i]) {
                at++;
            }
            int from = at;
            while (at < outside.length && monitors.monitorOf(outside[at]) == looked[i]) {
                at++;
            }
            seen[i] = quotient(looked[i], base[looked[i]], Arrays.copyOfRange(outside, from, at));
        }
        return lenses.computeIfAbsent(new LensKey(Arrays.stream(looked).boxed().toList(), List.of(seen)), unused -> new Lens(looked, seen));
    }

    private Quotient quotient(int monitor, int base, int[] events) {
        int[] left = Arrays.stream(events).map(monitors::generatorOf).toArray();
        Monoid monoid = monitors.monoid(monitor);
        return quotients.computeIfAbsent(new QuotientKey(monoid, base, Arrays.stream(left).boxed().toList()), unused -> {
            Quotient fresh = monoid.seenFrom(base, left);
            return distinct.computeIfAbsent(fresh, itself -> itself);
        });
    }
}

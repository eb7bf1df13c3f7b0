package fettle.space;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Makes lenses, each kind of quotient once, so that equal views are recognised across slots and platforms. */
final class Lenses {

    private record QuotientKey(Monoid monoid, int base, List<Integer> made, List<Integer> left) {
        @Override
        public boolean equals(Object other) {
            return other instanceof QuotientKey key && monoid == key.monoid && base == key.base && made.equals(key.made) && left.equals(key.left);
        }

        @Override
        public int hashCode() {
            return 31 * (31 * (31 * System.identityHashCode(monoid) + base) + made.hashCode()) + left.hashCode();
        }
    }

    private record LensKey(List<Integer> monitors, List<Quotient> quotients) {
        // Written out, as in SlotId.
        @Override
        public boolean equals(Object other) {
            return other instanceof LensKey that && monitors.equals(that.monitors) && quotients.equals(that.quotients);
        }

        @Override
        public int hashCode() {
            return 31 * monitors.hashCode() + quotients.hashCode();
        }
    }

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
     * @param inside sorted events that can have happened
     * @param outside sorted events that can still happen; those of monitors not looked at are passed over, here and there
     */
    Lens lens(int[] looked, int[] base, int[] inside, int[] outside) {
        if (looked.length == 0) {
            return Lens.CLEAR;
        }
        Quotient[] seen = new Quotient[looked.length];
        Cursor made = new Cursor(inside);
        Cursor left = new Cursor(outside);
        for (int i = 0; i < looked.length; i++) {
            seen[i] = quotient(looked[i], base[looked[i]], made.generators(looked[i]), left.generators(looked[i]));
        }
        return lenses.computeIfAbsent(new LensKey(Arrays.stream(looked).boxed().toList(), List.of(seen)), unused -> new Lens(lenses.size() + 1, looked, seen));
    }

    /** Goes through sorted events, monitor by monitor. */
    private final class Cursor {

        private final int[] events;
        private int at;

        Cursor(int[] events) {
            this.events = events;
        }

        List<Integer> generators(int monitor) {
            while (at < events.length && monitors.monitorOf(events[at]) < monitor) {
                at++;
            }
            if (at == events.length || monitors.monitorOf(events[at]) != monitor) {
                return List.of();
            }
            List<Integer> generators = new ArrayList<>();
            while (at < events.length && monitors.monitorOf(events[at]) == monitor) {
                generators.add(monitors.generatorOf(events[at++]));
            }
            return generators;
        }
    }

    private Quotient quotient(int monitor, int base, List<Integer> made, List<Integer> left) {
        Monoid monoid = monitors.monoid(monitor);
        return quotients.computeIfAbsent(new QuotientKey(monoid, base, made, left), unused -> {
            Quotient fresh = monoid.seenFrom(base, ints(made), ints(left));
            return distinct.computeIfAbsent(fresh, itself -> itself);
        });
    }

    private static int[] ints(List<Integer> numbers) {
        return numbers.stream().mapToInt(Integer::intValue).toArray();
    }
}

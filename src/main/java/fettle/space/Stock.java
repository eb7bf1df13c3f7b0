package fettle.space;

import java.util.BitSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Keeps the contents of slots, equal ones once. */
final class Stock {

    private record Key(int shape, List<Integer> classes, List<BitSet> above) {
        // Written out, as in SlotId.
        @Override
        public boolean equals(Object other) {
            return other instanceof Key that && shape == that.shape && classes.equals(that.classes) && above.equals(that.above);
        }

        @Override
        public int hashCode() {
            return 31 * (31 * shape + classes.hashCode()) + above.hashCode();
        }
    }

    private final Ground ground;
    private final Watches watches;
    private final Company company;
    private final Map<Key, Contents> known = new HashMap<>();

    Stock(Ground ground, Watches watches) {
        this.ground = ground;
        this.watches = watches;
        this.company = new Company(watches.circuit(), ground.terrain());
    }

    Contents of(int slot, List<Integer> classes, List<BitSet> above) {
        return known.computeIfAbsent(new Key(ground.nodeOf(slot), classes, above), key -> new Contents(ground, watches, company, slot, classes, above));
    }
}

package fettle.space;

import java.util.HashMap;
import java.util.Map;

/**
 * Remembers what two lots of classes came to as a lens sees them. Slots that fit the same parts but hold different numbers of them ask for the same again. When
 * much has been kept, all is forgotten, and worked out anew where it is asked for.
 */
final class Products {

    private static final int MUCH = 1 << 22;

    private record Question(Classes one, Classes other, Lens lens) {
        // Written out, as in SlotId.
        @Override
        public boolean equals(Object other) {
            return other instanceof Question that && one.equals(that.one) && other.equals(that.other) && lens.equals(that.lens);
        }

        @Override
        public int hashCode() {
            return 31 * (31 * one.hashCode() + other.hashCode()) + lens.hashCode();
        }
    }

    private final Map<Question, int[]> known = new HashMap<>();
    private int kept;

    /** Signatures and nodes by turns, or {@code null} where they aren't remembered. */
    int[] recall(Classes one, Classes other, Lens lens) {
        return known.get(new Question(one, other, lens));
    }

    void keep(Classes one, Classes other, Lens lens, int[] found) {
        if (kept > MUCH) {
            known.clear();
            kept = 0;
        }
        kept += found.length + one.size() + other.size();
        known.put(new Question(one, other, lens), found);
    }
}

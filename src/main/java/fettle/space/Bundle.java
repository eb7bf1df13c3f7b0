package fettle.space;

import java.util.List;

/**
 * Things that a clause cannot see apart, as far as it sees them: a slot in use with the parts directly in it, or a part by itself.
 *
 * <p>What a clause sees of a thing is a row of bits, one for each term of its {@code when} that the thing meets, and one more where it meets its {@code need}.
 *
 * @param slot the bits of the slot; 0 where there is none to be seen
 * @param heads the bits of each part, none of them 0, in rising order
 */
record Bundle(int slot, List<Integer> heads) implements Comparable<Bundle> {

    Bundle {
        heads = heads.stream().sorted().toList();
    }

    static Bundle part(int bits) {
        return new Bundle(0, List.of(bits));
    }

    static Bundle slot(int bits) {
        return new Bundle(bits, List.of());
    }

    boolean empty() {
        return slot == 0 && heads.isEmpty();
    }

    @Override
    public int compareTo(Bundle other) {
        if (slot != other.slot) {
            return Integer.compare(slot, other.slot);
        }
        for (int i = 0; i < Math.min(heads.size(), other.heads.size()); i++) {
            if (!heads.get(i).equals(other.heads.get(i))) {
                return heads.get(i).compareTo(other.heads.get(i));
            }
        }
        return Integer.compare(heads.size(), other.heads.size());
    }

    // Written out, as in SlotId.
    @Override
    public boolean equals(Object other) {
        return other instanceof Bundle that && slot == that.slot && heads.equals(that.heads);
    }

    @Override
    public int hashCode() {
        return 31 * slot + heads.hashCode();
    }
}

package fettle.space;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * What a trait remembers: which of its values suit all that is placed.
 *
 * @param lists what each sort of thing leaves of the values, each a generator
 */
record AgreementShape(List<BitSet> lists) {

    /** Lists of values by number; a value is left out where another stands in every list that it stands in, since it makes no difference. */
    static AgreementShape of(List<? extends Collection<String>> lists) {
        Map<String, BitSet> holders = new TreeMap<>();
        for (int i = 0; i < lists.size(); i++) {
            for (String value : lists.get(i)) {
                holders.computeIfAbsent(value, unused -> new BitSet()).set(i);
            }
        }
        List<BitSet> widest = new ArrayList<>();
        for (BitSet holder : new LinkedHashSet<>(holders.values())) {
            if (holders.values().stream().noneMatch(other -> !other.equals(holder) && contains(other, holder))) {
                widest.add(holder);
            }
        }
        List<BitSet> left = new ArrayList<>();
        for (int i = 0; i < lists.size(); i++) {
            BitSet values = new BitSet();
            for (int v = 0; v < widest.size(); v++) {
                values.set(v, widest.get(v).get(i));
            }
            left.add(values);
        }
        return new AgreementShape(left);
    }

    private static boolean contains(BitSet larger, BitSet smaller) {
        BitSet rest = (BitSet) smaller.clone();
        rest.andNot(larger);
        return rest.isEmpty();
    }

    /**
     * The states of such a trait.
     *
     * @throws TooLarge where there are more than {@code most} of them
     */
    Monoid states(int most) {
        BitSet every = new BitSet();
        lists.forEach(every::or);
        // One value more than any list has: left as long as nothing is placed.
        int undeclared = every.length();
        every.set(0, undeclared + 1);
        return Monoid.explore(every, lists.size(), (left, list) -> {
            BitSet both = (BitSet) left.clone();
            both.and(lists.get(list));
            return both;
        }, BitSet::isEmpty, most);
    }

    // Written out, as in SlotId.
    @Override
    public boolean equals(Object other) {
        return other instanceof AgreementShape that && lists.equals(that.lists);
    }

    @Override
    public int hashCode() {
        return lists.hashCode();
    }
}

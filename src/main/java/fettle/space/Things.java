package fettle.space;

import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.TreeSet;

/** The hosts and slots whose being placed, or in use, meets a condition; by number, in rising order. */
record Things(List<Integer> hosts, List<Integer> slots) implements Comparable<Things> {

    static final Things NONE = new Things(List.of(), List.of());

    static Things of(int[] hosts, int[] slots) {
        return new Things(Arrays.stream(hosts).sorted().boxed().toList(), Arrays.stream(slots).sorted().boxed().toList());
    }

    boolean has(boolean slot, int number) {
        return Collections.binarySearch(slot ? slots : hosts, number) >= 0;
    }

    Things or(Things other) {
        return new Things(union(hosts, other.hosts), union(slots, other.slots));
    }

    private static List<Integer> union(List<Integer> one, List<Integer> other) {
        if (one.isEmpty() || one.equals(other)) {
            return other;
        }
        if (other.isEmpty()) {
            return one;
        }
        TreeSet<Integer> both = new TreeSet<>(one);
        both.addAll(other);
        return List.copyOf(both);
    }

    @Override
    public int compareTo(Things other) {
        int byHosts = compare(hosts, other.hosts);
        return byHosts != 0 ? byHosts : compare(slots, other.slots);
    }

    private static int compare(List<Integer> one, List<Integer> other) {
        for (int i = 0; i < Math.min(one.size(), other.size()); i++) {
            if (!one.get(i).equals(other.get(i))) {
                return one.get(i).compareTo(other.get(i));
            }
        }
        return Integer.compare(one.size(), other.size());
    }

    // Written out, as in SlotId.
    @Override
    public boolean equals(Object other) {
        return other instanceof Things that && hosts.equals(that.hosts) && slots.equals(that.slots);
    }

    @Override
    public int hashCode() {
        return 31 * hosts.hashCode() + slots.hashCode();
    }
}

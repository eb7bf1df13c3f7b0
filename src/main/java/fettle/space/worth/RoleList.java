package fettle.space.worth;

import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import java.util.concurrent.atomic.AtomicReferenceArray;
import java.util.stream.IntStream;

/** Different sets of role kinds, as bits, each with its place; several threads may look them up. */
final class RoleList {

    private static final int FEW = 4;
    /** Sets below this bound are looked up without a search. */
    private static final long DIRECT = 1 << 12;

    private final int number;
    private final long[] sets;
    private final long most;
    private volatile int[] direct;
    private volatile Map<Long, Integer> places;

    /**
     * A list.
     *
     * @param number tells it from other lists
     */
    RoleList(int number, long[] sets) {
        this.number = number;
        this.sets = sets;
        this.most = Arrays.stream(sets).max().orElse(0);
    }

    int number() {
        return number;
    }

    int size() {
        return sets.length;
    }

    long set(int place) {
        return sets[place];
    }

    /** All of them, in order; nobody changes it. */
    long[] sets() {
        return sets;
    }

    /** Where a set is; -1 where it is none of them. */
    int place(long set) {
        if (sets.length <= FEW) {
            for (int at = 0; at < sets.length; at++) {
                if (sets[at] == set) {
                    return at;
                }
            }
            return -1;
        }
        if (most >= DIRECT) {
            return placed().getOrDefault(set, -1);
        }
        return set > most ? -1 : directly()[(int) set];
    }

    private int[] directly() {
        int[] found = direct;
        if (found == null) {
            found = new int[(int) most + 1];
            Arrays.fill(found, -1);
            for (int at = 0; at < sets.length; at++) {
                found[(int) sets[at]] = at;
            }
            direct = found;
        }
        return found;
    }

    private Map<Long, Integer> placed() {
        Map<Long, Integer> found = places;
        if (found == null) {
            found = new HashMap<>();
            for (int at = 0; at < sets.length; at++) {
                found.put(sets[at], at);
            }
            places = found;
        }
        return found;
    }

    /** What a set of one list and one of another make up together. */
    static final class Joined {

        /** Pairs are remembered where there are no more. */
        private static final int MOST_PAIRED = 1 << 14;

        private final RoleList one;
        private final RoleList other;
        private final RoleList all;
        private final AtomicReferenceArray<int[]> making;
        private volatile int[] made;

        Joined(RoleList one, RoleList other, RoleList all) {
            this.one = one;
            this.other = other;
            this.all = all;
            this.making = new AtomicReferenceArray<>((long) one.size() * other.size() > MOST_PAIRED ? 0 : all.size());
        }

        /** The sets that they make up. */
        RoleList all() {
            return all;
        }

        /** The places of a set of the one and of one of the other that together make up the set in a place, all such pairs one after the other. */
        int[] making(int place) {
            if (making.length() == 0) {
                return paired(all.set(place));
            }
            int[] known = making.get(place);
            if (known == null) {
                known = paired(all.set(place));
                making.set(place, known);
            }
            return known;
        }

        /** Where the set is that each set of the one makes up with each of the other, those of the first set of the one first. */
        int[] made() {
            int[] known = made;
            if (known == null) {
                known = new int[Math.multiplyExact(one.size(), other.size())];
                int next = 0;
                for (long some : one.sets()) {
                    for (long others : other.sets()) {
                        known[next++] = all.place(some | others);
                    }
                }
                made = known.length > MOST_PAIRED ? null : known;
            }
            return known;
        }

        private int[] paired(long set) {
            IntStream.Builder places = IntStream.builder();
            for (int i = 0; i < one.size(); i++) {
                if ((one.set(i) & ~set) == 0) {
                    for (int j = 0; j < other.size(); j++) {
                        if ((one.set(i) | other.set(j)) == set) {
                            places.add(i).add(j);
                        }
                    }
                }
            }
            return places.build().toArray();
        }
    }
}

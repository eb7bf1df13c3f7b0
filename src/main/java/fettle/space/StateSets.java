package fettle.space;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.IntBinaryOperator;

/** Sets of states, each numbered once, so that unions and sums of the few that turn up are worked out once. */
final class StateSets {

    /** The number of the empty set. */
    static final int EMPTY = 0;

    /** The number of the set of nothing but state 0. */
    static final int ZERO = 1;

    private final IntBinaryOperator plus;
    private final List<int[]> sets = new ArrayList<>();
    private final Map<List<Integer>, Integer> numbers = new HashMap<>();
    private final Map<Long, Integer> unions = new HashMap<>();
    private final Map<Long, Integer> sums = new HashMap<>();

    StateSets(IntBinaryOperator plus) {
        this.plus = plus;
        of(new int[0]);
        of(0);
    }

    /** The number of a set, its states in rising order. */
    int of(int... states) {
        List<Integer> key = new ArrayList<>(states.length);
        for (int state : states) {
            key.add(state);
        }
        return numbers.computeIfAbsent(key, unused -> {
            sets.add(states);
            return sets.size() - 1;
        });
    }

    int[] get(int number) {
        return sets.get(number);
    }

    int union(int one, int other) {
        if (one == other || other == EMPTY) {
            return one;
        }
        if (one == EMPTY) {
            return other;
        }
        long key = Memory.pair(one, other);
        Integer known = unions.get(key);
        if (known == null) {
            known = of(Numbers.union(get(one), get(other)));
            unions.put(key, known);
        }
        return known;
    }

    /** Every sum of a state of one with a state of the other. */
    int sums(int one, int other) {
        if (one == ZERO || other == EMPTY) {
            return other;
        }
        if (other == ZERO || one == EMPTY) {
            return one;
        }
        long key = Memory.pair(one, other);
        Integer known = sums.get(key);
        if (known == null) {
            BitSet all = new BitSet();
            for (int a : get(one)) {
                for (int b : get(other)) {
                    all.set(plus.applyAsInt(a, b));
                }
            }
            known = of(all.stream().toArray());
            sums.put(key, known);
        }
        return known;
    }
}

package fettle.space;

import java.nio.IntBuffer;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.IntBinaryOperator;

/** Sets of states, each numbered once, so that unions and sums of the few that turn up are seldom worked out twice. */
final class StateSets {

    /** The number of the empty set. */
    static final int EMPTY = 0;

    /** The number of the set of nothing but state 0. */
    static final int ZERO = 1;

    private final IntBinaryOperator plus;
    private final List<int[]> sets = new ArrayList<>();
    private final Map<IntBuffer, Integer> numbers = new HashMap<>();
    private final Memory unions = new Memory();
    private final Memory sums = new Memory();

    StateSets(IntBinaryOperator plus) {
        this.plus = plus;
        of(new int[0]);
        of(0);
    }

    /** The number of a set, its states in rising order. */
    int of(int... states) {
        IntBuffer key = IntBuffer.wrap(states);
        Integer known = numbers.get(key);
        if (known == null) {
            known = sets.size();
            sets.add(states);
            numbers.put(key, known);
        }
        return known;
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
        int known = unions.recall(key);
        return known == Memory.FORGOTTEN ? unions.keep(key, of(Numbers.union(get(one), get(other)))) : known;
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
        int known = sums.recall(key);
        return known == Memory.FORGOTTEN ? sums.keep(key, of(summed(get(one), get(other)))) : known;
    }

    private int[] summed(int[] one, int[] other) {
        BitSet all = new BitSet();
        for (int a : one) {
            for (int b : other) {
                all.set(plus.applyAsInt(a, b));
            }
        }
        return all.stream().toArray();
    }
}

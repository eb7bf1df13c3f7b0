package fettle.sat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.Collections;
import java.util.List;

/**
 * Clauses over numbered variables, a negative number being the variable's negation. Every variable that is made up on the way is defined both ways round by
 * others, so that there are as many models as without it.
 */
final class Clauses {

    /** A variable that holds. */
    static final int ALWAYS = 1;

    /** What never holds. */
    static final int NEVER = -ALWAYS;

    /** Of so many things each pair is written down. */
    static final int SPELT_OUT = 30;

    /** Of so many things each lot is written down that weighs too much. */
    private static final int SUMS_SPELT_OUT = 12;

    private final List<int[]> all = new ArrayList<>();
    private int variables;

    Clauses() {
        fresh();
        add(ALWAYS);
    }

    int fresh() {
        return ++variables;
    }

    int variables() {
        return variables;
    }

    List<int[]> all() {
        return all;
    }

    /** One of these holds. */
    void add(int... literals) {
        if (Arrays.stream(literals).noneMatch(literal -> literal == ALWAYS) || literals.length == 1) {
            all.add(literals.length == 1 ? literals : Arrays.stream(literals).filter(literal -> literal != NEVER).toArray());
        }
    }

    /** What holds exactly when one of these does. */
    int any(Collection<Integer> literals) {
        int[] some = literals.stream().mapToInt(Integer::intValue).filter(literal -> literal != NEVER).toArray();
        if (some.length == 0) {
            return NEVER;
        } else if (some.length == 1) {
            return some[0];
        } else if (Arrays.stream(some).anyMatch(literal -> literal == ALWAYS)) {
            return ALWAYS;
        }
        int any = fresh();
        int[] one = Arrays.copyOf(some, some.length + 1);
        one[some.length] = -any;
        all.add(one);
        for (int literal : some) {
            add(-literal, any);
        }
        return any;
    }

    /** What holds exactly when both do. */
    int both(int one, int other) {
        return -any(List.of(-one, -other));
    }

    /** What holds exactly when at least two of these do. */
    int twice(Collection<Integer> literals) {
        int some = NEVER;
        int two = NEVER;
        for (int literal : literals) {
            two = any(List.of(two, both(some, literal)));
            some = any(List.of(some, literal));
        }
        return two;
    }

    /** No two of these hold. */
    void apart(List<Integer> literals) {
        if (literals.size() > SPELT_OUT) {
            atMost(literals, Collections.nCopies(literals.size(), 1), 1);
            return;
        }
        for (int i = 0; i < literals.size(); i++) {
            for (int j = 0; j < i; j++) {
                add(-literals.get(i), -literals.get(j));
            }
        }
    }

    /** The weights of those that hold sum to no more than a bound. */
    void atMost(List<Integer> literals, List<Integer> weights, int bound) {
        if (literals.size() <= SUMS_SPELT_OUT) {
            notMore(literals, weights, 0, List.of(), bound);
            return;
        }
        // By sum from 1 to the bound: whether those gone through so far come to it.
        int[] reached = new int[bound + 1];
        Arrays.fill(reached, NEVER);
        reached[0] = ALWAYS;
        for (int i = 0; i < literals.size(); i++) {
            int weight = weights.get(i);
            if (weight > bound) {
                add(-literals.get(i));
                continue;
            }
            add(-literals.get(i), -reached[bound - weight + 1]);
            if (i + 1 < literals.size()) {
                for (int sum = bound; sum > 0; sum--) {
                    reached[sum] = any(List.of(reached[sum], both(literals.get(i), reached[Math.max(0, sum - weight)])));
                }
            }
        }
    }

    /** Not those that were taken and also some from one on, if these exceed what is left. */
    private void notMore(List<Integer> literals, List<Integer> weights, int from, List<Integer> taken, int left) {
        if (left < 0) {
            add(taken.stream().mapToInt(literal -> -literal).toArray());
            return;
        }
        for (int i = from; i < literals.size(); i++) {
            List<Integer> more = new ArrayList<>(taken);
            more.add(literals.get(i));
            notMore(literals, weights, i + 1, more, left - weights.get(i));
        }
    }
}

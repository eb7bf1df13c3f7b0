package fettle.space;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;

/**
 * All that one relation can remember of what is placed: finitely many states that add up in any order, each of which breaks the relation
 * or not.
 *
 * <p>State 0 is that of nothing placed. Each sort of thing that can be placed is a generator.
 */
final class Monoid {

    /** State tables of at most so many states are kept whole. */
    private static final int TABLE = 256;

    /** How one more thing changes a state while states are still written out. */
    interface Step<S> {
        S add(S state, int generator);
    }

    private final int generators;
    private final int[] next;
    private final boolean[] broken;
    private final int[] before;
    private final int[] lastAdded;
    private final int[] sums;

    private Monoid(int generators, int[] next, boolean[] broken) {
        this.generators = generators;
        this.next = next;
        this.broken = broken;
        int states = broken.length;
        this.before = new int[states];
        this.lastAdded = new int[states];
        walk();
        this.sums = states <= TABLE ? table() : new int[0];
    }

    /** A monoid with its states as they were written out. */
    record Explored<S>(Monoid monoid, List<S> states) {}

    /**
     * Explores every state and then merges those that are alike.
     *
     * @throws TooLarge where there are more than {@code most} states
     */
    static <S> Monoid explore(S nothing, int generators, Step<S> step, Predicate<S> breaks, int most) {
        Explored<S> all = every(nothing, generators, step, breaks, most);
        return merged(generators, all.monoid.next, all.monoid.broken);
    }

    /**
     * Explores every state and keeps each.
     *
     * @throws TooLarge where there are more than {@code most} states
     */
    static <S> Explored<S> every(S nothing, int generators, Step<S> step, Predicate<S> breaks, int most) {
        Map<S, Integer> numbers = new HashMap<>();
        List<S> states = new ArrayList<>();
        numbers.put(nothing, 0);
        states.add(nothing);
        List<int[]> rows = new ArrayList<>();
        for (int s = 0; s < states.size(); s++) {
            int[] row = new int[generators];
            for (int g = 0; g < generators; g++) {
                S reached = step.add(states.get(s), g);
                Integer known = numbers.get(reached);
                if (known == null) {
                    if (states.size() == most) {
                        throw new TooLarge(TooLarge.What.RELATION, most);
                    }
                    known = states.size();
                    numbers.put(reached, known);
                    states.add(reached);
                }
                row[g] = known;
            }
            rows.add(row);
        }
        boolean[] broken = new boolean[states.size()];
        int[] next = new int[states.size() * generators];
        for (int s = 0; s < broken.length; s++) {
            broken[s] = breaks.test(states.get(s));
            System.arraycopy(rows.get(s), 0, next, s * generators, generators);
        }
        return new Explored<>(new Monoid(generators, next, broken), List.copyOf(states));
    }

    private static Monoid merged(int generators, int[] next, boolean[] broken) {
        int[] all = new int[generators];
        Arrays.setAll(all, g -> g);
        int[] classes = alike(next, generators, broken, all);
        int count = Arrays.stream(classes).max().orElse(0) + 1;
        boolean[] brokenClass = new boolean[count];
        int[] nextClass = new int[count * generators];
        for (int s = 0; s < broken.length; s++) {
            brokenClass[classes[s]] = broken[s];
            for (int g = 0; g < generators; g++) {
                nextClass[classes[s] * generators + g] = classes[next[s * generators + g]];
            }
        }
        return new Monoid(generators, nextClass, brokenClass);
    }

    /** Numbers the states so that two share a number exactly when no addition of the given generators tells them apart; state 0 has number 0. */
    private static int[] alike(int[] next, int width, boolean[] verdict, int[] generators) {
        int[] classes = new int[verdict.length];
        for (int s = 0; s < verdict.length; s++) {
            classes[s] = verdict[s] == verdict[0] ? 0 : 1;
        }
        int count = 0;
        while (true) {
            Map<List<Integer>, Integer> numbers = new HashMap<>();
            int[] finer = new int[verdict.length];
            for (int s = 0; s < verdict.length; s++) {
                List<Integer> seen = new ArrayList<>(generators.length + 1);
                seen.add(classes[s]);
                for (int g : generators) {
                    seen.add(classes[next[s * width + g]]);
                }
                finer[s] = numbers.computeIfAbsent(seen, unused -> numbers.size());
            }
            if (numbers.size() == count) {
                return finer;
            }
            count = numbers.size();
            classes = finer;
        }
    }

    private void walk() {
        Arrays.fill(before, -1);
        before[0] = 0;
        int[] queue = new int[broken.length];
        int end = 1;
        for (int i = 0; i < end; i++) {
            for (int g = 0; g < generators; g++) {
                int reached = next[queue[i] * generators + g];
                if (before[reached] < 0) {
                    before[reached] = queue[i];
                    lastAdded[reached] = g;
                    queue[end++] = reached;
                }
            }
        }
    }

    private int[] table() {
        int states = broken.length;
        int[] table = new int[states * states];
        for (int s = 0; s < states; s++) {
            for (int t = 0; t < states; t++) {
                table[s * states + t] = spelt(s, t);
            }
        }
        return table;
    }

    private int spelt(int s, int t) {
        int sum = s;
        for (int rest = t; rest != 0; rest = before[rest]) {
            sum = next[sum * generators + lastAdded[rest]];
        }
        return sum;
    }

    int states() {
        return broken.length;
    }

    int generators() {
        return generators;
    }

    int add(int state, int generator) {
        return next[state * generators + generator];
    }

    int plus(int s, int t) {
        return s == 0 ? t : t == 0 ? s : sums.length > 0 ? sums[s * broken.length + t] : spelt(s, t);
    }

    boolean broken(int state) {
        return broken[state];
    }

    /** Whether one state in place of another never breaks the relation where the other would not. */
    boolean noWorse(int one, int other) {
        for (int besides = 0; besides < broken.length; besides++) {
            if (broken[plus(one, besides)] && !broken[plus(other, besides)]) {
                return false;
            }
        }
        return true;
    }

    /** Whether a generator changes nothing, ever. */
    boolean idle(int generator) {
        for (int s = 0; s < broken.length; s++) {
            if (add(s, generator) != s) {
                return false;
            }
        }
        return true;
    }

    /**
     * What can still be told apart of the states that some things can lead to, where {@code base} stands besides, and nothing but certain things can be added.
     *
     * <p>A state's stand-in is one that the same things can lead to: whoever adds it up with stand-ins for other things has reckoned with those things only.
     *
     * @param made the generators that can have led to the states
     * @param left the generators that can be added
     */
    Quotient seenFrom(int base, int[] made, int[] left) {
        boolean[] verdict = new boolean[broken.length];
        for (int s = 0; s < verdict.length; s++) {
            verdict[s] = broken[plus(s, base)];
        }
        int[] classes = alike(next, generators, verdict, left);
        boolean[] hopeless = hopeless(verdict, left);
        int[] standIn = new int[verdict.length];
        int[] first = new int[verdict.length];
        Arrays.fill(standIn, Quotient.NEVER);
        Arrays.fill(first, Quotient.NEVER);
        BitSet reached = reached(made);
        for (int s = reached.nextSetBit(0); s >= 0; s = reached.nextSetBit(s + 1)) {
            if (first[classes[s]] == Quotient.NEVER) {
                first[classes[s]] = s;
            }
            standIn[s] = hopeless[s] ? Quotient.HOPELESS : first[classes[s]];
        }
        return new Quotient(standIn);
    }

    private BitSet reached(int[] made) {
        BitSet reached = new BitSet();
        Deque<Integer> open = new ArrayDeque<>(List.of(0));
        reached.set(0);
        while (!open.isEmpty()) {
            int state = open.pop();
            for (int g : made) {
                if (!reached.get(add(state, g))) {
                    reached.set(add(state, g));
                    open.push(add(state, g));
                }
            }
        }
        return reached;
    }

    /** The states that stay broken whatever is added. */
    private boolean[] hopeless(boolean[] verdict, int[] generatorsLeft) {
        boolean[] hopeless = verdict.clone();
        boolean changed = true;
        while (changed) {
            changed = false;
            for (int s = 0; s < hopeless.length; s++) {
                if (hopeless[s]) {
                    for (int g : generatorsLeft) {
                        if (!hopeless[add(s, g)]) {
                            hopeless[s] = false;
                            changed = true;
                            break;
                        }
                    }
                }
            }
        }
        return hopeless;
    }
}

package fettle.space.best;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * The builds among which the best is sought, written like the circuit they are taken from, with parts that cannot be had left out and each placed part
 * knowing by how much it changes the number of changed paths. Nodes come after those they are made of.
 */
final class Plan {

    static final int NONE = -1;
    static final int ONE = 0;

    enum Kind { ONE, PART, SLOT, BOTH, EITHER }

    private record Term(Kind kind, int a, int b, int c) {}

    private final List<Kind> kinds = new ArrayList<>();
    private int[] a = new int[256];
    private int[] b = new int[256];
    private int[] c = new int[256];
    private final List<int[]> alternatives = new ArrayList<>();
    private final Map<Term, Integer> terms = new HashMap<>();
    private final Map<List<Integer>, Integer> sums = new HashMap<>();

    Plan() {
        add(Kind.ONE, 0, 0, 0);
    }

    int size() {
        return kinds.size();
    }

    Kind kind(int node) {
        return kinds.get(node);
    }

    /** The part or slot number, or the first of both. */
    int first(int node) {
        return a[node];
    }

    /** What is on the part or in the slot, or the second of both. */
    int second(int node) {
        return b[node];
    }

    /** By how much a placed part changes the number of changed paths. */
    int changes(int part) {
        return c[part];
    }

    int[] alternatives(int either) {
        return alternatives.get(a[either]);
    }

    int part(int part, int on, int changes) {
        return on == NONE ? NONE : add(Kind.PART, part, on, changes);
    }

    int slot(int slot, int in) {
        return in == NONE ? NONE : add(Kind.SLOT, slot, in, 0);
    }

    int both(int one, int other) {
        if (one == NONE || other == NONE) {
            return NONE;
        }
        return one == ONE ? other : other == ONE ? one : add(Kind.BOTH, one, other, 0);
    }

    /** One of some nodes, of which those that are none are passed over. */
    int either(List<Integer> nodes) {
        List<Integer> some = nodes.stream().filter(node -> node != NONE).sorted().distinct().toList();
        if (some.size() < 2) {
            return some.isEmpty() ? NONE : some.get(0);
        }
        Integer known = sums.get(some);
        if (known == null) {
            alternatives.add(some.stream().mapToInt(Integer::intValue).toArray());
            known = append(Kind.EITHER, alternatives.size() - 1, 0, 0);
            sums.put(some, known);
        }
        return known;
    }

    private int add(Kind kind, int first, int second, int third) {
        Term term = new Term(kind, first, second, third);
        Integer known = terms.get(term);
        if (known == null) {
            known = append(kind, first, second, third);
            terms.put(term, known);
        }
        return known;
    }

    private int append(Kind kind, int first, int second, int third) {
        int node = kinds.size();
        if (node == a.length) {
            a = Arrays.copyOf(a, 2 * node);
            b = Arrays.copyOf(b, 2 * node);
            c = Arrays.copyOf(c, 2 * node);
        }
        kinds.add(kind);
        a[node] = first;
        b[node] = second;
        c[node] = third;
        return node;
    }
}

package fettle.space;

import java.util.Arrays;

/**
 * Sets of assemblies, written as sums of products in which equal terms are written once. A node that stands for many builds is as small as the
 * number of different choices behind it; whatever is asked of the builds is then worked out node by node with an {@link Algebra}.
 *
 * <p>The alternatives of a sum have no assembly in common. Nodes are numbered so that each comes after those it is made of.
 */
public final class Circuit {

    /** Nothing placed: one way to fill a slot with nothing. */
    public static final int ONE = 0;

    /** No way at all; not a node. */
    public static final int NONE = -1;

    /** How a node is made up. */
    public enum Kind {
        /** Nothing placed. */
        ONE,
        /** A part with what is on it: {@code first} is the part, {@code second} the node of what is on it. */
        PART,
        /** What is in a slot: {@code first} is the slot, {@code second} the node of what is in it, which is never nothing. */
        SLOT,
        /** Both of two nodes. */
        BOTH,
        /** Any {@code second} of the assemblies of node {@code first}, the same one perhaps several times, in no order. */
        SEVERAL,
        /** One of several nodes. */
        EITHER
    }

    private static final Kind[] KINDS = Kind.values();

    private byte[] kind = new byte[1024];
    private int[] first = new int[1024];
    private int[] second = new int[1024];
    private int size;
    private int[] pool = new int[1024];
    private int pooled;
    private int[] table = new int[4096];

    private final boolean thin;
    private long[] weight;

    Circuit() {
        this(false);
    }

    private Circuit(boolean thin) {
        this.thin = thin;
        this.weight = new long[thin ? kind.length : 0];
        Arrays.fill(table, NONE);
        add(Kind.ONE, 0, 0);
    }

    /** A circuit that keeps of alternatives only one with the fewest parts; enough to see whether there is any. */
    static Circuit thin() {
        return new Circuit(true);
    }

    /** The nodes are numbered from 0 to one less than this. */
    public int size() {
        return size;
    }

    /** How a node is made up. */
    public Kind kind(int node) {
        return KINDS[kind[node]];
    }

    /** What the node's kind says. */
    public int first(int node) {
        return first[node];
    }

    /** What the node's kind says. */
    public int second(int node) {
        return second[node];
    }

    /** How many alternatives a sum has. */
    public int width(int either) {
        return second[either];
    }

    /** One of the nodes that a sum is made of, counted from 0. */
    public int alternative(int either, int i) {
        return pool[first[either] + i];
    }

    int part(int part, int on) {
        return add(Kind.PART, part, on);
    }

    int slot(int slot, int in) {
        return add(Kind.SLOT, slot, in);
    }

    int both(int one, int other) {
        return one == ONE ? other : other == ONE ? one : add(Kind.BOTH, Math.min(one, other), Math.max(one, other));
    }

    int several(int of, int copies) {
        return copies == 0 ? ONE : copies == 1 ? of : add(Kind.SEVERAL, of, copies);
    }

    /** One of these, of which there is at least one. */
    int either(int[] alternatives, int count) {
        if (count == 1) {
            return alternatives[0];
        }
        if (thin) {
            return lightest(alternatives, count);
        }
        Arrays.sort(alternatives, 0, count);
        int hash = 7;
        for (int i = 0; i < count; i++) {
            hash = 31 * hash + alternatives[i];
        }
        int at = place(hash);
        while (table[at] != NONE) {
            int node = table[at];
            if (kind[node] == Kind.EITHER.ordinal() && second[node] == count
                    && Arrays.equals(pool, first[node], first[node] + count, alternatives, 0, count)) {
                return node;
            }
            at = (at + 1) & (table.length - 1);
        }
        if (pooled + count > pool.length) {
            pool = Arrays.copyOf(pool, Math.max(2 * pool.length, pooled + count));
        }
        System.arraycopy(alternatives, 0, pool, pooled, count);
        int node = append(Kind.EITHER, pooled, count, at);
        pooled += count;
        return node;
    }

    private int lightest(int[] alternatives, int count) {
        int best = alternatives[0];
        for (int i = 1; i < count; i++) {
            int node = alternatives[i];
            if (weight[node] < weight[best] || weight[node] == weight[best] && node < best) {
                best = node;
            }
        }
        return best;
    }

    private long weigh(Kind made, int a, int b) {
        long sum = switch (made) {
            case ONE -> 0;
            case PART -> 1 + weight[b];
            case SLOT -> weight[b];
            case BOTH -> weight[a] + weight[b];
            case SEVERAL -> weight[a] * b;
            case EITHER -> throw new IllegalStateException("a thin circuit has no sums");
        };
        return Math.min(sum, Integer.MAX_VALUE);
    }

    private int add(Kind made, int a, int b) {
        int at = place(hash(made.ordinal(), a, b));
        while (table[at] != NONE) {
            int node = table[at];
            if (kind[node] == made.ordinal() && first[node] == a && second[node] == b) {
                return node;
            }
            at = (at + 1) & (table.length - 1);
        }
        return append(made, a, b, at);
    }

    private static int hash(int kind, int a, int b) {
        return (kind * 31 + a) * 0x9E3779B1 + b * 0x85EBCA6B;
    }

    private int place(int hash) {
        int mixed = hash * 0x9E3779B1;
        return (mixed ^ mixed >>> 15) & (table.length - 1);
    }

    private int append(Kind made, int a, int b, int at) {
        if (size == kind.length) {
            kind = Arrays.copyOf(kind, 2 * size);
            first = Arrays.copyOf(first, 2 * size);
            second = Arrays.copyOf(second, 2 * size);
            weight = thin ? Arrays.copyOf(weight, 2 * size) : weight;
        }
        if (thin) {
            weight[size] = weigh(made, a, b);
        }
        kind[size] = (byte) made.ordinal();
        first[size] = a;
        second[size] = b;
        table[at] = size++;
        if (2 * size > table.length) {
            rehash();
        }
        return size - 1;
    }

    private void rehash() {
        table = new int[4 * table.length];
        Arrays.fill(table, NONE);
        for (int node = 0; node < size; node++) {
            int hash;
            if (kind[node] == Kind.EITHER.ordinal()) {
                hash = 7;
                for (int i = 0; i < second[node]; i++) {
                    hash = 31 * hash + pool[first[node] + i];
                }
            } else {
                hash = hash(kind[node], first[node], second[node]);
            }
            int at = place(hash);
            while (table[at] != NONE) {
                at = (at + 1) & (table.length - 1);
            }
            table[at] = node;
        }
    }
}

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
    private static final int BITS = 30;
    private static final int MASK = (1 << BITS) - 1;
    /** How far from each other nodes that are made of the same last one are looked for. */
    private static final int NEAR = (1 << 14) - 1;
    private static final int CLOSE = 8;

    /** By node, its kind and the two numbers it is made up of. */
    private long[] nodes = new long[1024];
    private int size;
    /** The alternatives of sums, one sum after the other. */
    private int[] pool = new int[1024];
    private int pooled;
    /** Finds nodes by what they are made up of. */
    private int[] table = new int[4096];

    private final boolean thin;
    private long[] weight;

    Circuit() {
        this(false);
    }

    private Circuit(boolean thin) {
        this.thin = thin;
        this.weight = new long[thin ? nodes.length : 0];
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
        return KINDS[(int) (nodes[node] >>> 2 * BITS)];
    }

    /** What the node's kind says. */
    public int first(int node) {
        return (int) (nodes[node] >>> BITS) & MASK;
    }

    /** What the node's kind says. */
    public int second(int node) {
        return (int) nodes[node] & MASK;
    }

    /** How many alternatives a sum has. */
    public int width(int either) {
        return second(either);
    }

    /** One of the nodes that a sum is made of, counted from 0. */
    public int alternative(int either, int i) {
        return pool[first(either) + i];
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
        long hash = hash(alternatives, 0, count);
        int at = place(alternatives[count - 1], hash);
        for (int tries = 1; table[at] != NONE; tries++) {
            int node = table[at];
            if (kind(node) == Kind.EITHER && second(node) == count && Arrays.equals(pool, first(node), first(node) + count, alternatives, 0, count)) {
                return node;
            }
            at = next(at, hash, tries);
        }
        if (pooled + count > pool.length) {
            pool = Arrays.copyOf(pool, Math.max(2 * pool.length, pooled + count));
        }
        System.arraycopy(alternatives, 0, pool, pooled, count);
        int node = append(word(Kind.EITHER, pooled, count), at);
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
        long word = word(made, a, b);
        int at = place(b, word);
        for (int tries = 1; table[at] != NONE; tries++) {
            if (nodes[table[at]] == word) {
                return table[at];
            }
            at = next(at, word, tries);
        }
        return append(word, at);
    }

    private static long word(Kind made, int a, int b) {
        if (a > MASK || b > MASK) {
            throw new TooLarge(TooLarge.What.STATES, MASK);
        }
        return (long) made.ordinal() << 2 * BITS | (long) a << BITS | b;
    }

    private static long hash(int[] numbers, int from, int to) {
        long hash = 7;
        for (int i = from; i < to; i++) {
            hash = (hash + numbers[i]) * Spreading.LONG;
        }
        return hash;
    }

    /**
     * Where to look first: near to where the nodes are that were made shortly before or after the last one that this is made of. Nodes made one after the other
     * thus stand close together, which is what a large table's speed hangs on.
     */
    private int place(int last, long hash) {
        return 2 * last + ((int) (mixed(hash) >>> 40) & NEAR) & (table.length - 1);
    }

    /** Where to look next: close by, and then, where many nodes are made of the same last one, anywhere, and again elsewhere where that is full too. */
    private int next(int at, long hash, int tries) {
        return (tries % CLOSE == 0 ? (int) (mixed(hash + tries) >>> 32) : at + 1) & (table.length - 1);
    }

    private static long mixed(long hash) {
        return (hash ^ hash >>> 32) * Spreading.LONG;
    }

    private int append(long word, int at) {
        if (size == nodes.length) {
            nodes = Arrays.copyOf(nodes, 2 * size);
            weight = thin ? Arrays.copyOf(weight, 2 * size) : weight;
        }
        nodes[size] = word;
        if (thin) {
            weight[size] = weigh(kind(size), first(size), second(size));
        }
        table[at] = size++;
        if (2 * size > table.length) {
            rehash();
        }
        return size - 1;
    }

    private void rehash() {
        table = new int[2 * table.length];
        Arrays.fill(table, NONE);
        for (int node = 0; node < size; node++) {
            boolean sum = kind(node) == Kind.EITHER;
            long hash = sum ? hash(pool, first(node), first(node) + second(node)) : nodes[node];
            int at = place(sum ? pool[first(node) + second(node) - 1] : second(node), hash);
            for (int tries = 1; table[at] != NONE; tries++) {
                at = next(at, hash, tries);
            }
            table[at] = node;
        }
    }
}

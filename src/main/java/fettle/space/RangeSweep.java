package fettle.space;

import java.util.BitSet;

/**
 * The least and greatest of something over sets of assemblies, both as whole numbers, worked out along a {@link Sweep}. Says the same as an {@link Algebra}
 * would, and is much faster, since it makes no objects.
 */
abstract class RangeSweep {

    private final Circuit circuit;
    private final Sweep sweep;
    /** By place. */
    final long[] least;
    /** By place. */
    final long[] greatest;

    RangeSweep(Circuit circuit, Sweep sweep) {
        this.circuit = circuit;
        this.sweep = sweep;
        this.least = new long[sweep.places()];
        this.greatest = new long[sweep.places()];
    }

    /** Works it out for the roots of the sweep. */
    final void run() {
        BitSet nodes = sweep.nodes();
        for (int node = nodes.nextSetBit(0); node >= 0; node = nodes.nextSetBit(node + 1)) {
            work(node, sweep.place(node), circuit.first(node), circuit.second(node));
        }
    }

    private void work(int node, int at, int first, int second) {
        switch (circuit.kind(node)) {
            case ONE -> nothing(at);
            case PART -> part(at, first, sweep.place(second));
            case SLOT -> copy(at, sweep.place(second));
            case BOTH -> both(at, sweep.place(first), sweep.place(second));
            case SEVERAL -> several(at, sweep.place(first), second);
            case EITHER -> {
                copy(at, sweep.place(circuit.alternative(node, 0)));
                for (int i = 1; i < second; i++) {
                    either(at, sweep.place(circuit.alternative(node, i)));
                }
            }
        }
    }

    final int place(int root) {
        return sweep.place(root);
    }

    final void set(int at, long low, long high) {
        least[at] = low;
        greatest[at] = high;
    }

    /** Writes what another place says. */
    void copy(int at, int other) {
        set(at, least[other], greatest[other]);
    }

    /** Writes what nothing placed brings. */
    abstract void nothing(int at);

    /** Writes what a part brings with what is on it. */
    abstract void part(int at, int part, int on);

    /** Writes what each of one set brings with each of another. */
    abstract void both(int at, int one, int other);

    /** Writes what so many of one set bring, at least two. */
    abstract void several(int at, int of, int copies);

    /** Adds what another set says; by itself, the least of the least and the greatest of the greatest. */
    void either(int at, int other) {
        least[at] = Math.min(least[at], least[other]);
        greatest[at] = Math.max(greatest[at], greatest[other]);
    }
}

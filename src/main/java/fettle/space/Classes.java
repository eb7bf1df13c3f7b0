package fettle.space;

import java.util.Arrays;

/**
 * Assemblies sorted by what they can do to the rest of a build.
 *
 * @param signatures numbers of signatures, none twice
 * @param nodes for each, the circuit's node of the assemblies that have it
 */
record Classes(int[] signatures, int[] nodes) {

    static final Classes NONE = new Classes(new int[0], new int[0]);

    /** Nothing placed. */
    static final Classes EMPTY = of(Signatures.NOTHING, Circuit.ONE);

    static Classes of(int signature, int node) {
        return new Classes(new int[] {signature}, new int[] {node});
    }

    int size() {
        return nodes.length;
    }

    /** Whether the same signatures lead to the same nodes, in the same order. */
    @Override
    public boolean equals(Object other) {
        return this == other || other instanceof Classes classes && Arrays.equals(signatures, classes.signatures) && Arrays.equals(nodes, classes.nodes);
    }

    @Override
    public int hashCode() {
        int mix = 1;
        for (int i = 0; i < nodes.length; i++) {
            mix += (signatures[i] * 31 + nodes[i]) * Spreading.INT ^ nodes[i];
        }
        return mix;
    }
}

package fettle.space;

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
}

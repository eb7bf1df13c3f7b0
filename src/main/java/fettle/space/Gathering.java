package fettle.space;

import java.util.Arrays;

/** Collects assemblies by signature. */
final class Gathering {

    private final Circuit circuit;
    private int[] signatures = new int[4];
    private int[][] nodes = new int[4][];
    private int[] counts = new int[4];
    private int size;
    /** Where a signature stands, plus one; found by its number. */
    private int[] places = new int[8];

    Gathering(Circuit circuit) {
        this.circuit = circuit;
    }

    void add(int signature, int node) {
        int at = place(signature);
        if (counts[at] == nodes[at].length) {
            nodes[at] = Arrays.copyOf(nodes[at], 2 * counts[at]);
        }
        nodes[at][counts[at]++] = node;
    }

    private int place(int signature) {
        int i = start(signature);
        while (places[i] != 0) {
            if (signatures[places[i] - 1] == signature) {
                return places[i] - 1;
            }
            i = (i + 1) & (places.length - 1);
        }
        if (size == signatures.length) {
            signatures = Arrays.copyOf(signatures, 2 * size);
            nodes = Arrays.copyOf(nodes, 2 * size);
            counts = Arrays.copyOf(counts, 2 * size);
            places = new int[2 * places.length];
            for (int known = 0; known < size; known++) {
                places[free(signatures[known])] = known + 1;
            }
            i = free(signature);
        }
        signatures[size] = signature;
        nodes[size] = new int[2];
        places[i] = ++size;
        return size - 1;
    }

    private int free(int signature) {
        int i = start(signature);
        while (places[i] != 0) {
            i = (i + 1) & (places.length - 1);
        }
        return i;
    }

    private int start(int signature) {
        return (signature * Spreading.INT >>> 7) & (places.length - 1);
    }

    int size() {
        return size;
    }

    Classes classes() {
        int[] sums = new int[size];
        for (int i = 0; i < size; i++) {
            sums[i] = circuit.either(nodes[i], counts[i]);
        }
        return size == 0 ? Classes.NONE : new Classes(Arrays.copyOf(signatures, size), sums);
    }
}

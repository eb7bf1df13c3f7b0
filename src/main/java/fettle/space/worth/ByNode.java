package fettle.space.worth;

import java.util.Arrays;

/** What is known of nodes of one circuit, quickly come to: their numbers run on without gaps. */
final class ByNode<V> {

    private Object[] values = new Object[64];
    private int size;

    /** What was put for a node; {@code null} where nothing was. */
    V get(int node) {
        // Only what put() was given is in there.
        @SuppressWarnings("unchecked")
        V value = node < values.length ? (V) values[node] : null;
        return value;
    }

    void put(int node, V value) {
        if (node >= values.length) {
            values = Arrays.copyOf(values, Math.max(node + 1, 2 * values.length));
        }
        size += values[node] == null ? 1 : 0;
        values[node] = value;
    }

    /** How many nodes something is known of. */
    int size() {
        return size;
    }

    void clear() {
        Arrays.fill(values, null);
        size = 0;
    }
}

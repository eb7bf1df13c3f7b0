package fettle.space;

import java.util.Arrays;

/** Numbers by node of a circuit, none of them negative: nodes that are near each other are mostly asked about together, so that whole pages of them are kept. */
final class NodeTable {

    /** Where nothing was put. */
    static final int NONE = -1;

    private static final int BITS = 6;
    private static final int MASK = (1 << BITS) - 1;

    private int[][] pages = new int[16][];

    int get(int node) {
        int page = node >> BITS;
        return page < pages.length && pages[page] != null ? pages[page][node & MASK] : NONE;
    }

    void put(int node, int value) {
        int page = node >> BITS;
        if (page >= pages.length) {
            pages = Arrays.copyOf(pages, Math.max(page + 1, 2 * pages.length));
        }
        if (pages[page] == null) {
            pages[page] = new int[1 << BITS];
            Arrays.fill(pages[page], NONE);
        }
        pages[page][node & MASK] = value;
    }
}

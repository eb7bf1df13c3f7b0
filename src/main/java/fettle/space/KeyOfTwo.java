package fettle.space;

/** Names two numbers by one, so that maps with such keys stay quick: of two small numbers side by side, as of any sum of them, very many would have the same hash. */
final class KeyOfTwo {

    /** Odd, so that no two products are the same. */
    private static final long SPREADING = 0x9E3779B97F4A7C15L;

    private KeyOfTwo() {}

    /** The key of two numbers in this order. */
    static long of(int one, int other) {
        return ((long) one << 32 | other & 0xFFFFFFFFL) * SPREADING;
    }
}

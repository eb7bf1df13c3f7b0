package fettle.space;

/** Names two numbers by one, so that maps with such keys stay quick: of two small numbers side by side, as of any sum of them, very many would have the same hash. */
final class KeyOfTwo {

    private KeyOfTwo() {}

    /** The key of two numbers in this order, which no others have, since what they are multiplied by is odd. */
    static long of(int one, int other) {
        return ((long) one << 32 | other & 0xFFFFFFFFL) * Spreading.LONG;
    }
}

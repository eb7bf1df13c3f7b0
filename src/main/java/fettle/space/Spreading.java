package fettle.space;

/**
 * Odd numbers near the golden section of all that an int and a long can hold: numbers that follow each other are far apart once multiplied by one of them, and their upper
 * bits tell them apart (multiplicative hashing: D. E. Knuth, The Art of Computer Programming, volume 3, section 6.4).
 */
public final class Spreading {

    /** For an int. */
    public static final int INT = 0x9E3779B1;

    /** For a long. */
    public static final long LONG = 0x9E3779B97F4A7C15L;

    private Spreading() {}
}

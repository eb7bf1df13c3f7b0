package fettle.space;

import java.math.BigInteger;

/** How many there are. */
final class Counting implements Algebra<BigInteger> {

    @Override
    public BigInteger one() {
        return BigInteger.ONE;
    }

    @Override
    public BigInteger part(int part) {
        return BigInteger.ONE;
    }

    @Override
    public BigInteger both(BigInteger one, BigInteger other) {
        return one.multiply(other);
    }

    @Override
    public BigInteger either(BigInteger one, BigInteger other) {
        return one.add(other);
    }

    /** Of n things, k can be taken in no order, with repetition, in (n + k - 1 over k) ways. */
    @Override
    public BigInteger several(BigInteger of, int copies) {
        BigInteger ways = BigInteger.ONE;
        for (int i = 0; i < copies; i++) {
            ways = ways.multiply(of.add(BigInteger.valueOf(i))).divide(BigInteger.valueOf(i + 1L));
        }
        return ways;
    }
}

package fettle.space;

import java.util.BitSet;

/**
 * The others that can stand beside a part directly in a slot.
 *
 * @param span the most notches that they take together
 * @param heads the parts among them
 */
record Beside(int span, BitSet heads) {

    static final Beside NOTHING = new Beside(0, new BitSet());

    static Beside of(int span, int head) {
        BitSet heads = new BitSet();
        heads.set(head);
        return new Beside(span, heads);
    }

    Beside or(Beside other) {
        return this == other ? this : new Beside(Math.max(span, other.span), union(other));
    }

    Beside and(Beside other) {
        return this == NOTHING ? other : other == NOTHING ? this : new Beside(span + other.span, union(other));
    }

    Beside times(int copies) {
        return copies == 0 ? NOTHING : new Beside(copies * span, heads);
    }

    private BitSet union(Beside other) {
        BitSet both = (BitSet) heads.clone();
        both.or(other.heads);
        return both;
    }
}
